package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// test is the outcome of asking whether one more unknown belongs into the
// model: its generalised least-squares estimate and standard error, had it been
// fitted together with everything else.
type test struct{ estimate, se float64 }

func (t test) size() float64 { return math.Abs(t.estimate) / t.se }

// probe tests a column of one run, given by its products h with the run's
// columns and its square. h is used up.
func (s *system) probe(c *coast, h []float64, square float64) test {
	info := c.eliminateFrom(h, square)
	w := c.width()
	score := h[w-1]
	x := mat.NewVecDense(s.lay.size, nil)
	for j, g := range c.cols {
		x.SetVec(g, h[c.own+j])
		score -= h[c.own+j] * s.x.AtVec(g)
	}
	var y mat.VecDense
	if err := s.chol.SolveVecTo(&y, x); err != nil {
		return test{0, math.Inf(1)}
	}
	info -= mat.Dot(x, &y)
	if !(info > 1e-9*square) {
		return test{0, math.Inf(1)}
	}
	return test{score / info, 1 / math.Sqrt(info)}
}

// column tests whether the run wants a value of its own for the j-th of its
// columns. The own unknowns are already eliminated from norm.
func (s *system) column(c *coast, j int) test {
	w := c.width()
	h := make([]float64, w)
	for k := c.own; k < w; k++ {
		a, b := min(c.own+j, k), max(c.own+j, k)
		h[k] = c.norm[a*w+b]
	}
	return s.probe(c, h, h[c.own+j])
}

// shocks tests at every fix whether the speed jumped just before it: what a
// touch of the brake or the wake of a lorry does between two fixes. The
// products of all such columns come from one pass backwards over the filter,
// the disturbance smoother (de Jong, Biometrika 75 (1988) 594; Harvey and
// Koopman, J. Bus. Econ. Stat. 10 (1992) 377).
func (s *system) shocks(c *coast) []test {
	w := c.width()
	out := make([]test, len(c.t))
	r := newPrediction(w)
	var n covariance
	h := make([]float64, w)
	for i := len(c.t) - 1; i > 0; i-- {
		f := &c.steer[i]
		if i < len(c.t)-1 {
			r.back(&f.next)
			n = n.back(&f.next)
		}
		if f.variance > 0 {
			r.takeBack(c.white[i*w:(i+1)*w], f)
			n = n.takeBack(f)
		}
		copy(h, r.v)
		out[i] = s.probe(c, h, n.vv)
	}
	return out
}

// back carries products over a step, backwards: the transposed step.
func (p prediction) back(m *stepModel) {
	for j := range p.v {
		v := p.v[j]
		p.v[j] = m.fv * v
		p.g[j] = m.fvg*v + m.fg*p.g[j]
		p.d[j] *= m.fd
	}
}

// takeBack passes a fix backwards: the transposed update.
func (p prediction) takeBack(white []float64, f *filtering) {
	scale := 1 / math.Sqrt(f.variance)
	for j, e := range white {
		seen := e*scale - f.gain[0]*p.v[j] - f.gain[1]*p.g[j] - f.gain[2]*p.d[j]
		p.v[j] += seen
		p.d[j] += seen
	}
}

func (p covariance) back(m *stepModel) covariance {
	return covariance{
		vv: m.fv * m.fv * p.vv,
		vg: m.fv * (m.fvg*p.vv + m.fg*p.vg),
		vd: m.fv * m.fd * p.vd,
		gg: m.fvg*m.fvg*p.vv + 2*m.fvg*m.fg*p.vg + m.fg*m.fg*p.gg,
		gd: m.fd * (m.fvg*p.vd + m.fg*p.gd),
		dd: m.fd * m.fd * p.dd,
	}
}

// takeBack is (I − kz)ᵀ·p·(I − kz) + zᵀz/variance with z = (1, 0, 1).
func (p covariance) takeBack(f *filtering) covariance {
	k := f.gain
	a := p.vv*k[0] + p.vg*k[1] + p.vd*k[2]
	b := p.vg*k[0] + p.gg*k[1] + p.gd*k[2]
	d := p.vd*k[0] + p.gd*k[1] + p.dd*k[2]
	kpk := k[0]*a + k[1]*b + k[2]*d + 1/f.variance
	return covariance{
		vv: p.vv - 2*a + kpk, vg: p.vg - b, vd: p.vd - a - d + kpk,
		gg: p.gg, gd: p.gd - b, dd: p.dd - 2*d + kpk,
	}
}
