package power

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// spline is the Gaussian process for one pull: speed is
// β₀ + β₁·t + β₂·t²/2 plus a Wiener process integrated twice, of intensity q².
type spline struct {
	t, v []float64 // t from 0
	c    *mat.SymDense
	b    *mat.Dense // the three polynomials at t
}

// smoothed is what the spline says of the pull: acceleration at its points.
type smoothed struct {
	v, a      []float64
	cov       *mat.SymDense // of a
	bandwidth float64       // Hz, −3 dB; the pull's own length bounds it below
}

func newSpline(p Pull) *spline {
	n := len(p.T)
	s := &spline{t: make([]float64, n), v: p.V, c: p.Cov, b: mat.NewDense(n, 3, nil)}
	for i := range n {
		s.t[i] = p.T[i] - p.T[0]
		s.b.SetRow(i, polynomials(s.t[i]))
	}
	return s
}

func polynomials(t float64) []float64 { return []float64{1, t, t * t / 2} }

// kvv, kav and kaa are the covariances of speed with speed, of acceleration at
// s with speed at t, and of acceleration with acceleration, for unit intensity.
func kvv(s, t float64) float64 {
	m, d := math.Min(s, t), math.Abs(s-t)
	return m * m * m * (m*m/20 + d*m/8 + d*d/12)
}

func kav(s, t float64) float64 {
	m, d := math.Min(s, t), math.Abs(s-t)
	if s <= t {
		return m * m * (m*m/4 + 2*d*m/3 + d*d/2) / 2
	}
	return m * m * m * (m/4 + d/3) / 2
}

func kaa(s, t float64) float64 {
	m, d := math.Min(s, t), math.Abs(s-t)
	return m * m * (m/3 + d/2)
}

// solved is the spline at one intensity: V = q²·K + C factorised.
type solved struct {
	chol  mat.Cholesky
	vib   mat.Dense // V⁻¹·B
	info  mat.Cholesky
	beta  mat.VecDense
	resid mat.VecDense // V⁻¹·(v − B·β)
	loss  float64      // minus twice the restricted log-likelihood
}

var errNotDefinite = errors.New("the covariance of the pull's speed is not positive definite")

func (s *spline) solve(q2 float64) (*solved, error) {
	n := len(s.t)
	v := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			v.SetSym(i, j, s.c.At(i, j)+q2*kvv(s.t[i], s.t[j]))
		}
		// A millimetre a second keeps nearly equal neighbours apart.
		v.SetSym(i, i, v.At(i, i)+1e-6)
	}
	var so solved
	if !so.chol.Factorize(v) {
		return nil, errNotDefinite
	}
	y := mat.NewVecDense(n, s.v)
	var viy, bty mat.VecDense
	var btb mat.Dense
	if err := so.chol.SolveTo(&so.vib, s.b); err != nil {
		return nil, err
	}
	if err := so.chol.SolveVecTo(&viy, y); err != nil {
		return nil, err
	}
	btb.Mul(s.b.T(), &so.vib)
	if !so.info.Factorize(symmetric(&btb)) {
		return nil, errNotDefinite
	}
	bty.MulVec(s.b.T(), &viy)
	if err := so.info.SolveVecTo(&so.beta, &bty); err != nil {
		return nil, err
	}
	so.resid.MulVec(&so.vib, &so.beta)
	so.resid.SubVec(&viy, &so.resid)
	so.loss = so.chol.LogDet() + so.info.LogDet() + mat.Dot(y, &so.resid)
	return &so, nil
}

func symmetric(d *mat.Dense) *mat.SymDense {
	n, _ := d.Dims()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (d.At(i, j)+d.At(j, i))/2)
		}
	}
	return s
}

