package marks

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
)

// gridStep is the spacing of the refined speed, s.
const gridStep = 0.1

// refined is the speed of one run after the knowledge that a push within one
// gear changes slowly has been put to use. The track knows nothing of that:
// between two fixes it has only the accelerometer, with all that the engine
// shakes into it. It is Errors for the run.
type refined struct {
	t   []float64     // grid
	cov *mat.SymDense // of the speed on the grid, m²/s²
	add []float64     // what was added to the track's speed, m/s
}

// refine improves a trace. The correction δ of the speed follows from two
// statements: the track's errors have the covariance C, and the second
// derivative of the acceleration is small but around the breaks, where the
// throttle, the clutch or a gear change moves it. With D the third difference
// of the speed over the grid, breaks left out, the posterior has the precision
//
//	C⁻¹ + λ·DᵀD
//
// and λ is what makes the recorded speed most probable (restricted maximum
// likelihood), so a ride in which the push is not smooth is hardly touched.
func (r trace) refine(errs Errors, breaks []fusion.Span) (trace, Errors) {
	grid := r.grid()
	if len(grid) < 12 || len(grid) > 1200 {
		return r, errs
	}
	const tries = 6
	for range tries {
		f := newRefinement(r, grid, errs, breaks)
		if f == nil {
			return r, errs
		}
		best := f.at(f.choose())
		if best == nil {
			return r, errs
		}
		missed, found := f.overlooked(best)
		if !found {
			return r.corrected(best), best
		}
		breaks = append(breaks, missed)
	}
	return r, errs
}

// overlooked finds the place where smoothing had to change the gain of speed
// by more than the track's errors allow: a break that nobody told of.
func (f *refinement) overlooked(best *refined) (fusion.Span, bool) {
	const (
		reach = 3   // grid steps over which the gain is looked at
		limit = 3.5 // standard deviations
		about = 0.3 // s to both sides
	)
	worst, at := limit, -1
	for i := 0; i+reach < len(f.t); i++ {
		j := i + reach
		sd := math.Sqrt(f.cov.At(i, i) + f.cov.At(j, j) - 2*f.cov.At(i, j))
		if z := math.Abs(best.add[j]-best.add[i]) / sd; z > worst {
			worst, at = z, i
		}
	}
	if at < 0 {
		return fusion.Span{}, false
	}
	return fusion.Span{From: f.t[at] - about, To: f.t[at+reach] + about}, true
}

// grid are the times from begin to end of a trace.
func (r trace) grid() []float64 {
	var t []float64
	if len(r.t) == 0 {
		return t
	}
	for x := r.t[0]; x <= r.t[len(r.t)-1]; x += gridStep {
		t = append(t, x)
	}
	return t
}

// refinement is the problem of one run.
type refinement struct {
	t, v      []float64
	cov       *mat.SymDense // C
	precision *mat.SymDense // C⁻¹
	rough     *mat.SymDense // DᵀD
	rows      int           // of D
}

func newRefinement(r trace, grid []float64, errs Errors, breaks []fusion.Span) *refinement {
	const least = 1e-6 // m²/s² added to each variance, for the sake of the inverse
	n := len(grid)
	c := mat.NewSymDense(n, nil)
	f := &refinement{t: grid, v: make([]float64, n), cov: c, precision: mat.NewSymDense(n, nil), rough: mat.NewSymDense(n, nil)}
	for i, row := range errs.SpeedCov(grid) {
		f.v[i] = r.speed(grid[i])
		for j := i; j < n; j++ {
			c.SetSym(i, j, row[j])
		}
		c.SetSym(i, i, row[i]+least)
	}
	var chol mat.Cholesky
	if !chol.Factorize(c) || chol.InverseTo(f.precision) != nil {
		return nil
	}
	third := [4]float64{-1, 3, -3, 1}
	for i := 0; i+3 < n; i++ {
		if touches(breaks, grid[i], grid[i+3]) {
			continue
		}
		f.rows++
		for a, x := range third {
			for b := a; b < 4; b++ {
				f.rough.SetSym(i+a, i+b, f.rough.At(i+a, i+b)+x*third[b])
			}
		}
	}
	return f
}

func touches(spans []fusion.Span, a, b float64) bool {
	for _, s := range spans {
		if s.From < b && s.To > a {
			return true
		}
	}
	return false
}

