package fusion

import (
	"math"

	"stillair/fusion/internal/kalman"
	"stillair/sensors/median"
)

// The limit is exceeded by one in 5 000 normal deviates, more than most rides
// have fixes. Nothing was tuned on the rides of TestWildFixes in package runs.
const (
	farOff        = 3.7  // standard deviations from the prediction of all other fixes, from which a fix loses weight
	farPower      = 8.0  // how fast it loses weight
	hardest       = 8.0  // highest acceleration and deceleration of a motorcycle, m/s² (grip; common practice: 10)
	leastVariance = 1e-6 // m²/s² of a fix against all others: no receiver is better
	farMost       = 1e6  // maximum factor on the variance: practically no weight, and numerically safe
	farAbreast    = 3    // of so many fixes on each side only the farthest is downweighted at a time
	longestLine   = 4    // s between the fixes before and after one, over which speed is taken as linear
)

// downweightOutliers reduces the weight of outliers: fixes far from the smoother's
// leave-one-out prediction. Ordinary residuals would not show them: with
// vibration the accelerometer is less accurate between two fixes than a fix, so
// a wrong fix bends the track towards itself. The variance of an outlier is
// inflated more than in proportion (a redescending M-estimator), so that a
// gross one has no influence at all. Next to an outlier good fixes look wrong
// too, so of neighbours only the farthest is down-weighted in one pass; it is
// tested again in every pass, regardless of its current weight.
func (r *ride) downweightOutliers(places []place, nodes []kalman.Node, left []kalman.Left) {
	var at []int // indices of the fixes used
	var z, variance []float64
	for i, pl := range places {
		if pl.fix < 0 || !nodes[i].Seen || nodes[i].Observation.Still {
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
	limit := farOff * math.Max(1, median.Of(z)/sizeOfNormal)
	before := make([]bool, len(at))
	for k, f := range at {
		before[k] = r.fixes[f].extra > 0
	}
	for k, f := range at {
		r.fixes[f].extra = 0
		if over := z[k] / limit; over > 1 && !r.motionExplains(f, z[k]*math.Sqrt(variance[k])) && !r.agrees(f) && (before[k] || farthest(z, before, k)) {
			r.fixes[f].extra = variance[k] * (math.Min(math.Pow(over, farPower), farMost) - 1 + 1e-9)
		}
	}
}

// agrees reports whether a fix lies on the line between its neighbours within
// the receiver's noise. Three in a row that agree are right whatever the
// accelerometer shows between them: an engine order at the sampling rate
// aliases to a steady acceleration of any size, and no noise density reveals
// it.
func (r *ride) agrees(f int) bool {
	if f == 0 || f+1 == len(r.fixes) {
		return false
	}
	a, b, c := r.fixes[f-1], r.fixes[f], r.fixes[f+1]
	if c.t-a.t > longestLine {
		return false
	}
	off, w := lineMiss(r.fixes, f)
	sd := r.n.white * math.Sqrt(b.said*b.said+(1-w)*(1-w)*a.said*a.said+w*w*c.said*c.said)
	return math.Abs(off) < farOff*sd
}

// motionExplains reports whether a fix may be off by this much (m/s) because
// the bike changed its speed between the other fixes. With an accelerometer it
// may not, since that would have shown the change.
func (r *ride) motionExplains(f int, off float64) bool {
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

// farthest reports whether no neighbour of a fix is farther off, except those
// already down-weighted.
func farthest(z []float64, doubted []bool, k int) bool {
	for j := max(k-farAbreast, 0); j <= min(k+farAbreast, len(z)-1); j++ {
		if z[j] > z[k] && !doubted[j] {
			return false
		}
	}
	return true
}
