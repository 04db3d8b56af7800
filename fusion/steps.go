package fusion

import (
	"math"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
)

// leastLagStep is the smallest step of the lag, s: the smoother treats smaller
// ones as drift of the lag.
const leastLagStep = 0.35

// mostUnexplained is the largest remaining fraction of the unexplained force for
// which steps are accepted; a single launch with strong vibration may seem
// late, but explains little.
const mostUnexplained = 0.8

// straighten removes the steps of a lag from the arrival times, so that the
// commonest lag applies to the whole ride. The mounts are then estimated again.
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
	if err != nil || again.Left > mostUnexplained*found.Left {
		return fixes, nil, found
	}
	return moved, steps, again
}

// commonest is the mode of x.
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
