package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// TyresAlike is the relative standard deviation of the difference in rolling
// resistance between two setups with the same tyres at the same pressure, from
// temperature and load (common practice).
const TyresAlike = 0.015

// Alike improves the difference in drag area between setups a and b by a prior
// on their difference in rolling resistance. In coast-downs the two are
// separated only by their growth with speed, so their errors are
// anti-correlated: a test that underestimates one overestimates the other.
// Where both setups have the same tyres, the measured difference of Crr is
// mostly error, and the correlated error of CdA can be removed: a regression of
// one on the other, with a prior of mean zero and standard deviation TyresAlike
// for the relative difference of Crr (Gelman and others, Bayesian Data
// Analysis, chapter 3). If the measured difference of Crr is too large for
// equal tyres, ok is false and the plain difference is returned.
func (e *Estimate) Alike(a, b int) (d LoadDifference, ok bool) {
	d = e.Between(a, b)
	prior := TyresAlike * e.Loads[a].Crr.X
	if math.Abs(d.Crr.X) > 2.5*math.Hypot(d.Crr.SE, prior) {
		return d, false
	}
	k := crrRegression(e.Cov, a, b, prior) // from noise only: just this anticorrelation is removed for identical tyres
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(b)], w[cdaAt(a)], w[crrAt(b)], w[crrAt(a)] = 1, -1, -k, k
	d.CdA, d.DoF = e.contrast(w)
	d.CdA.SE = math.Hypot(d.CdA.SE, k*prior)
	kept := prior * prior / (prior*prior + d.Crr.SE*d.Crr.SE)
	d.Crr = measure.Value{X: kept * d.Crr.X, SE: math.Sqrt(kept) * d.Crr.SE}
	d.Cov *= kept
	d.TakenBack = k
	d.Budget = append(e.contrastBudget(w), Part{codeAlike, math.Abs(k) * prior})
	return d, true
}

// LoadDifference is the difference between the road loads of two setups.
type LoadDifference struct {
	CdA, Crr    measure.Value // m² and 1
	Cov         float64       // of the two, m²
	DoF, CrrDoF float64       // of their t intervals
	TakenBack   float64       // correction of CdA per unit difference in Crr for identical tyres, m²; 0: none
	WarmCdA     float64       // correction of the differences for tyres that warmed up in between: CdA in m², and Crr
	WarmCrr     float64
	Budget      []Part // of CdA
}

// Held is the part of the standard uncertainty of CdA that comes from
// assumptions, m²: more pairs do not reduce it.
func (d LoadDifference) Held() float64 {
	var sum float64
	for _, p := range d.Budget {
		if p.Code != codeNoise {
			sum += p.SE * p.SE
		}
	}
	return math.Sqrt(sum)
}

// Between is the plain difference between setups a and b, including the
// uncertainty from assumptions, most of which is common to both and cancels.
// Warming tyres do not cancel where one setup was ridden earlier; the
// difference is corrected by as much as the runs show that rolling resistance
// fell.
func (e *Estimate) Between(a, b int) LoadDifference {
	var d LoadDifference
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(b)], w[cdaAt(a)] = 1, -1
	d.CdA, d.DoF = e.contrast(w)
	d.WarmCdA = e.Assumed.estimatedBias(w)
	d.Budget = e.contrastBudget(w)
	clear(w)
	w[crrAt(b)], w[crrAt(a)] = 1, -1
	d.Crr, d.CrrDoF = e.contrast(w)
	d.WarmCrr = e.Assumed.estimatedBias(w)
	d.Cov = differenceCov(e.Cov, a, b, 0, 1) + differenceCov(e.Assumed.contrasts, a, b, 0, 1)
	return d
}

// withAssumed is Combine plus the uncertainty from assumptions. That part is a
// prior and not estimated from data, so it raises the degrees of freedom
// (Satterthwaite).
func (e *Estimate) withAssumed(w []float64) (measure.Value, float64) {
	return e.on(w, e.Assumed.SE(w))
}

// contrast is withAssumed for a difference, corrected by the runs' estimates of
// the assumed quantities.
func (e *Estimate) contrast(w []float64) (measure.Value, float64) {
	v, dof := e.on(w, e.Assumed.ContrastSE(w))
	v.X -= e.Assumed.estimatedBias(w)
	return v, dof
}

func (e *Estimate) on(w []float64, assumed float64) (measure.Value, float64) {
	v, dof := e.Combine(w)
	whole := measure.Value{X: v.X, SE: math.Hypot(v.SE, assumed)}
	return whole, dof * math.Pow(whole.SE/v.SE, 4)
}

// Total is the road load of a setup with the assumptions included in its
// uncertainty.
func (e *Estimate) Total(setup int) Load {
	l := e.Loads[setup]
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(setup)] = 1
	l.CdA, l.DoF = e.withAssumed(w)
	clear(w)
	w[crrAt(setup)] = 1
	l.Crr, l.CrrDoF = e.withAssumed(w)
	l.Cov += e.Assumed.Cov.At(cdaAt(setup), crrAt(setup))
	l.CdACI, l.CrrCI = l.CdA.Interval(0.95, l.DoF), l.Crr.Interval(0.95, l.CrrDoF)
	return l
}

// crrRegression is the coefficient of the regression of ΔCdA on ΔCrr with a prior
// for the latter, m².
func crrRegression(cov *mat.SymDense, a, b int, prior float64) float64 {
	return differenceCov(cov, a, b, 0, 1) / (differenceCov(cov, a, b, 1, 1) + prior*prior)
}

// differenceCov is the covariance of the differences b − a of two of CdA (0)
// and Crr (1).
func differenceCov(cov *mat.SymDense, a, b, i, j int) float64 {
	return cov.At(2*a+i, 2*a+j) + cov.At(2*b+i, 2*b+j) - cov.At(2*a+i, 2*b+j) - cov.At(2*b+i, 2*a+j)
}
