package fusion

import (
	"math"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// Where the accelerometer cannot be used, the satellite speeds are smoothed on
// their own by the same filter: nothing is measured between the fixes, and the
// state of the accelerometer's bias holds the negative acceleration. It is a
// random walk, so the speed is an integrated random walk (the model behind a
// cubic smoothing spline: Wahba, Spline Models for Observational Data). White
// noise on the acceleration allows for brakes and gear changes between two
// fixes; with it alone the smoothed speed would be piecewise linear. The ratio
// of the two is learned from the fixes. The lag remains unknown and cancels
// between two times of the ride.
//
// These limits (how much a stretch may vary, how far the noise is widened
// beyond its most probable value) were chosen on the one simulated ride of
// TestTrackAlone in package runs, and judged on the real drive and on the rides
// of TestCoastsAlone and TestPushesAlone.
const (
	aloneStep   = 0.1 // s between the instants of such a track, at most
	aloneMost   = 400 // instants per fix at most; fixes over 40 s apart have fewer a second, so that memory grows with the fixes and not with the span
	alonePerFix = 4.0 // instants per fix at least; at most four times as many, however close together most are
	aloneBeyond = 0.5 // s before the first fix and after the last
	haltSpeed   = 0.3 // m/s in several consecutive fixes: the bike stands
	haltFixes   = 3
	aloneEvals  = 50 // function evaluations for three parameters
	livenings   = 2
	livelyReach = 2   // fixes on each side
	livelyPrior = 2.0 // weight of the prior, in fixes
	livelyMost  = 30.0
	livelyLeast = 0.5
	livelyFrom  = 0.8 // s between fixes; closer ones show mainly their noise
	wanderMore  = 1.6 // expected over most probable size of an acceleration learned from few fixes
	rareFixes   = 6.0 // s between fixes from which consecutive accelerations are unrelated: straight lines
)

// newAlone returns a ride that uses the satellite speeds alone.
//
// The lag is not estimated: without an accelerometer it is not observable, and
// a filter free to shift its own curve would fit one to the noise. The times of
// the track are those of the fixes less the assumed lag, and its uncertainties
// are those of the speed at these times.
func newAlone(fixes []fix, prior noise, lag Lag) *ride {
	n := len(fixes)
	from, to := fixes[0].t-lag.Seconds-aloneBeyond, fixes[n-1].t-lag.Seconds+aloneBeyond
	step := math.Min(aloneStep, usualInterval(fixes)/alonePerFix)
	step = math.Max(step, (to-from)/((to-from)/aloneStep+alonePerFix*alonePerFix*float64(n)))
	step = math.Max(step, (to-from)/(aloneMost*float64(n)))
	s := motion.Even(from, to, step)
	r := &ride{s: s, fixes: append([]fix(nil), fixes...), alone: true, n: prior, prior: prior, lag: lag.Seconds, before: lag.Seconds, lagSD: aloneLagSD, given: lag}
	for k := range r.fixes {
		r.fixes[k].extra = 0
	}
	r.n.drift = aloneDrift
	r.markStandstills()
	r.stale = make([]bool, len(s.T))
	r.raw, r.density = s.Sheet(), s.Sheet()
	r.noisy, r.blind, r.gnssOnly = s.Sheet(), s.Sheet(), s.Sheet()
	for i, t := range s.T {
		r.gnssOnly[i] = t - s.T[0]
	}
	r.force = s.Integrate(r.raw)
	r.ref = newReference(s)
	r.ref.set(s, roughSpeed(s, r.fixes, r.lag))
	return r
}

// usualInterval is the median time between two fixes, s.
func usualInterval(fixes []fix) float64 {
	h := make([]float64, len(fixes)-1)
	for i := range h {
		h[i] = fixes[i+1].t - fixes[i].t
	}
	return median.Of(h)
}

// markStandstills marks the fixes of standstills: several in a row with almost
// no speed. A single one may come from a receiver that cannot resolve low
// speeds.
func (r *ride) markStandstills() {
	for i := 0; i < len(r.fixes); i++ {
		j := i
		for j < len(r.fixes) && r.fixes[j].speed <= haltSpeed {
			j++
		}
		if j-i >= haltFixes {
			for k := i; k < j; k++ {
				r.fixes[k].halted = true
			}
			r.halts = append(r.halts, Span{r.fixes[i].t - r.lag, r.fixes[j-1].t - r.lag})
		}
		i = max(i, j-1)
	}
}

// learnAlone estimates the noise by maximum likelihood.
func (r *ride) learnAlone(done func(share float64)) {
	which := learnedAlone
	done = rising(done)
	if usualInterval(r.fixes) > rareFixes {
		which = r.straight()
	}
	r.pass()
	r.maximise(which, aloneEvals, done)
	r.pass()
	if usualInterval(r.fixes) > livelyFrom {
		for range livenings {
			r.scaleProcessNoise()
			r.pass()
		}
	}
	r.maximise(which, aloneEvals, done)
	r.pass()
	if rms(r.misses()) > rms(linesMiss(r.fixes)) {
		r.maximise(r.straight(), aloneEvals, done)
		r.pass()
	}
	r.n.walk *= wanderMore
	r.n.jolt *= wanderMore
}

// scaleProcessNoise scales the process noise locally: riders cruise for minutes
// and then start as hard as they can, so one variance would be wrong for both.
// The factor is the mean squared normalised residual of the surrounding fixes,
// shrunk towards one by some residuals of the expected size.
func (r *ride) scaleProcessNoise() {
	all := r.misses()
	by := make([]float64, len(all))
	for k := range all {
		sum, n := livelyPrior, livelyPrior
		for j := max(k-livelyReach, 0); j <= min(k+livelyReach, len(all)-1); j++ {
			if m := all[j]; m.judged && !m.wild {
				sum, n = sum+math.Min(m.off*m.off/m.variance, livelyMost), n+1
			}
		}
		by[k] = math.Max(sum/n, livelyLeast)
	}
	k, last := 0, r.gnssOnly[0]
	for i := 1; i < len(r.gnssOnly); i++ {
		for k+1 < len(by) && r.s.T[i] > (r.fixes[k].t+r.fixes[k+1].t)/2-r.lag {
			k++
		}
		h := r.gnssOnly[i] - last
		last = r.gnssOnly[i]
		r.gnssOnly[i] = r.gnssOnly[i-1] + h*by[k]
	}
}

// straight makes the speed piecewise linear between the fixes, and returns the
// noise parameters that are left to learn.
func (r *ride) straight() []int {
	r.n.walk = r.prior.walk * math.Exp(-5*spread[5])
	return learnedStraight
}

// linesMiss returns the distance of each fix but the first and last from the
// straight line between its neighbours, m/s.
func linesMiss(fixes []fix) []miss {
	out := make([]miss, len(fixes))
	for k := 1; k+1 < len(fixes); k++ {
		off, _ := lineMiss(fixes, k)
		out[k] = miss{judged: true, off: off}
	}
	return out
}

// lineMiss returns the distance of fix k from the straight line between its
// neighbours, m/s, and its position between them as a fraction.
func lineMiss(fixes []fix, k int) (off, share float64) {
	a, b := fixes[k-1], fixes[k+1]
	share = (fixes[k].t - a.t) / (b.t - a.t)
	return fixes[k].speed - a.speed - (b.speed-a.speed)*share, share
}

// rms is the root mean square of the misses without the first and the last,
// m/s.
func rms(all []miss) float64 {
	var sum, n float64
	for _, m := range all[1 : len(all)-1] {
		if m.judged {
			sum, n = sum+m.off*m.off, n+1
		}
	}
	return math.Sqrt(sum / math.Max(n, 1))
}

// trackAlone returns the track of the satellite speeds alone, with the reason
// for it.
func (r *ride) trackAlone(why finding.Finding) (*Track, error) {
	if err := r.checkNoise(); err != nil {
		return nil, err
	}
	nodes := r.nodes(r.places(fineGrid, fineGrid))
	x, p := r.first(0)
	smoothed := kalman.Smooth(nodes, x, p)
	tr := r.track(nodes, smoothed)
	if err := stageTrack.finite(tr.T, tr.V, tr.S, tr.A, tr.VSD, tr.ASD); err != nil {
		return nil, err
	}
	tr.Still, tr.Lag = r.halts, r.given
	tr.GNSSOnly = []GNSSOnly{{Span: Span{tr.T[0], tr.T[len(tr.T)-1]}, Why: why}}
	tr.Shake = r.s.Sheet()
	for i := range tr.Shake {
		tr.Shake[i], tr.Force[i] = math.NaN(), math.NaN()
	}
	tr.Notes = r.notes(tr)
	return tr, nil
}
