package fusion

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// The limits of a part were chosen on the simulated rides of TestLeftOut and on
// two of TestEveryRunIsFound in package runs, and judged on TestLaunches here
// and TestEveryBikeAndPhone there.
const (
	mayLose   = 1.05 // how much worse than the satellites alone the whole may be at left-out fixes
	lostTimes = 1.5  // and how much worse a part, unless by chance:
	lostSure  = 3.2  // standard deviations, for the worst of very many stretches
	lostFixes = 12
	lostLong  = 15.0 // s
	mostParts = 5
	lasting   = 0.15 // m/s of a receiver's lasting error; a larger one is the smoother's fault
	untrue    = 1.8  // how far left-out fixes may lie off, relative to the smoother's uncertainty
	pushed    = 0.8  // m/s² of a start, a pull or a roll-on, whose beginning only the accelerometer shows
	stopped   = 2.5  // m/s² of a stop
	useless   = 4.0  // how much worse it may be in these
)

// misses returns the leave-one-out residual of each fix, in order of the fixes.
func (r *ride) misses() []miss {
	places := r.places(coarseGrid, 0.5)
	nodes := r.nodes(places)
	x, p := r.first(0)
	_, left := r.filter.LeaveOut(nodes, x, p)
	out := make([]miss, len(r.fixes))
	for i, pl := range places {
		if pl.fix >= 0 && nodes[i].Seen && !nodes[i].Observation.Still {
			c := left[i].Lasting
			f := &r.fixes[pl.fix]
			out[pl.fix] = miss{judged: true, wild: f.extra > 0, off: left[i].Off + c - math.Max(-lasting, math.Min(c, lasting)),
				variance: math.Max(left[i].Variance-f.extra, leastVariance), accel: nodes[i].Observation.Accel}
		}
	}
	return out
}

// miss is the leave-one-out residual of a fix. No more of it is attributed to
// the receiver's correlated error than receivers usually have.
type miss struct {
	judged, wild bool
	off          float64 // m/s
	variance     float64 // expected variance, m²/s²
	accel        float64 // m/s²
}

// compareWithAlone compares the ride with the satellite speeds alone: each fix
// is left out in turn and predicted from all others (leave-one-out
// cross-validation: Stone, Journal of the Royal Statistical Society B 36 (1974)
// 111). Parts of the ride in which the accelerometer makes that clearly worse
// do without it; where the whole is still worse, the ride does.
//
// Where an engine shakes the phone hard, the surrounding fixes describe a
// steady acceleration better than the accelerometer does. But only the
// accelerometer shows when the acceleration began, and the track states how
// precisely. So in a stretch with an acceleration it is given up only where the
// fixes deviate by more than the uncertainty of the track allows.
func (r *ride) compareWithAlone(alone *ride) (why finding.Finding, lost bool) {
	without := alone.misses()
	c := r.compared(r.misses(), without)
	for range mostParts {
		lo, hi, found := c.worst()
		if !found || c.part(lo, hi).useful() {
			break
		}
		span := Span{c.at[lo], c.at[hi-1]}
		r.disableAccelerometer(GNSSOnly{Span: span, Why: finding.New(codeLosesPart)}, alone.n)
		c = r.compared(r.misses(), without)
	}
	fused, by := c.rms()
	if fused <= mayLose*by || c.useful() {
		return finding.Finding{}, false
	}
	return finding.New(codeLoses, finding.Speed("fused", fused), finding.Speed("alone", by)), true
}

// comparison holds the leave-one-out residuals with the accelerometer and
// without it.
type comparison struct {
	at          []float64 // s, corrected for the lag
	with, alone []float64 // squares, (m/s)²
	share       []float64 // with, over its expected value
	hard        []bool    // the bike was accelerating hard
}

