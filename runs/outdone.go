package runs

import (
	"math"

	"stillair/runs/detect"
	"stillair/sensors/finding"
)

// A bike pulls hardest from gear to gear, so that a launch in which it pulled clearly
// less than in one gear at the same speed was at part throttle, and says nothing of what
// the rider meant elsewhere in the ride.
const (
	earlyShift = 1.35 // times as hard as a launch that a push in one gear may pull: the next gear, changed up early
	everyday   = 2.0  // and from which on nobody meant it as one
)

// outdone is how many times harder than a launch of some pushes in a row another
// push pulls in one gear at the same road speed, where that is clear; 1: none does. Full
// throttle from gear to gear gives at least what a gear that stays in does, but
// for a gear changed up early.
func (o *throttles) outdone(first, last int) float64 {
	most := 1.0
	for i := first; i <= last; i++ {
		for _, other := range o.drives {
			if other.start {
				continue
			}
			if r := o.over(o.drives[i], other, 1, false, false); r.harder() {
				most = math.Max(most, r.torque())
			}
		}
	}
	return most
}

// judgeLaunches refuses the launches that other pushes outdo, leaves out those that
// nobody meant, and takes neither for a start: then all pushes are compared again. of is
// which drive is the last of each.
func (o *throttles) judgeLaunches(found []detect.Found, of []int) (out []detect.Found, left []int) {
	outdone := make([]float64, len(found))
	for i, f := range found {
		if f.Kind == Launch && of[i] >= 0 {
			outdone[i] = o.outdone(of[i]-len(f.Gears)+1, of[i])
		}
	}
	fell := false
	for i, f := range found {
		if outdone[i] > earlyShift {
			fell = true
			f.Reasons = append(f.Reasons, finding.New(codeLaunchOutdone))
			for k := range f.Gears {
				o.drives[of[i]-k].start = false
			}
		}
		if outdone[i] < everyday {
			out, left = append(out, f), append(left, of[i])
		}
	}
	if fell {
		o.look()
	}
	return out, left
}
