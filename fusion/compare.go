package fusion

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

const (
	mayLose   = 1.05 // how much worse than the satellites alone the whole may be at fixes left out
	lostTimes = 1.5  // and how much worse a part, where it is not by chance:
	lostSure  = 3.0  // standard deviations
	lostFixes = 12
	mostParts = 5
	lasting   = 0.15 // m/s that a receiver may err for long; what goes beyond is the smoother's fault
)

// misses is how far each fix lies from what all others say of it, m/s; NaN where
// a fix was not asked. Speed is what counts: of the error that is blamed on the
// receiver for long, no more than receivers have is granted.
func (r *ride) misses() []float64 {
	places := r.places(coarseGrid, 0.5)
	nodes := r.nodes(places)
	x, p := r.first(0)
	_, left := r.filter.LeaveOut(nodes, x, p)
	out := make([]float64, len(r.fixes))
	for k := range out {
		out[k] = math.NaN()
	}
	for i, pl := range places {
		if pl.fix >= 0 && nodes[i].Seen && !nodes[i].Sight.Still {
			c := left[i].Lasting
			out[pl.fix] = left[i].Off + c - math.Max(-lasting, math.Min(c, lasting))
		}
	}
	return out
}

// loses holds the ride against the satellites' speeds alone: each fix is left
// out in turn and told by all others (leave-one-out cross-validation: Stone,
// Journal of the Royal Statistical Society B 36 (1974) 111). Parts of the ride in
// which the accelerometer makes that clearly worse do without it; where the whole
// is still worse, the ride does.
func (r *ride) loses(alone *ride) (why finding.Finding, lost bool) {
	without := alone.misses()
	c := compared(r, alone, r.misses(), without)
	for range mostParts {
		span, found := c.worst()
		if !found {
			break
		}
		why := finding.New(codeLosesPart, finding.Moment("from", span.From), finding.Moment("to", span.To))
		r.deafen(Deaf{Span: span, Why: why}, alone.n)
		c = compared(r, alone, r.misses(), without)
	}
	fused, by := c.rms()
	if fused <= mayLose*by {
		return finding.Finding{}, false
	}
	return finding.New(codeLoses, finding.Speed("fused", fused), finding.Speed("alone", by)), true
}

// comparison is how far fixes left out are missed with the accelerometer and
// without it.
type comparison struct {
	at          []float64 // s, the lag taken off
	with, alone []float64 // squares, (m/s)²
}

// compared takes the fixes that both ways were asked for, but those that both
// hold for wild.
func compared(r, alone *ride, with, without []float64) comparison {
	var c comparison
	for k := range with {
		wild := r.fixes[k].extra > 0 && alone.fixes[k].extra > 0
		if !math.IsNaN(with[k]+without[k]) && !wild && !r.besideGap(k) {
			c.at = append(c.at, r.fixes[k].t-r.lag)
			c.with, c.alone = append(c.with, with[k]*with[k]), append(c.alone, without[k]*without[k])
		}
	}
	return c
}

// besideGap reports whether motion is missing next to a fix: what happened
// meanwhile neither way tells, and the track says so.
func (r *ride) besideGap(k int) bool {
	a, b := r.fixes[max(k-1, 0)].t-r.lag, r.fixes[min(k+1, len(r.fixes)-1)].t-r.lag
	return slices.ContainsFunc(r.s.Gaps, func(g [2]float64) bool { return g[0] < b && g[1] > a })
}

// rms are the two errors of the whole, m/s.
func (c comparison) rms() (with, alone float64) {
	n := float64(max(len(c.at), 1))
	for k := range c.at {
		with, alone = with+c.with[k]/n, alone+c.alone[k]/n
	}
	return math.Sqrt(with), math.Sqrt(alone)
}

// worst is the stretch of fixes over which the accelerometer loses the most, if
// that is beyond chance: that of the greatest sum (Kadane's algorithm; Bentley,
// Communications of the ACM 27 (1984) 865).
func (c comparison) worst() (Span, bool) {
	best, sum, from := 0.0, 0.0, 0
	lo, hi := 0, 0
	for k := range c.at {
		if sum <= 0 {
			sum, from = 0, k
		}
		if sum += c.with[k] - lostTimes*c.alone[k]; sum > best {
			best, lo, hi = sum, from, k+1
		}
	}
	if hi-lo < lostFixes {
		return Span{}, false
	}
	var with, alone, spread float64
	for k := lo; k < hi; k++ {
		d := c.with[k] - c.alone[k]
		with, alone, spread = with+c.with[k], alone+c.alone[k], spread+d*d
	}
	clear := with > lostTimes*lostTimes*alone && with-alone > lostSure*math.Sqrt(spread)
	return Span{c.at[lo], c.at[hi-1]}, clear
}

// deafen does without the accelerometer over a part of the ride, with the noise
// that the satellites alone showed, and learns the rest again.
func (r *ride) deafen(d Deaf, n noise) {
	r.deafened = append(r.deafened, d)
	r.n.walk, r.n.jolt = n.walk, n.jolt
	s := r.s
	for i := s.Index(d.From); i <= s.Index(d.To); i++ {
		r.raw[i] = 0
	}
	s.Spare(r.force.Once, r.force.Twice, r.noisy, r.blind)
	if r.deaf == nil {
		r.deaf = s.Sheet()
	}
	r.integrate(s.Sheet())
	r.pass()
	r.maximise(learnedFused, mostEvals/2, func(float64) {})
	r.allow()
	r.pass()
}

// isDeafened reports whether a time lies in a part that does without the
// accelerometer.
func (r *ride) isDeafened(t float64) bool {
	return slices.ContainsFunc(r.deafened, func(d Deaf) bool { return d.Contains(t) })
}
