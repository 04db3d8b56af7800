package marks

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
)

// Parameters of the fit to the start of a launch.
const (
	standing   = 1.5   // s before the push that are included in the fit
	underWay   = 3.0   // m/s up to which the start is fitted
	onsetStep  = 0.03  // s between the speeds that the fit uses
	roughness  = 0.015 // m/s by which the speed may differ from the model
	usualRamp  = 0.35  // s, time for the clutch to engage
	rampSpread = 1.0   // standard deviation of its logarithm
	startsVary = 0.010 // s, model error of the time of the first foot
)

// takeUpVaries is the relative standard uncertainty of the time from first
// movement to one foot due to the unknown shape of the clutch's engagement. If
// the force grows as the power p of time, the speed v at a distance s gives
// that time as (p+2)·s/v, whatever the force. For p uniform from 0, full force
// at once, to 2, slower than any steadily released clutch, its standard
// deviation is s/v/√3, which is 0.19 of the 3·s/v of a linear ramp. It is not
// tuned; what the recording shows about the shape is ignored, so the interval
// is conservative.
const takeUpVaries = 0.19

// pushOff is the model of a start: standstill until t0, then an acceleration
// that rises linearly over a ramp to a and stays there.
type pushOff struct{ t0, logA, logRamp float64 }

// speed is the model's speed at t and its derivatives with respect to the
// parameters.
func (p pushOff) speed(t float64) (v float64, d [3]float64) {
	a, r, x := math.Exp(p.logA), math.Exp(p.logRamp), t-p.t0
	switch {
	case x <= 0:
		return 0, d
	case x < r:
		v = a * x * x / (2 * r)
		return v, [3]float64{-a * x / r, v, -v}
	}
	v = a * (x - r/2)
	return v, [3]float64{-a, v, -a * r / 2}
}

// firstMovement estimates when the bike began to move, from the speeds at the
// start. A threshold on the speed would be passed late; the model extrapolates
// to where the speed was zero. The fit is generalised least squares with the
// covariance of the track, so its error is a linear form in the same terms as
// that of every other time of the run and common errors cancel.
//
// The same fit gives the time at which the front wheel has rolled one foot.
func (r trace) firstMovement(errs Errors, about float64) (first, rolled form) {
	never := form{x: math.NaN()}
	times := r.onsetTimes(about)
	if len(times) < 6 {
		return never, never
	}
	w, ok := newWeights(errs, times)
	if !ok {
		return never, never
	}
	best, fit := math.Inf(1), pushOff{}
	for _, ramp := range []float64{0.1, 0.25, 0.5, 1} {
		p, cost := r.fitOnset(times, w, ramp)
		if cost < best {
			best, fit = cost, p
		}
	}
	if math.IsInf(best, 1) {
		return never, never
	}
	return fit.forms(times, w)
}

// onsetTimes are the times whose speeds are fitted: from before the start until
// the bike is under way.
func (r trace) onsetTimes(about float64) []float64 {
	end := r.t[0]
	for k, v := range r.v {
		if v >= underWay {
			end = r.t[k]
			break
		}
	}
	begin := math.Max(r.t[0], math.Min(about, end)-0.5)
	var times []float64
	for t := end; t > begin; t -= onsetStep {
		times = append(times, t)
	}
	sort.Float64s(times)
	return times
}

// weights holds the covariance of the speeds: of the track alone, and
// factorised with the model error added.
type weights struct {
	track *mat.SymDense
	chol  mat.Cholesky
}

// newWeights returns the weights; ok is false if the errors of the track are so
// large that the covariance cannot be factorised.
func newWeights(errs Errors, times []float64) (w weights, ok bool) {
	cov := errs.SpeedCov(times)
	n := len(times)
	w.track = mat.NewSymDense(n, nil)
	all := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			c := cov[i][j]
			w.track.SetSym(i, j, c)
			if i == j {
				c += roughness * roughness
			}
			all.SetSym(i, j, c)
		}
	}
	return w, w.chol.Factorize(all)
}