// learn finds the intensity that the pull itself makes most likely: a coarse
// search in half decades, then a finer one about the best.
func (s *spline) learn() (*solved, float64, error) {
	var best *solved
	centre, width := -2.0, 4.0
	at := centre
	for _, step := range []float64{0.5, 0.1} {
		for e := centre - width; e <= centre+width+1e-9; e += step {
			so, err := s.solve(math.Pow(10, e))
			if err != nil {
				return nil, 0, err
			}
			if best == nil || so.loss < best.loss {
				best, at = so, e
			}
		}
		centre, width = at, 0.5
	}
	return best, math.Pow(10, at), nil
}

// smooth differentiates the pull.
func smooth(p Pull) (*smoothed, error) {
	s := newSpline(p)
	so, q2, err := s.learn()
	if err != nil {
		return nil, err
	}
	n := len(s.t)
	kA, kV := mat.NewDense(n, n, nil), mat.NewDense(n, n, nil)
	bA := mat.NewDense(n, 3, nil)
	for i := range n {
		bA.SetRow(i, []float64{0, 1, s.t[i]})
		for j := range n {
			kA.Set(i, j, q2*kav(s.t[i], s.t[j]))
			kV.Set(i, j, q2*kvv(s.t[i], s.t[j]))
		}
	}
	out := &smoothed{v: so.at(kV, s.b), a: so.at(kA, bA)}
	if out.cov, err = so.covariance(kA, bA, s.t, q2); err != nil {
		return nil, err
	}
	out.bandwidth = so.bandwidth(s.t, kA, bA)
	return out, nil
}

// at is the posterior mean where k is the covariance with the data and b the
// polynomials.
func (so *solved) at(k, b *mat.Dense) []float64 {
	var x, y mat.VecDense
	x.MulVec(b, &so.beta)
	y.MulVec(k, &so.resid)
	x.AddVec(&x, &y)
	return x.RawVector().Data
}

// covariance is the posterior covariance of acceleration (universal kriging;
// Rasmussen and Williams, equation 2.42).
func (so *solved) covariance(kA, bA *mat.Dense, t []float64, q2 float64) (*mat.SymDense, error) {
	n := len(t)
	var w, kw, r, ri, m mat.Dense
	if err := so.chol.SolveTo(&w, kA.T()); err != nil {
		return nil, err
	}
	kw.Mul(kA, &w)
	r.Mul(kA, &so.vib)
	r.Sub(bA, &r)
	if err := so.info.SolveTo(&ri, r.T()); err != nil {
		return nil, err
	}
	m.Mul(&r, &ri)
	c := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			c.SetSym(i, j, q2*kaa(t[i], t[j])-(kw.At(i, j)+kw.At(j, i))/2+(m.At(i, j)+m.At(j, i))/2)
		}
	}
	return c, nil
}

// weights are those by which the data make the acceleration at point i.
func (so *solved) weights(i int, kA, bA *mat.Dense) []float64 {
	var w, r, x, y mat.VecDense
	if so.chol.SolveVecTo(&w, kA.RowView(i)) != nil {
		return nil
	}
	r.MulVec(so.vib.T(), kA.RowView(i))
	r.SubVec(bA.RowView(i), &r)
	if so.info.SolveVecTo(&x, &r) != nil {
		return nil
	}
	y.MulVec(&so.vib, &x)
	w.AddVec(&w, &y)
	return w.RawVector().Data
}

// bandwidth is the lowest frequency at which a ripple of acceleration in the
// middle of the pull comes through at 0.707 of its height.
func (so *solved) bandwidth(t []float64, kA, bA *mat.Dense) float64 {
	mid := len(t) / 2
	w := so.weights(mid, kA, bA)
	gain := func(f float64) float64 {
		var re, im float64
		for i := range w {
			sin, cos := math.Sincos(2 * math.Pi * f * (t[i] - t[mid]))
			re += w[i] * sin
			im += w[i] * cos
		}
		return math.Hypot(re, im) / (2 * math.Pi * f)
	}
	const step = 0.01
	f := step
	for f < 5 && gain(f) >= math.Sqrt2/2 {
		f += step
	}
	return f
}
