package mend

import (
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Speeds in m/s that say something about their unit.
const (
	fastest   = 110.0 // near 400 km/h: more than one fix in a hundred of no bike exceeds it
	mostSpeed = 150.0 // above it a fix cannot be
)

// Speed brings the speeds of a log's fixes to m/s, in place: by the way
// between positions, else by the accelerometer, whose force must be in m/s². It
// refuses speeds that are plainly not in m/s and whose unit is not plain, and
// leaves out those that cannot be.
func Speed(log *sensors.Log, file string) error {
	unit, ok := SpeedFromPositions(log.Fixes)
	why := finding.New("speed.positions_show")
	if !ok {
		gain, known := SpeedByForce(log)
		why = finding.New("speed.accelerometer_shows")
		switch {
		case known && gain > 3: // 3.6 is km/h; the next, mph, is 2.24, and what is less than exact is less
			unit = SpeedUnit{"km/h", units.KMH}
		case known && gain > 1.6:
			return refuseSpeed(file, finding.New("speed.gain", finding.Num("times", gain)))
		default:
			unit = SpeedUnit{"m/s", 1}
		}
	}
	if unit.MPS != 1 {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: len(log.Fixes),
			What: finding.New("speed.converted", finding.Text("unit", unit.Name), finding.Of("why", why))})
		for i := range log.Fixes {
			log.Fixes[i].Speed *= unit.MPS
			log.Fixes[i].SpeedSD *= unit.MPS
		}
	}
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
