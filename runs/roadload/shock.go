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
	products := make(prediction, w)
	var square covariance
	h := make([]float64, w)
	for i := len(c.t) - 1; i > 0; i-- {
		if i < len(c.t)-1 {
			for j := range products {
				products[j] = c.step[i].backward(products[j])
			}
			square = square.through(c.step[i].backward)
		}
		for ch := c.channels - 1; ch >= 0; ch-- {
			if f := &c.sights[i*channels+ch]; f.variance > 0 {
				products.back(c.rowOf(c.white, i, ch), f)
				square = square.back(f)
			}
		}
		for j := range h {
			h[j] = products[j][0]
		}
		out[i] = s.probe(c, h, square[0][0])
	}
	return out
}

// back passes a measurement backwards: the transposed update.
func (p prediction) back(white []float64, f *sighting) {
	scale := 1 / math.Sqrt(f.variance)
	for j, e := range white {
		x := &p[j]
		add := e*scale - x.dot(&f.gain)
		for q := range x {
			x[q] += add * f.seen[q]
		}
	}
}

// back is the same for the square: (I − k·h)ᵀ·p·(I − k·h) + hᵀ·h/variance.
func (p covariance) back(f *sighting) covariance {
	p = p.through(func(x vector) vector {
		kx := x.dot(&f.gain)
		for q := range x {
			x[q] -= kx * f.seen[q]
		}
		return x
	})
	for i := range p {
		for j := range p {
			p[i][j] += f.seen[i] * f.seen[j] / f.variance
		}
	}
	return p
}