// fitOnset runs Gauss-Newton iterations from an initial ramp, with a prior for
// the ramp.
func (r trace) fitOnset(times []float64, w weights, ramp float64) (pushOff, float64) {
	n := len(times)
	last := times[n-1]
	slope := math.Max((r.speed(last)-r.speed(times[n-1-n/4]))/(last-times[n-1-n/4]), 0.5)
	p := pushOff{t0: last - r.speed(last)/slope - ramp/2, logA: math.Log(slope), logRamp: math.Log(ramp)}
	cost := math.Inf(1)
	for range 30 {
		normal, right, now := r.linearise(p, times, w)
		if math.IsNaN(now) {
			return p, math.Inf(1)
		}
		var step mat.VecDense
		if err := step.SolveVec(normal, right); err != nil {
			return p, math.Inf(1)
		}
		limit := 1 / math.Max(1, math.Max(math.Abs(step.AtVec(1)), math.Abs(step.AtVec(2)))/0.5)
		p.t0 += limit * step.AtVec(0)
		p.logA += limit * step.AtVec(1)
		p.logRamp += limit * step.AtVec(2)
		if math.Abs(now-cost) < 1e-6*(1+now) {
			return p, now
		}
		cost = now
	}
	return p, cost
}

// linearise returns the normal equations and the cost at p.
func (r trace) linearise(p pushOff, times []float64, w weights) (normal *mat.SymDense, right *mat.VecDense, cost float64) {
	n := len(times)
	jac := mat.NewDense(n, 3, nil)
	res := mat.NewVecDense(n, nil)
	for i, t := range times {
		v, d := p.speed(t)
		jac.SetRow(i, d[:])
		res.SetVec(i, r.speed(t)-v)
	}
	var wj mat.Dense
	var wr mat.VecDense
	if w.chol.SolveTo(&wj, jac) != nil || w.chol.SolveVecTo(&wr, res) != nil {
		return nil, nil, math.NaN()
	}
	var jwj mat.Dense
	jwj.Mul(jac.T(), &wj)
	normal = mat.NewSymDense(3, nil)
	for i := range 3 {
		for j := i; j < 3; j++ {
			normal.SetSym(i, j, jwj.At(i, j))
		}
	}
	right = mat.NewVecDense(3, nil)
	right.MulVec(jac.T(), &wr)
	off := p.logRamp - math.Log(usualRamp)
	normal.SetSym(2, 2, normal.At(2, 2)+1/(rampSpread*rampSpread))
	right.SetVec(2, right.AtVec(2)-off/(rampSpread*rampSpread))
	return normal, right, mat.Dot(res, &wr) + off*off/(rampSpread*rampSpread)
}

// covers is the time after t0 at which the model has covered a distance, and
// its derivatives with respect to the parameters.
func (p pushOff) covers(way float64) (x float64, d [3]float64) {
	a, r := math.Exp(p.logA), math.Exp(p.logRamp)
	if x = math.Cbrt(6 * r * way / a); x < r {
		return x, [3]float64{0, -x / 3, x / 3}
	}
	// s = a·((x−r/2)²/2 + r²/24) from x = r on
	u := math.Sqrt(2*way/a - r*r/12)
	return u + r/2, [3]float64{0, -way / (a * u), r/2 - r*r/(12*u)}
}

// forms returns first movement and rollout as linear forms in the speeds, with
// the variance from the prior and the model error as their own.
func (p pushOff) forms(times []float64, w weights) (first, rolled form) {
	n := len(times)
	jac := mat.NewDense(n, 3, nil)
	for i, t := range times {
		_, d := p.speed(t)
		jac.SetRow(i, d[:])
	}
	never := form{x: math.NaN()}
	var wj, cov, gain mat.Dense
	if w.chol.SolveTo(&wj, jac) != nil {
		return never, never
	}
	cov.Mul(jac.T(), &wj)
	cov.Set(2, 2, cov.At(2, 2)+1/(rampSpread*rampSpread))
	if cov.Inverse(&cov) != nil {
		return never, never
	}
	gain.Mul(&cov, wj.T())
	took, d := p.covers(Rollout)
	d[0] = 1
	first = w.linear(p.t0, times, &cov, &gain, [3]float64{1, 0, 0})
	first.own += square(takeUpVaries * took)
	rolled = w.linear(p.t0+took, times, &cov, &gain, d)
	rolled.own += startsVary * startsVary
	return first, rolled
}

// linear is the form of a figure whose derivatives with respect to the
// parameters are d.
func (w weights) linear(x float64, times []float64, cov, gain *mat.Dense, d [3]float64) form {
	by := mat.NewVecDense(3, d[:])
	row := mat.NewVecDense(len(times), nil)
	row.MulVec(gain.T(), by)
	f := form{x: x}
	for i, t := range times {
		f.terms = append(f.terms, fusion.Term{T: t, V: row.AtVec(i)})
	}
	f.own = math.Max(0, mat.Inner(by, cov, by)-mat.Inner(row, w.track, row))
	return f
}
func square(x float64) float64 { return x * x }
