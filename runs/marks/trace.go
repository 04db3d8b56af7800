package marks

import (
	"math"
	"sort"

	"stillair/fusion"
)

// trace is the part of a track that one run covers.
type trace struct {
	t, v, s []float64
}

// newTrace cuts a track to the times from a to b.
func newTrace(track *fusion.Track, a, b float64) trace {
	i := sort.SearchFloat64s(track.T, a)
	j := sort.SearchFloat64s(track.T, b)
	j = min(j+1, len(track.T))
	return trace{t: track.T[i:j], v: track.Signed()[i:j], s: track.S[i:j]}
}

// around is half the time over which the speed is averaged to find when it
// passes a value: long enough for the engine's shaking, short against a gear
// change.
const around = 0.1 // s

// local is the straight line through the speed around time t: its value there
// and its slope.
func (r trace) local(t float64) (v, a float64) {
	i := sort.SearchFloat64s(r.t, t-around)
	j := sort.SearchFloat64s(r.t, t+around)
	if j-i < 3 {
		return r.speed(t), math.NaN()
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

// whenSpeed is when the averaged speed first passes v from time a on, upward
// for dir +1 and downward for dir −1.
func (r trace) whenSpeed(v, a, dir float64) form {
	never := form{x: math.NaN()}
	from := sort.SearchFloat64s(r.t, a)
	for k := from; k < len(r.t); k++ {
		if dir*(r.v[k]-v) < 0 {
			continue
		}
		if k == from {
			return never // it begins beyond
		}
		t := r.locate(v, r.t[k])
		if math.IsNaN(t) {
			return never
		}
		_, slope := r.local(t)
		return form{x: t, terms: []fusion.Term{{T: t, V: -1 / slope}}}
	}
	return never
}

// locate improves a first guess of when the averaged speed is v, by halving
// an interval about it.
func (r trace) locate(v, guess float64) float64 {
	low, high := math.Max(guess-2*around, r.t[0]), math.Min(guess+2*around, r.t[len(r.t)-1])
	f := func(t float64) float64 { x, _ := r.local(t); return x - v }
	fl, fh := f(low), f(high)
	if fl*fh > 0 {
		return math.NaN()
	}
	for high-low > 1e-5 {
		mid := (low + high) / 2
		if fm := f(mid); fm*fl <= 0 {
			high = mid
		} else {
			low, fl = mid, fm
		}
	}
	return (low + high) / 2
}

// whenDistance is when the bike is d further than at time a.
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
