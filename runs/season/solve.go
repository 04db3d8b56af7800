package season

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// solution is a least-squares solution that may leave some directions open.
type solution struct {
	x    []float64
	cov  *mat.Dense
	open [][]float64 // directions, of unit length, about which the rides give no information
	chi2 float64
	dof  int
}

// faint is the share of the largest eigenvalue, of equations scaled to a unit
// diagonal, below which a direction is open.
const faint = 1e-9

// solve solves the normal equations by eigendecomposition, leaving out
// directions that the rides do not determine (the Moore-Penrose inverse).
func (e *equations) solve() (*solution, error) {
	n := len(e.parts) + 1
	a, g, yy := mat.NewSymDense(n, nil), make([]float64, n), 0.0
	at := 0
	for _, block := range e.cov {
		m := block.SymmetricDim()
		weight, err := inverse(block)
		if err != nil {
			return nil, err
		}
		for i := range m {
			for j := range m {
				w := weight.At(i, j)
				for p := range n {
					for q := range p + 1 {
						a.SetSym(p, q, a.At(p, q)+w*e.x[at+i][p]*e.x[at+j][q])
					}
					g[p] += w * e.x[at+i][p] * e.y[at+j]
				}
				yy += w * e.y[at+i] * e.y[at+j]
			}
		}
		at += m
	}
	return pseudo(a, g, yy, len(e.y))
}

// inverse of a covariance; one that rounding made indefinite is used without
// what its terms have in common.
func inverse(c *mat.SymDense) (mat.Symmetric, error) {
	var chol mat.Cholesky
	if !chol.Factorize(c) {
		d := mat.NewSymDense(c.SymmetricDim(), nil)
		for i := range c.SymmetricDim() {
			d.SetSym(i, i, c.At(i, i))
		}
		if !chol.Factorize(d) {
			return nil, finding.Fail(codeFew)
		}
	}
	var out mat.SymDense
	err := chol.InverseTo(&out)
	return &out, err
}

// pseudo solves a·x = g where a may be singular.
func pseudo(a *mat.SymDense, g []float64, yy float64, rows int) (*solution, error) {
	n := len(g)
	scale := make([]float64, n)
	scaled := mat.NewSymDense(n, nil)
	for i := range n {
		scale[i] = 1
		if d := a.At(i, i); d > 0 {
			scale[i] = 1 / math.Sqrt(d)
		}
	}
	for i := range n {
		for j := range i + 1 {
			scaled.SetSym(i, j, a.At(i, j)*scale[i]*scale[j])
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(scaled, true) {
		return nil, finding.Fail(codeFew)
	}
	var vectors mat.Dense
	eigen.VectorsTo(&vectors)
	values := eigen.Values(nil)
	s := &solution{x: make([]float64, n), cov: mat.NewDense(n, n, nil), chi2: yy}
	rank := 0
	for k, value := range values {
		v := make([]float64, n)
		for i := range n {
			v[i] = vectors.At(i, k) * scale[i]
		}
		if value < faint*slices.Max(values) {
			s.open = append(s.open, unit(v))
			continue
		}
		rank++
		along := 0.0
		for i := range n {
			along += v[i] * g[i]
		}
		for i := range n {
			s.x[i] += v[i] * along / value
			for j := range n {
				s.cov.Set(i, j, s.cov.At(i, j)+v[i]*v[j]/value)
			}
		}
		s.chi2 -= along * along / value
	}
	s.chi2 = math.Max(0, s.chi2) // rounding
	s.dof = rows - rank
	return s, nil
}

func unit(v []float64) []float64 {
	n := 0.0
	for _, x := range v {
		n = math.Hypot(n, x)
	}
	for i := range v {
		v[i] /= n
	}
	return v
}

// tells reports whether Σ c·x is estimable from the rides.
func (s *solution) tells(c []float64) bool {
	for _, o := range s.open {
		along := 0.0
		for i := range c {
			along += c[i] * o[i]
		}
		if math.Abs(along) > 1e-6 {
			return false
		}
	}
	return true
}

// fill lists the effects of the parts: each by itself if estimable, else as a
// replacement of a part of the base.
func (b *Budget) fill(e *equations, s *solution, rides []Ride) {
	var contrasts [][]float64
	n := len(e.parts) + 1
	for i, part := range e.parts {
		c := make([]float64, n)
		c[i] = 1
		effect := Effect{Part: part, Rides: withPart(rides, part)}
		ok := s.tells(c)
		for j := 0; !ok && e.base[i] == 0 && j < len(e.parts); j++ {
			if e.base[j] == 0 {
				continue
			}
			c[j] = -1
			if ok = s.tells(c); ok {
				effect.Instead = e.parts[j]
			} else {
				c[j] = 0
			}
		}
		if ok {
			b.Effects, contrasts = append(b.Effects, effect), append(contrasts, c)
		}
	}
	b.Cov = mat.NewSymDense(max(len(contrasts), 1), nil)
	for i, c := range contrasts {
		for j := range i + 1 {
			b.Cov.SetSym(i, j, b.Widened*b.Widened*inner(c, s.cov, contrasts[j]))
		}
		b.Effects[i].CdA = measure.Value{X: dot(c, s.x), SE: math.Sqrt(math.Max(0, b.Cov.At(i, i)))}
		half := distuv.UnitNormal.Quantile(0.975) * b.Effects[i].CdA.SE
		b.Effects[i].CI = [2]float64{b.Effects[i].CdA.X - half, b.Effects[i].CdA.X + half}
	}
	last := make([]float64, n)
	last[n-1] = 1
	b.BaseCdA = measure.Unknown()
	if s.tells(last) {
		b.BaseCdA = measure.Value{X: s.x[n-1], SE: math.Hypot(b.Widened*math.Sqrt(s.cov.At(n-1, n-1)), leastCommon(rides))}
	}
}

// leastCommon is the uncertainty of the drag areas from assumptions common to
// all rides, which more rides do not reduce.
func leastCommon(rides []Ride) float64 {
	least := math.Inf(1)
	for _, r := range rides {
		for _, l := range r.Loads {
			least = math.Min(least, l.Common())
		}
	}
	return least
}

func withPart(rides []Ride, part string) int {
	n := 0
	for _, r := range rides {
		if slices.ContainsFunc(r.Loads, func(l Load) bool { return slices.Contains(Parts(l.Setup), part) }) {
			n++
		}
	}
	return n
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}

func inner(a []float64, m mat.Matrix, b []float64) float64 {
	sum := 0.0
	for i := range a {
		for j := range b {
			sum += a[i] * m.At(i, j) * b[j]
		}
	}
	return sum
}
