package repair

import (
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Speeds in m/s that are informative about their unit.
const (
	fastest   = 110.0 // near 400 km/h: exceeded by less than one fix in a hundred of any bike
	mostSpeed = 150.0 // a faster fix is impossible
)

// Speed converts the speeds of a log's fixes to m/s, in place: by the distance
// between positions, else by the accelerometer, whose force must be in m/s². It
// returns an error for speeds that are clearly not in m/s but of unknown unit,
// and leaves out impossible ones. It returns the factor by which the speeds
// were multiplied.
func Speed(log *sensors.Log, file string) (float64, error) {
	unit, why, err := speedScale(log, file)
	if err != nil {
		return 0, err
	}
	if unit.MPS != 1 {
		what := finding.New("speed.scaled", finding.Share("share", 1/unit.MPS-1), finding.Of("why", finding.New(why)))
		if unit.Name != "" {
			what = finding.New("speed.converted", finding.Text("unit", unit.Name), finding.Of("why", finding.New(why)))
		}
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: len(log.Fixes), What: what})
		for i := range log.Fixes {
			log.Fixes[i].Speed *= unit.MPS
			log.Fixes[i].SpeedSD *= unit.MPS
		}
	}
	return unit.MPS, possible(log, file)
}

// SpeedAsked is Speed if a person gave the unit of the speeds and the reader has
// converted them: the comparison with the positions is reported, but not applied.
func SpeedAsked(log *sensors.Log, file string) error {
	if s := ScaleByWay(log.Fixes); s.N >= fewestStretches && math.Abs(s.Ratio-1) > math.Max(scaleSlack, 4*s.SE) {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: 1,
			What: finding.New("speed.against_positions", finding.Share("share", s.Ratio-1))})
	}
	return possible(log, file)
}

// Limits for an unambiguous scale of speeds.
const (
	fewestStretches = 8
	scaleSlack      = 0.01 // receivers and positions agree better than this (common practice)
	mostScaleSE     = 0.02
	enoughToSay     = 20 // fixes; with fewer nothing can be computed anyway
)

// speedScale finds the unit of a log's speeds, or one without a name if no unit
// fits. If the ratio varies too much, as with positions from another source,
// there is no check, and a note says so.
func speedScale(log *sensors.Log, file string) (unit SpeedUnit, why finding.Code, err error) {
	s := ScaleByWay(log.Fixes)
	if unit, ok := s.unit(); ok && s.N >= fewestStretches {
		return unit, "speed.positions_show", nil
	}
	unit, ratio := SpeedFromPositions(log.Fixes)
	if unit.MPS != 0 && s.N < fewestStretches {
		return unit, "speed.positions_show", nil
	}
	gain, known := SpeedByForce(log)
	switch {
	case known && gain > 3.4: // 3.6 is km/h; the next, ft/s, is 3.28, and errors make the gain smaller
		return SpeedUnit{"km/h", units.KMH}, "speed.accelerometer_shows", nil
	case known && gain > 1.6:
		return unit, "", refuseSpeed(file, finding.New("speed.gain", finding.Num("times", gain)))
	}
	if (!known || !math.IsNaN(ratio)) && len(log.Fixes) >= enoughToSay {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: 1, What: finding.New("speed.unchecked")})
	}
	return SpeedUnit{"m/s", 1}, "", nil
}

// unit is the unit of speeds with such a scale, or a new one.
func (s Scale) unit() (SpeedUnit, bool) {
	share := s.SE / s.Ratio
	for _, u := range speedUnits {
		if math.Abs(s.Ratio*u.MPS-1) < math.Max(scaleSlack, 4*share) {
			return u.SpeedUnit, share < mostScaleSE
		}
	}
	return SpeedUnit{MPS: 1 / s.Ratio}, share < mostScaleSE
}

// possible leaves out impossible speeds, and refuses the log if too many are
// impossible.
func possible(log *sensors.Log, file string) error {
	if v := FastSpeed(log.Fixes); v > fastest {
		return refuseSpeed(file, finding.New("speed.too_fast", finding.Num("top", v)))
	}
	before := len(log.Fixes)
	log.Fixes = slices.DeleteFunc(log.Fixes, func(f sensors.Fix) bool { return f.Speed > mostSpeed })
	if n := before - len(log.Fixes); n > 0 {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: n,
			What: finding.New("speed.impossible", finding.Speed("most", mostSpeed))})
	}
	return nil
}

func refuseSpeed(file string, what finding.Finding) error {
	return &sensors.InputError{File: file, What: what, Remedy: finding.New("speed.give_mps")}
}
