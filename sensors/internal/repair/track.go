package repair

import (
	"math"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Track puts the fixes of a file without motion into a log: in order, with
// speeds in m/s, on a clock that begins at the first. spoken is the number of
// fixes with a speed; if most have none, all speeds are calculated from
// positions. Otherwise those without are left out.
func Track(log *sensors.Log, file string, fixes []sensors.Fix, spoken int) error {
	say := func(count int, what finding.Finding) {
		log.Notes = append(log.Notes, sensors.Note{File: file, Count: count, What: what})
	}
	clock := NewClock("input.fix")
	fixes = clock.Fixes(fixes)
	log.Notes = append(log.Notes, clock.Notes(file)...)
	own := 2*spoken > len(fixes)
	if own {
		whole := len(fixes)
		fixes = slices.DeleteFunc(fixes, func(f sensors.Fix) bool { return math.IsNaN(f.Speed) })
		if n := whole - len(fixes); n > 0 {
			say(n, finding.New("sheets.no_speed"))
		}
	} else {
		fixes = SpeedFromWay(fixes)
		say(len(fixes), finding.New("sheets.speed_from_way"))
	}
	if len(fixes) == 0 {
		return &sensors.InputError{File: file, What: finding.New("track.no_points"), Remedy: finding.New("track.with_times")}
	}
	log.Fixes = fixes
	zero := fixes[0].T
	for i := range fixes {
		fixes[i].T -= zero
	}
	if !own {
		return possible(log, file)
	}
	_, err := Speed(log, file)
	return err
}
