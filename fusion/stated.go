package fusion

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/median"
)

// Receivers state how accurate each speed is. Their unit is not to be trusted:
// some mean 68 %, some 95 %, some a bound, and most are on the safe side by a
// factor that differs from one to the next (common practice). What is trusted is
// that a fix stated twice as bad is worse: the variance of each is taken in
// proportion, within bounds, and the ride says what the usual one is worth. As to
// that, what is stated moves the expectation half of the way (in the logarithm).
const (
	statedLeast, statedMost = 0.5, 5.0  // of a fix over the usual
	statedSafe              = 0.5       // true over stated, before the ride is looked at
	whiteLeast, whiteMost   = 0.02, 0.3 // m/s: the expectation stays within these
)

// state fills in what the receiver says about each fix over what it usually says,
// and gives the usual, m/s; 0 where it says nothing, or not of most.
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

// expected is the noise of a ride before it is looked at, where the receiver
// states an accuracy, m/s; 0: none.
func expected(stated float64) noise {
	n := typical
	if stated > 0 {
		n.white = math.Max(whiteLeast, math.Min(math.Sqrt(n.white*statedSafe*stated), whiteMost))
	}
	return n
}
