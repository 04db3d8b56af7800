package marks

import (
	"math"
	"sort"

	"stillair/fusion"
)

// trace is the part of a track covered by one run.
type trace struct {
	t, v, s  []float64
	recorded *recorded // before it was smoothed, where that is kept
}

// recorded is a trace as the track gives it, with its errors.
type recorded struct {
	trace
	errs Errors
}

// newTrace cuts a track to the times from a to b.
func newTrace(track *fusion.Track, a, b float64) trace {
	i := sort.SearchFloat64s(track.T, a)
	j := sort.SearchFloat64s(track.T, b)
	j = min(j+1, len(track.T))
	return trace{t: track.T[i:j], v: track.Signed()[i:j], s: track.S[i:j]}
}

// around is half the time over which the speed is averaged to find when it
// passes a value: long enough to suppress vibration, short compared with a gear
// change.
const around = 0.05 // s

// local is the value and the slope at t of a straight line through the speed
// around it.
func (r trace) local(t float64) (v, a float64) {
	i := sort.SearchFloat64s(r.t, t-around)
	j := sort.SearchFloat64s(r.t, t+around)
	if j-i < 3 {
		return r.speed(t), r.slope(t)
	}
	var n, st, sv, stt, stv float64
	for k := i; k < j; k++ {
		x := r.t[k] - t
		n, st, sv, stt, stv = n+1, st+x, sv+r.v[k], stt+x*x, stv+x*r.v[k]
	}
	a = (n*stv - st*sv) / (n*stt - st*st)
	return (sv - a*st) / n, a
}

func (r trace) speed(t float64) float64    { return interpolate(r.t, r.v, t) }
func (r trace) distance(t float64) float64 { return interpolate(r.t, r.s, t) }

// slope is that of the line between the samples next to t, m/s².
func (r trace) slope(t float64) float64 {
	if len(r.t) < 2 {
		return math.NaN()
	}
	i := max(1, min(sort.SearchFloat64s(r.t, t), len(r.t)-1))
	return (r.v[i] - r.v[i-1]) / (r.t[i] - r.t[i-1])
}

func interpolate(x, y []float64, at float64) float64 {
	i := sort.SearchFloat64s(x, at)
	switch {
	case len(x) == 0:
		return math.NaN()
	case i == 0:
		return y[0]
	case i == len(x):
		return y[len(y)-1]
	}
	f := (at - x[i-1]) / (x[i] - x[i-1])
	return y[i-1] + f*(y[i]-y[i-1])
}

// leap is the ratio of variances above which the nonlinearity two or three
// standard deviations away is a gear change rather than a curvature.
const leap = 2

// whenSpeed is the time at which the averaged speed first passes v from time a
// on, upward for dir +1 and downward for dir −1.
//
// The recorded speed has an error e, so the bike passed v when the recording
// passed v + e. Where the speed rises steadily that shifts the time by e over
// the slope. Just below the speed of a gear change it does not: with a slightly
// larger error, v was reached only after the change. So the time is evaluated
// over the distribution of e, and the form is its linear regression on e, with
// the residual as a variance of its own (statistical linearisation: Gelb,
// Applied Optimal Estimation, section 6.2). A gear change two or three standard
// deviations away has little weight there, but shifts the time by ten of them
// when it occurs: the variance is at least such that the same number of
// standard errors covers it.
//
// Where the speed before smoothing is kept, as for the times of a launch from
// standstill, the variance also covers what it shows; see apart.
func (r trace) whenSpeed(errs Errors, v, a, dir float64) form {
	f := r.whenLevel(errs, v, a, dir)
	if r.recorded != nil {
		f.own += r.recorded.apart(f, errs, v, a, dir)
	}
	return f
}

