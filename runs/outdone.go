package runs

import (
	"math"

	"stillair/runs/detect"
	"stillair/sensors/finding"
)

// Changing through the gears gives the most thrust, so a launch with
// significantly less thrust than in a single gear at the same speed was at part
// throttle, and is no reference for the rest of the ride.
const (
	earlyShift = 1.35 // limit for the thrust of a push in one gear relative to a launch, for one that was changed up early
	everyday   = 2.0  // and from which the launch was not intended as one
)

// outdone is the ratio by which another push in one gear significantly exceeds
// the thrust of a launch, made of consecutive pushes, at the same road speed; 1
// if none does. Full throttle through the gears gives at least the thrust of a
// single gear, unless a gear was changed up early.
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

// judgeLaunches rejects the launches that other pushes outdo and drops those that
// were not meant as launches. One that is outdone at all is no reference for other
// pushes, though it may count: then all pushes are compared again. of is the index
// of each one's last drive.
func (o *throttles) judgeLaunches(found []detect.Found, of []int) (out []detect.Found, left []int) {
	outdone := make([]float64, len(found))
	for i, f := range found {
		if f.Kind == Launch && of[i] >= 0 {
			outdone[i] = o.outdone(of[i]-len(f.Gears)+1, of[i])
		}
	}
	fell := false
	for i, f := range found {
		if outdone[i] > 1 {
			fell = true
			for k := range f.Gears {
				o.drives[of[i]-k].start = false
			}
		}
		if outdone[i] > earlyShift {
			f.Reasons = append(f.Reasons, finding.New(codeLaunchOutdone))
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