// compared pairs the residuals of the fixes that both filters predicted, except
// those that both rate as outliers.
func (r *ride) compared(with, without []miss) comparison {
	var c comparison
	for k, m := range with {
		o := without[k]
		if !m.judged || !o.judged || m.wild && o.wild || r.besideGap(k) {
			continue
		}
		c.at = append(c.at, r.fixes[k].t-r.lag)
		c.with, c.alone = append(c.with, m.off*m.off), append(c.alone, o.off*o.off)
		c.share, c.hard = append(c.share, m.off*m.off/m.variance), append(c.hard, o.accel > pushed || o.accel < -stopped)
	}
	return c
}

// part is the comparison over some of its fixes.
func (c comparison) part(lo, hi int) comparison {
	return comparison{c.at[lo:hi], c.with[lo:hi], c.alone[lo:hi], c.share[lo:hi], c.hard[lo:hi]}
}

// useful reports whether the accelerometer is needed for an acceleration, the
// stated uncertainties are true, and the speeds are not much worse with it.
func (c comparison) useful() bool {
	var sum float64
	for _, x := range c.share {
		sum += math.Min(x, farOff*farOff) / float64(len(c.share))
	}
	fused, alone := c.rms()
	return slices.Contains(c.hard, true) && sum < untrue*untrue && fused < useless*alone
}

// besideGap reports whether motion samples are missing next to a fix. Neither
// filter knows what happened there, and the track's uncertainty shows it.
func (r *ride) besideGap(k int) bool {
	a, b := r.fixes[max(k-1, 0)].t-r.lag, r.fixes[min(k+1, len(r.fixes)-1)].t-r.lag
	return slices.ContainsFunc(r.s.Gaps, func(g [2]float64) bool { return g[0] < b && g[1] > a })
}

// rms returns the two root mean square errors over all fixes, m/s.
func (c comparison) rms() (with, alone float64) {
	n := float64(max(len(c.at), 1))
	for k := range c.at {
		with, alone = with+c.with[k]/n, alone+c.alone[k]/n
	}
	return math.Sqrt(with), math.Sqrt(alone)
}

// worst returns the stretch of fixes over which the accelerometer does worst,
// if that is significant: the maximum subarray (Kadane's algorithm; Bentley,
// Communications of the ACM 27 (1984) 865).
func (c comparison) worst() (lo, hi int, found bool) {
	best, sum, from := 0.0, 0.0, 0
	for k := range c.at {
		if sum <= 0 {
			sum, from = 0, k
		}
		if sum += c.with[k] - lostTimes*c.alone[k]; sum > best {
			best, lo, hi = sum, from, k+1
		}
	}
	if hi-lo < lostFixes || c.at[hi-1]-c.at[lo] < lostLong {
		return 0, 0, false
	}
	var with, alone, spread float64
	for k := lo; k < hi; k++ {
		d := c.with[k] - c.alone[k]
		with, alone, spread = with+c.with[k], alone+c.alone[k], spread+d*d
	}
	clear := with > lostTimes*lostTimes*alone && with-alone > lostSure*math.Sqrt(spread)
	return lo, hi, clear
}

// disableAccelerometer disables the accelerometer over a part of the ride,
// takes the noise learned from the satellites alone there, and learns the rest
// again.
func (r *ride) disableAccelerometer(d GNSSOnly, n noise) {
	r.withoutAccel = append(r.withoutAccel, d)
	r.n.walk, r.n.jolt = n.walk, n.jolt
	s := r.s
	for i := s.Index(d.From); i <= s.Index(d.To); i++ {
		r.raw[i] = 0
	}
	s.Spare(r.force.Once, r.force.Twice, r.noisy, r.blind)
	if r.gnssOnly == nil {
		r.gnssOnly = s.Sheet()
	}
	r.integrate(s.Sheet())
	r.pass()
	r.maximise(learnedFused, mostEvals/2, func(float64) {})
	r.expectDrift()
	r.pass()
}

// inGNSSOnly reports whether a time lies in a part without the accelerometer.
func (r *ride) inGNSSOnly(t float64) bool {
	return slices.ContainsFunc(r.withoutAccel, func(d GNSSOnly) bool { return d.Contains(t) })
}