// choose finds the strength of smoothing that is most probable.
func (f *refinement) choose() float64 {
	best, most := 0.0, math.Inf(-1)
	for power := 0.0; power <= 5; power += 0.5 {
		lambda := math.Pow(10, power)
		if l := f.likelihood(lambda); l > most {
			best, most = lambda, l
		}
	}
	return best
}

// solve factorises the posterior precision and gives the posterior mean of
// the correction to the speed.
func (f *refinement) solve(lambda float64) (*mat.Cholesky, *mat.VecDense, bool) {
	n := len(f.v)
	p := mat.NewSymDense(n, nil)
	p.ScaleSym(lambda, f.rough)
	p.AddSym(p, f.precision)
	var chol mat.Cholesky
	if !chol.Factorize(p) {
		return nil, nil, false
	}
	v := mat.NewVecDense(n, f.v)
	var pull, delta mat.VecDense
	pull.MulVec(f.rough, v)
	pull.ScaleVec(-lambda, &pull)
	if chol.SolveVecTo(&delta, &pull) != nil {
		return nil, nil, false
	}
	return &chol, &delta, true
}

// likelihood is that of the recorded speed, up to a constant, its logarithm.
func (f *refinement) likelihood(lambda float64) float64 {
	chol, delta, ok := f.solve(lambda)
	if !ok {
		return math.Inf(-1)
	}
	v := mat.NewVecDense(len(f.v), append([]float64(nil), f.v...))
	v.AddVec(v, delta)
	misfit := mat.Inner(delta, f.precision, delta) + lambda*mat.Inner(v, f.rough, v)
	return (float64(f.rows)*math.Log(lambda) - chol.LogDet() - misfit) / 2
}

// at gives the refined speed for a strength of smoothing.
func (f *refinement) at(lambda float64) *refined {
	chol, delta, ok := f.solve(lambda)
	if !ok {
		return nil
	}
	out := &refined{t: f.t, cov: mat.NewSymDense(len(f.t), nil), add: delta.RawVector().Data}
	if chol.InverseTo(out.cov) != nil {
		return nil
	}
	return out
}

// corrected is the trace with the correction added to speed and distance.
func (r trace) corrected(f *refined) trace {
	out := trace{t: r.t, v: make([]float64, len(r.v)), s: make([]float64, len(r.s))}
	way, last := 0.0, interpolate(f.t, f.add, r.t[0])
	for i, t := range r.t {
		now := interpolate(f.t, f.add, t)
		if i > 0 {
			way += (t - r.t[i-1]) * (now + last) / 2
		}
		out.v[i], out.s[i] = r.v[i]+now, r.s[i]+way
		last = now
	}
	return out
}

// weigh adds the share of one term to the weights of the grid's speeds; a
// distance is counted from the beginning of the run.
func (f *refined) weigh(w []float64, t fusion.Term) {
	k := clampIndex(sort.SearchFloat64s(f.t, t.T)-1, len(f.t)-2)
	u := math.Max(0, math.Min(1, (t.T-f.t[k])/gridStep))
	w[k] += t.V * (1 - u)
	w[k+1] += t.V * u
	if t.S == 0 {
		return
	}
	for i := range k {
		w[i] += t.S * gridStep / 2
		w[i+1] += t.S * gridStep / 2
	}
	w[k] += t.S * gridStep * (u - u*u/2)
	w[k+1] += t.S * gridStep * u * u / 2
}

func clampIndex(i, last int) int { return max(0, min(i, last)) }

// SD implements Errors.
func (f *refined) SD(combination []fusion.Term) float64 {
	w := make([]float64, len(f.t))
	for _, t := range combination {
		f.weigh(w, t)
	}
	v := mat.NewVecDense(len(w), w)
	return math.Sqrt(math.Max(mat.Inner(v, f.cov, v), 0))
}

// SpeedCov implements Errors.
func (f *refined) SpeedCov(times []float64) [][]float64 {
	rows := mat.NewDense(len(times), len(f.t), nil)
	for i, t := range times {
		f.weigh(rows.RawRowView(i), fusion.Term{T: t, V: 1})
	}
	var half, full mat.Dense
	half.Mul(rows, f.cov)
	full.Mul(&half, rows.T())
	out := make([][]float64, len(times))
	for i := range out {
		out[i] = full.RawRowView(i)
	}
	return out
}
