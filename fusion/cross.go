package fusion

import (
	"math"
	"slices"
)

// Moment is the track at one time.
type Moment struct{ T, S, V, A float64 }

// At interpolates the track at time t, clamped to its ends.
func (tr *Track) At(t float64) Moment {
	n := len(tr.T)
	j, _ := slices.BinarySearch(tr.T, t)
	if j == 0 {
		return tr.moment(0)
	}
	if j == n {
		return tr.moment(n - 1)
	}
	a, b := tr.moment(j-1), tr.moment(j)
	u := (t - a.T) / (b.T - a.T)
	return Moment{T: t, S: a.S + u*(b.S-a.S), V: a.V + u*(b.V-a.V), A: a.A + u*(b.A-a.A)}
}

func (tr *Track) moment(i int) Moment {
	return Moment{T: tr.T[i], S: tr.S[i], V: tr.V[i], A: tr.A[i]}
}

// Crossing is the time at which the speed or the distance passed a level. Its
// error is the linear combination Terms of the track's errors (first-order
// propagation).
type Crossing struct {
	T     float64 // s on the log's clock
	SE    float64 // standard error, s
	Terms []Term  // error of T in terms of the track's errors
}

// TimeAtSpeed finds when the speed first passes level (m/s) inside the span, in
// either direction. It returns false if it never does.
func (tr *Track) TimeAtSpeed(level float64, within Span) (Crossing, bool) {
	t, ok := tr.first(tr.V, level, within)
	if !ok {
		return Crossing{}, false
	}
	// The error of the speed divides by how fast the speed changes, taken
	// over a quarter second so that vibration does not decide.
	const reach = 0.125
	a := (tr.At(t+reach).V - tr.At(t-reach).V) / (tr.At(t+reach).T - tr.At(t-reach).T)
	c := Crossing{T: t, Terms: []Term{{T: t, V: -1 / a}}}
	c.SE = tr.SD(c.Terms)
	return c, true
}

// TimeAtDistance finds when the bike has come metres further than at from,
// inside the span. The error of the distance at from is included, since the
// distance between the two counts.
func (tr *Track) TimeAtDistance(from, metres float64, within Span) (Crossing, bool) {
	t, ok := tr.first(tr.S, tr.At(from).S+metres, within)
	if !ok {
		return Crossing{}, false
	}
	v := math.Max(tr.At(t).V, 1e-3)
	c := Crossing{T: t, Terms: []Term{{T: t, S: -1 / v}, {T: from, S: 1 / v}}}
	c.SE = tr.SD(c.Terms)
	return c, true
}

// first finds when x first passes level inside a span, by linear interpolation.
func (tr *Track) first(x []float64, level float64, within Span) (float64, bool) {
	i, _ := slices.BinarySearch(tr.T, within.From)
	for ; i+1 < len(tr.T) && tr.T[i+1] <= within.To; i++ {
		a, b := x[i]-level, x[i+1]-level
		if a == 0 {
			return tr.T[i], true
		}
		if (a < 0) != (b < 0) {
			return tr.T[i] + (tr.T[i+1]-tr.T[i])*a/(a-b), true
		}
	}
	return 0, false
}

// Between is the time from one crossing to another with its standard error, s.
// Common errors such as the receiver's lag cancel.
func (tr *Track) Between(a, b Crossing) (seconds, se float64) {
	terms := slices.Clone(b.Terms)
	for _, x := range a.Terms {
		terms = append(terms, Term{T: x.T, S: -x.S, V: -x.V})
	}
	return b.T - a.T, tr.SD(terms)
}
