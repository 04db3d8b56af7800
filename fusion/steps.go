package fusion

import (
	"math"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
)

// leastLagStep is by how much a lag must change to count, s: less the smoother
// takes for the lag's own wander.
const leastLagStep = 0.35

// worthStep is how much of the unexplained force may remain once steps are taken
// out; one launch that an engine shook hard may seem late, but explains little.
const worthStep = 0.8

// straighten takes the steps of a lag out of the arrival times, so that one lag
// holds for the whole ride: that of most fixes. How the phone sits is looked for
// again then.
func straighten(s *motion.Series, fixes []fix, found mount.Found) ([]fix, []LagStep, mount.Found) {
	if !found.LagSet {
		return fixes, nil, found
	}
	lags := mount.Lags(s, speeds(fixes), found)
	if lags == nil {
		return fixes, nil, found
	}
	usual := commonest(lags)
	var steps []LagStep
	moved := make([]fix, 0, len(fixes))
	other := 0.0
	for i, f := range fixes {
		now := lags[i] - usual
		if math.Abs(now) < leastLagStep {
			now = 0
		}
		if now != other {
			other = now
			steps = append(steps, LagStep{From: f.t, Other: other})
		}
		f.t -= other
		if n := len(moved); n == 0 || f.t > moved[n-1].t {
			moved = append(moved, f)
		}
	}
	again, err := mount.Find(s, speeds(moved))
	if err != nil || again.Left > worthStep*found.Left {
		return fixes, nil, found
	}
	return moved, steps, again
}

// commonest is the number that x holds most often.
func commonest(x []float64) float64 {
	count := map[float64]int{}
	for _, v := range x {
		count[v]++
	}
	best := x[0]
	for _, v := range x {
		if count[v] > count[best] {
			best = v
		}
	}
	return best
}
