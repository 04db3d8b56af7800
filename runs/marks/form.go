package marks

import (
	"math"

	"stillair/fusion"
	"stillair/runs/measure"
)

// Errors gives the covariances of a track's errors; *fusion.Track implements
// it.
type Errors interface {
	SD(combination []fusion.Term) float64
	SpeedCov(times []float64) [][]float64
}

// form is a figure as a linear form in the errors of the track (first-order
// propagation): its value, its coefficients on the track's errors, and the
// variance from independent causes. Figures of one run have common errors,
// which cancel in differences of forms.
type form struct {
	x     float64
	terms []fusion.Term
	own   float64
}

// minus is the difference of two figures whose own variances are independent.
func (f form) minus(g form) form {
	d := g.times(-1)
	d.x += f.x
	d.own += f.own
	d.terms = append(d.terms, f.terms...)
	return d
}

// times is a figure multiplied by a constant.
func (f form) times(k float64) form {
	out := form{x: k * f.x, own: k * k * f.own}
	for _, t := range f.terms {
		out.terms = append(out.terms, fusion.Term{T: t.T, S: k * t.S, V: k * t.V})
	}
	return out
}

// plus adds a term in the track's errors.
func (f form) plus(x float64, t fusion.Term) form {
	f.x = x
	f.terms = append(f.terms[:len(f.terms):len(f.terms)], t)
	return f
}

// blend is the minimum-variance mean of two correlated estimates of the same
// quantity (best linear unbiased). An unknown one is ignored.
func (f form) blend(g form, errs Errors) form {
	if math.IsNaN(g.x) {
		return f
	}
	if math.IsNaN(f.x) {
		return g
	}
	se, other, apart := f.value(errs).SE, g.value(errs).SE, f.minus(g).value(errs).SE
	w := (se*se - other*other + apart*apart) / (2 * apart * apart)
	w = math.Max(0, math.Min(w, 1))
	return f.times(1 - w).minus(g.times(-w))
}

// value propagates the covariance of the motion into the figure
// (JCGM 100:2008, section 5.2).
func (f form) value(errs Errors) measure.Value {
	if math.IsNaN(f.x) {
		return measure.Unknown()
	}
	se := math.Sqrt(f.own)
	if len(f.terms) > 0 {
		se = math.Hypot(se, errs.SD(f.terms))
	}
	return measure.Value{X: f.x, SE: se}
}
