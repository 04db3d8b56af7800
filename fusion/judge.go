package fusion

import (
	"math"

	"stillair/fusion/internal/kalman"
)

// How far off is too far is that of one normal number in 5 000, more than most
// rides have fixes. Nothing was tuned on the rides of TestWildFixes in package runs.
const (
	farOff        = 3.7  // standard deviations from what all other fixes say, from which a fix loses weight
	farPower      = 8.0  // how fast it does
	hardest       = 8.0  // m/s² that a motorcycle may gain and lose at once (grip; common practice: 10)
	leastVariance = 1e-6 // m²/s² of a fix against all others: no receiver is better
	farMost       = 1e6  // times the variance at most: no say at all, and small enough to compute with
	farAbreast    = 3    // fixes to either side of which only the farthest is doubted at a time
	crowd         = 4    // fixes to either side
	mostOfCrowd   = 3    // of a fix and those, that may be wild: with one wild in 20, more are so once in 1 500
)

// judge takes weight from the fixes that lie far from what the smoother makes
// of all others, each left out in turn. What remains after smoothing would not
// show them: between two fixes the shaken accelerometer knows the speed less well
// than a fix, so a wrong one bends the whole to itself. A fix far out is given
// variance in excess, more than in proportion: a redescending estimator, so
// that a wild fix ends with no say at all. Next to a wild fix good ones seem far
// off as well, so of neighbours only the farthest is doubted in one pass; it is
// judged again in every pass, without regard to its own weight.
func (r *ride) judge(places []place, nodes []kalman.Node, left []kalman.Left) {
	var at []int // the fixes seen
	var z, variance []float64
	for i, pl := range places {
		if pl.fix < 0 || !nodes[i].Seen || nodes[i].Sight.Still {
			continue
		}
		own := left[i].Variance - r.fixes[pl.fix].extra
		if !(own > leastVariance) {
			own = leastVariance // rounding, beside a large extra
		}
		at, z, variance = append(at, pl.fix), append(z, math.Abs(left[i].Off)/math.Sqrt(own)), append(variance, own)
	}
	if len(z) == 0 {
		return
	}
	const sizeOfNormal = 0.6745 // median of the size of a standard normal number
	limit := farOff * math.Max(1, median(z)/sizeOfNormal)
	before := make([]bool, len(at))
	for k, f := range at {
		before[k] = r.fixes[f].extra > 0
	}
	for k, f := range at {
		r.fixes[f].extra = 0
		if over := z[k] / limit; over > 1 && !r.mayBe(f, z[k]*math.Sqrt(variance[k])) && (before[k] || farthest(z, before, k)) {
			r.fixes[f].extra = variance[k] * (math.Min(math.Pow(over, farPower), farMost) - 1 + 1e-9)
		}
	}
	r.believeCrowds(at)
}

// believeCrowds gives fixes their weight back where too many near each other lost
// it: receivers are not wrong so often, so it is the speed between them that is,
// shaken off its way.
func (r *ride) believeCrowds(at []int) {
	doubted := make([]int, len(at)+1) // running count
	for k, f := range at {
		doubted[k+1] = doubted[k]
		if r.fixes[f].extra > 0 {
			doubted[k+1]++
		}
	}
	for k := range at {
		lo, hi := max(k-crowd, 0), min(k+crowd+1, len(at))
		if doubted[hi]-doubted[lo] <= mostOfCrowd {
			continue
		}
		for _, f := range at[lo:hi] {
			r.fixes[f].extra = 0
		}
	}
}

// mayBe reports whether a fix may lie so far off what the others say because the
// bike did something between them, m/s. With an accelerometer it may not: that
// would have shown it.
func (r *ride) mayBe(f int, off float64) bool {
	if !r.alone {
		return false
	}
	near := math.Inf(1)
	if f > 0 {
		near = r.fixes[f].t - r.fixes[f-1].t
	}
	if f+1 < len(r.fixes) {
		near = math.Min(near, r.fixes[f+1].t-r.fixes[f].t)
	}
	return off < hardest*near
}

// farthest reports whether none of the neighbours of a fix, but those doubted
// already, lies farther off.
func farthest(z []float64, doubted []bool, k int) bool {
	for j := max(k-farAbreast, 0); j <= min(k+farAbreast, len(z)-1); j++ {
		if z[j] > z[k] && !doubted[j] {
			return false
		}
	}
	return true
}