// apart is the variance that the error of a time from the smoothed speed lacks, since
// smoothing may take a short gear change for noise. An error of the speed must shift the
// time by about as much along the recorded speed as along the smoothed one, and the
// two times may differ by no more than smoothing can have gained: the difference
// between an efficient estimate and another has the difference of their variances
// (Hausman, Econometrica 46, 1978, from memory).
func (r *recorded) apart(f form, errs Errors, v, a, dir float64) float64 {
	const tooFar = 2 // standard deviations
	g := r.whenLevel(errs, v, a, dir)
	if math.IsNaN(g.x) || math.IsNaN(f.x) {
		return 0
	}
	square := func(x float64) float64 { return x * x }
	smoothed, shifted, whole := square(f.value(errs).SE), square(g.value(errs).SE), square(g.value(r.errs).SE)
	lacking, gained := 0.0, math.Max(0, whole-smoothed)
	if shifted > leap*smoothed {
		lacking = shifted - smoothed
	}
	if d := square(f.x - g.x); d > square(tooFar)*gained {
		lacking = math.Max(lacking, d)
	}
	return lacking
}

// whenLevel is whenSpeed of one trace.
func (r trace) whenLevel(errs Errors, v, a, dir float64) form {
	c := r.climb(a, dir)
	t, ok := c.passes(dir * v)
	if !ok {
		return form{x: math.NaN()}
	}
	own, blur := 0.0, r.blur(t)
	sd := math.Max(math.Hypot(errs.SD([]fusion.Term{{T: t, V: 1}}), blur), 1e-6)
	var mean, square, with float64
	for _, z := range normalDraws() {
		at := c.reaches(dir*v + z*sd)
		mean += at / draws
		square += (at - t) * (at - t) / draws
		with += (at - t) * z / draws
	}
	own = square - (mean-t)*(mean-t) - with*with
	variance := own + with*with
	for _, z := range []float64{-3, -2, 2, 3} {
		if far := (c.reaches(dir*v+z*sd) - mean) / z; far*far > leap*variance {
			own = math.Max(own, far*far-with*with)
		}
	}
	own = math.Max(own, 0) + blur*blur*with*with/(sd*sd)
	return form{x: mean, terms: []fusion.Term{{T: t, V: -dir * with / sd}}, own: own}
}

// blur is by how much the averages over time, of the force in the fusion and of the
// speed here, may have rounded the speed off, m/s, as at the corner before a gear
// change: the effect of one more average of the same variance (Tukey's twicing),
// divided by the share of a corner that this shows.
func (r trace) blur(t float64) float64 {
	const (
		steps  = 8
		width  = 0.065 // s to either side: an average of the variance of both together
		corner = 2.4   // 1/(√2 − 1): a Gaussian average of standard deviation s lowers a corner by s, two by √2·s
	)
	mean := 0.0
	for k := -steps; k <= steps; k++ {
		v, _ := r.local(t + width*float64(k)/steps)
		mean += v / (2*steps + 1)
	}
	v, _ := r.local(t)
	return corner * math.Abs(mean-v)
}

// whenDistance is the time at which the bike is d farther than at time a.
func (r trace) whenDistance(d, a float64) form {
	goal := r.distance(a) + d
	k := sort.SearchFloat64s(r.s, goal)
	if k == 0 || k == len(r.s) {
		return form{x: math.NaN()}
	}
	f := (goal - r.s[k-1]) / (r.s[k] - r.s[k-1])
	t := r.t[k-1] + f*(r.t[k]-r.t[k-1])
	v, _ := r.local(t)
	return form{x: t, terms: []fusion.Term{{T: t, S: -1 / v}, {T: a, S: 1 / v}}}
}

// speedAt is the averaged speed at the time that a form gives.
func (r trace) speedAt(when form) form {
	v, a := r.local(when.x)
	return when.times(a).plus(v, fusion.Term{T: when.x, V: 1})
}

// distanceAt is the distance at the time that a form gives.
func (r trace) distanceAt(when form) form {
	v, _ := r.local(when.x)
	return when.times(v).plus(r.distance(when.x), fusion.Term{T: when.x, S: 1})
}
