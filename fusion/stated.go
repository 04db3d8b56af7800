package fusion

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/median"
)

// Receivers state the accuracy of each speed, but the meaning differs: 68 %, 95
// % or a bound, and most are conservative by a factor that varies between
// models (common practice). Only the ratios are used: the variance of each fix
// is in proportion to the stated one, within limits, and the overall level is
// learned from the ride. For that level the stated accuracy shifts the prior by
// half of its logarithm.
const (
	statedLeast, statedMost = 0.5, 5.0  // of a fix relative to the usual
	statedSafe              = 0.5       // expected ratio of the true to the stated one
	whiteLeast, whiteMost   = 0.02, 0.3 // m/s: the expectation stays within these
)

// state sets the ratio of each fix's stated accuracy to the usual one, and
// returns the usual one, m/s, or 0 if most fixes have none.
func state(out []fix, fixes []sensors.Fix) float64 {
	var all []float64
	for _, f := range fixes {
		if f.SpeedSD > 0 && !math.IsInf(f.SpeedSD, 1) {
			all = append(all, f.SpeedSD)
		}
	}
	if 2*len(all) < len(fixes) || len(all) == 0 {
		return 0
	}
	usual := median.Of(all)
	for i, f := range fixes {
		if f.SpeedSD > 0 {
			out[i].said = math.Max(statedLeast, math.Min(f.SpeedSD/usual, statedMost))
		}
	}
	return usual
}

// expected is the prior for the noise, given the accuracy that the receiver
// states, m/s; 0: none.
func expected(stated float64) noise {
	n := typical
	if stated > 0 {
		n.white = math.Max(whiteLeast, math.Min(math.Sqrt(n.white*statedSafe*stated), whiteMost))
	}
	return n
}
