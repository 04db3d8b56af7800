package roadload

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/mat"
)

// test is the result of testing one more parameter in the model: its
// generalised least-squares (GLS) estimate and standard error as if it were
// fitted together with everything else.
type test struct{ estimate, se float64 }

func (t test) size() float64 { return math.Abs(t.estimate) / t.se }

// probe accumulates the runs' information about one more column.
type probe struct {
	square, info, score float64
	x                   *mat.VecDense // its products with the common columns
}

// add accumulates a run, in which the column is given by its products h with
// the run's columns and its square. h is overwritten.
func (p *probe) add(s *system, c *coast, h []float64, square float64) {
	if p.x == nil {
		p.x = mat.NewVecDense(s.lay.size, nil)
	}
	p.square += square
	p.info += c.eliminateFrom(h, square)
	p.score += h[c.width()-1]
	for j, g := range c.cols {
		p.x.SetVec(g, p.x.AtVec(g)+h[c.own+j])
		p.score -= h[c.own+j] * s.x.AtVec(g)
	}
}

// test evaluates the accumulated column; it overwrites the probe.
func (p *probe) test(s *system) test {
	// xᵀ·(UᵀU)⁻¹·x is the square of U⁻ᵀ·x.
	blas64.Trsv(blas.Trans, s.upper(), p.x.RawVector())
	info := p.info - mat.Dot(p.x, p.x)
	if !(info > 1e-9*p.square) {
		return test{0, math.Inf(1)}
	}
	return test{p.score / info, 1 / math.Sqrt(info)}
}

// column tests whether the run has a value of its own for the j-th of its
// columns.
func (s *system) column(c *coast, j int) test {
	var p probe
	p.addColumn(s, c, j, 1)
	return p.test(s)
}

// addColumn accumulates a run in which the column is a multiple of its j-th.
// The own unknowns are already eliminated from norm.
func (p *probe) addColumn(s *system, c *coast, j int, times float64) {
	w := c.width()
	h := make([]float64, w)
	for k := c.own; k < w; k++ {
		a, b := min(c.own+j, k), max(c.own+j, k)
		h[k] = times * c.norm[a*w+b]
	}
	p.add(s, c, h, times*h[c.own+j])
}

// shocks tests at every fix whether the speed jumped just before it: the effect
// of a touch of the brake or the wake of a lorry between two fixes. The
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
			if f := &c.obs[i*channels+ch]; f.variance > 0 {
				products.back(c.rowOf(c.white, i, ch), f)
				square = square.back(f)
			}
		}
		for j := range h {
			h[j] = products[j][0]
		}
		var p probe
		p.add(s, c, h, square[0][0])
		out[i] = p.test(s)
	}
	return out
}

// back is the transposed update, for the backward pass.
func (p prediction) back(white []float64, f *observation) {
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
func (p covariance) back(f *observation) covariance {
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
