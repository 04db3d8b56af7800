package marks

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// Joint gives the covariance of speed and distance at several times, in the
// order speed, distance, speed, distance and so on, in m/s and m.
type Joint func(times []float64) *mat.SymDense

// term is how much a figure moves with the error of the speed and of the
// distance at one time.
type term struct {
	t    float64
	v, s float64 // per m/s and per m
}

// form is a figure that depends on the motion in a linear way, for errors as
// small as they are: its value, its terms, and the variance that has another
// cause. Figures of one run share errors, and differences of forms keep them.
type form struct {
	x     float64
	terms []term
	own   float64
}

// minus is the difference of two figures whose own variances are independent.
func (f form) minus(g form) form {
	d := form{x: f.x - g.x, own: f.own + g.own}
	d.terms = append(d.terms, f.terms...)
	for _, t := range g.terms {
		d.terms = append(d.terms, term{t.t, -t.v, -t.s})
	}
	return d
}

// times is a figure multiplied by a constant.
func (f form) times(k float64) form {
	out := form{x: k * f.x, own: k * k * f.own}
	for _, t := range f.terms {
		out.terms = append(out.terms, term{t.t, k * t.v, k * t.s})
	}
	return out
}

// value propagates the covariance of the motion into the figure
// (JCGM 100:2008, section 5.2).
func (f form) value(joint Joint) measure.Value {
	if math.IsNaN(f.x) {
		return measure.Unknown()
	}
	weight := map[float64][2]float64{}
	for _, t := range f.terms {
		w := weight[t.t]
		weight[t.t] = [2]float64{w[0] + t.v, w[1] + t.s}
	}
	times := make([]float64, 0, len(weight))
	for t := range weight {
		times = append(times, t)
	}
	sort.Float64s(times)
	w := mat.NewVecDense(max(1, 2*len(times)), nil)
	for i, t := range times {
		w.SetVec(2*i, weight[t][0])
		w.SetVec(2*i+1, weight[t][1])
	}
	variance := f.own
	if len(times) > 0 {
		variance += mat.Inner(w, joint(times), w)
	}
	return measure.Value{X: f.x, SE: math.Sqrt(math.Max(variance, 0))}
}
