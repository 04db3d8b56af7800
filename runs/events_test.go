package runs

import (
	"fmt"

	"stillair/sensors/sim"
)

// eventOf is the kind of event that a kind of run is.
func eventOf(k Kind) sim.Kind { return sim.Kind(k) }

// wanted reports whether an event is one that should be found.
func wanted(k sim.Kind) bool {
	switch k {
	case sim.KindLaunch, sim.KindRollOn, sim.KindPull, sim.KindCoastDown, sim.KindStop:
		return true
	}
	return false
}

// compareEvents lists runs that were missed, found twice or found although they
// were not ridden. A roll-on in one gear over a wide range is a pull as well,
// and a pull runs through the speeds of a roll-on.
func compareEvents(truth *sim.Truth, result *Result) []string {
	var problems []string
	known := map[int]bool{}
	for _, d := range truth.Events {
		if !wanted(d.Kind) {
			continue
		}
		hits := 0
		for _, r := range result.Runs {
			if !found(r) || r.End < d.Start || r.Start > d.End {
				continue
			}
			if eventOf(r.Kind) == d.Kind {
				hits++
			}
			if eventOf(r.Kind) == d.Kind || full(r.Kind) && full(Kind(d.Kind)) {
				known[r.ID] = true
			}
		}
		if hits != 1 {
			problems = append(problems, fmt.Sprintf("%s from %.1f to %.1f s, %.0f to %.0f km/h, was found %d times",
				d.Kind, d.Start, d.End, d.From*3.6, d.To*3.6, hits))
		}
	}
	for _, r := range result.Runs {
		if found(r) && !known[r.ID] {
			problems = append(problems, fmt.Sprintf("there was no %s from %.1f to %.1f s, %.0f to %.0f km/h",
				r.Kind, r.Start, r.End, r.FromMPS*3.6, r.ToMPS*3.6))
		}
	}
	return problems
}

// found reports whether detection accepted a run. A coast-down that was paired
// and then left out of the fit because it disagreed with the others counts as
// found.
func found(r Run) bool { return r.Accepted() || r.Pair > 0 }

// full reports whether a kind of run is at full throttle from rolling.
func full(k Kind) bool { return k == RollOn || k == Pull }
