package marks

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
)

// gridStep is the spacing of the refined speed, s.
const gridStep = 0.1

// refined is the speed of one run with a smoothness prior: the acceleration
// within one gear changes slowly. The track does not use that: between two
// fixes it has only the accelerometer, with the engine's vibration. It
// implements Errors for the run.
type refined struct {
	t   []float64     // grid
	cov *mat.SymDense // of the speed on the grid, m²/s²
	add []float64     // what was added to the track's speed, m/s
}

// refine improves a trace. The correction δ of the speed follows from two
// assumptions: the track's errors have the covariance C, and the second
// derivative of the acceleration is small except around the breaks by throttle,
// clutch or gear changes. With D the third difference of the speed over the
// grid, without the breaks, the posterior has the precision
//
//	C⁻¹ + λ·DᵀD
//
// and λ is chosen by restricted maximum likelihood (REML), so a run without a
// smooth acceleration is hardly changed.
func (r trace) refine(errs Errors, breaks []fusion.Span) (trace, Errors) {
	grid := r.grid()
	if len(grid) < 12 || len(grid) > 1200 {
		return r, errs
	}
	p, ok := newProblem(r, grid, errs)
	if !ok {
		return r, errs
	}
	const tries = 6
	f := p.choose(breaks, 0, 5)
	for range tries {
		freed, found := f.freed()
		if !found {
			break
		}
		f = freed
	}
	best := f.refined()
	if best == nil {
		return r, errs
	}
	return r.corrected(best), best
}

// grid returns equally spaced times over a trace.
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

// weigh adds the coefficients of one term to the weights of the grid's speeds;
// a distance counts from the beginning of the run.
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
