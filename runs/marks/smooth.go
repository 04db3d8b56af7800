package marks

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
)

// problem holds the track's speed of one run and its covariance.
type problem struct {
	t, v      []float64
	cov       *mat.SymDense // C
	precision *mat.SymDense // C⁻¹
}

func newProblem(r trace, grid []float64, errs Errors) (*problem, bool) {
	const least = 1e-6 // m²/s² added to each variance, to make the matrix invertible
	n := len(grid)
	p := &problem{t: grid, v: make([]float64, n), cov: mat.NewSymDense(n, nil), precision: mat.NewSymDense(n, nil)}
	for i, row := range errs.SpeedCov(grid) {
		p.v[i] = r.speed(grid[i])
		for j := i; j < n; j++ {
			p.cov.SetSym(i, j, row[j])
		}
		p.cov.SetSym(i, i, row[i]+least)
	}
	var chol mat.Cholesky
	if !chol.Factorize(p.cov) || chol.InverseTo(p.precision) != nil {
		return nil, false
	}
	return p, true
}

// smoothing is the solution of a problem for given breaks and strength of
// smoothing.
type smoothing struct {
	*problem
	breaks     []fusion.Span
	power      float64       // λ = 10^power
	rough      *mat.SymDense // DᵀD
	rows       int           // of D
	rowsDet    float64       // ln det DDᵀ
	chol       mat.Cholesky  // of C⁻¹ + λ·DᵀD
	add        *mat.VecDense // correction to the speed
	likelihood float64       // of the recorded speed, its logarithm, up to a constant
}

// choose finds the strength of smoothing of highest restricted likelihood, as a
// power of ten within limits.
func (p *problem) choose(breaks []fusion.Span, low, high float64) *smoothing {
	base := p.outside(breaks)
	var best *smoothing
	for power := low; power <= high; power += 0.5 {
		f := base
		f.power = power
		if f.solve(); best == nil || f.likelihood > best.likelihood {
			best = &f
		}
	}
	return best
}

// outside sets up the difference matrix D for the grid outside the breaks.
func (p *problem) outside(breaks []fusion.Span) smoothing {
	n := len(p.t)
	f := smoothing{problem: p, breaks: breaks, rough: mat.NewSymDense(n, nil)}
	third := [4]float64{-1, 3, -3, 1}
	pivots := differencePivots(n)
	block := 0
	for i := 0; i+3 < n; i++ {
		if touches(breaks, p.t[i], p.t[i+3]) {
			block = 0
			continue
		}
		f.rows++
		f.rowsDet += math.Log(pivots[block])
		block++
		for a, x := range third {
			for b := a; b < 4; b++ {
				f.rough.SetSym(i+a, i+b, f.rough.At(i+a, i+b)+x*third[b])
			}
		}
	}
	return f
}

// differencePivots are the pivots of the Cholesky decomposition of DDᵀ for
// third differences without a break: a band matrix with 20, −15, 6 and −1 on
// its diagonals. The determinant of any leading block is their product.
func differencePivots(n int) []float64 {
	band := [4]float64{20, -15, 6, -1}
	l := make([][4]float64, n) // l[i][k] is the factor of row i on row i−k
	d := make([]float64, n)
	for i := range n {
		for k := min(3, i); k >= 0; k-- {
			x := band[k]
			for m := k + 1; m <= min(3, i); m++ {
				x -= l[i][m] * l[i-k][m-k] * d[i-m]
			}
			if k == 0 {
				d[i] = x
			} else {
				l[i][k] = x / d[i-k]
			}
		}
	}
	return d
}

// solve computes the correction to the speed and the restricted likelihood.
func (f *smoothing) solve() {
	n := len(f.v)
	f.likelihood = math.Inf(-1)
	lambda := math.Pow(10, f.power)
	p := mat.NewSymDense(n, nil)
	p.ScaleSym(lambda, f.rough)
	p.AddSym(p, f.precision)
	var chol mat.Cholesky
	if !chol.Factorize(p) {
		return
	}
	v := mat.NewVecDense(n, append([]float64(nil), f.v...))
	pull, add := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	pull.MulVec(f.rough, v)
	pull.ScaleVec(-lambda, pull)
	if chol.SolveVecTo(add, pull) != nil {
		return
	}
	v.AddVec(v, add)
	misfit := mat.Inner(add, f.precision, add) + lambda*mat.Inner(v, f.rough, v)
	f.chol, f.add = chol, add
	f.likelihood = (float64(f.rows)*math.Log(lambda) + f.rowsDet - chol.LogDet() - misfit) / 2
}

// freed searches for an undetected break, and returns the smoothing with it if
// the likelihood rises enough.
func (f *smoothing) freed() (*smoothing, bool) {
	const convincing = 3 // gain of the logarithm of the likelihood
	if f.add == nil {
		return nil, false
	}
	best := f
	for _, at := range []int{f.mostPulled(), f.roughest()} {
		span := fusion.Span{From: f.t[at] - 0.25, To: f.t[at] + 0.25}
		breaks := append(f.breaks[:len(f.breaks):len(f.breaks)], span)
		if g := f.choose(breaks, max(0, f.power-0.5), min(5, f.power+1)); g.likelihood > best.likelihood {
			best = g
		}
	}
	return best, best.likelihood > f.likelihood+convincing
}

// mostPulled is where smoothing changed the gain of speed the most, relative to
// the track's errors.
func (f *smoothing) mostPulled() int {
	const reach = 3 // grid steps over which the gain is looked at
	worst, at := 0.0, 0
	for i := 0; i+reach < len(f.t); i++ {
		j := i + reach
		sd := math.Sqrt(f.cov.At(i, i) + f.cov.At(j, j) - 2*f.cov.At(i, j))
		if z := math.Abs(f.add.AtVec(j)-f.add.AtVec(i)) / sd; z > worst {
			worst, at = z, i+reach/2
		}
	}
	return at
}

// roughest is where the smoothed speed is least smooth.
func (f *smoothing) roughest() int {
	speed := func(i int) float64 { return f.v[i] + f.add.AtVec(i) }
	worst, at := 0.0, 0
	for i := 0; i+3 < len(f.t); i++ {
		third := speed(i+3) - 3*speed(i+2) + 3*speed(i+1) - speed(i)
		if !touches(f.breaks, f.t[i], f.t[i+3]) && math.Abs(third) > worst {
			worst, at = math.Abs(third), i+1
		}
	}
	return at
}

// refined returns the smoothed speed with its covariance, or nil.
func (f *smoothing) refined() *refined {
	if f.add == nil {
		return nil
	}
	out := &refined{t: f.t, cov: mat.NewSymDense(len(f.t), nil), add: f.add.RawVector().Data}
	if f.chol.InverseTo(out.cov) != nil {
		return nil
	}
	return out
}

func touches(spans []fusion.Span, a, b float64) bool {
	for _, s := range spans {
		if s.From < b && s.To > a {
			return true
		}
	}
	return false
}
