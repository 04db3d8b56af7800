package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// TyresAlike is how far, as a fraction and one standard deviation, the rolling
// resistance of the same tyres at the same pressure may differ between two
// setups: temperature and load leave about so much (common practice).
const TyresAlike = 0.015

// Alike sharpens the difference in drag area between setups a and b by what is
// known of their rolling resistance. In coast-downs the two are separated by
// their growth with speed only, so their errors are opposed: a test that finds too
// little of the one has found too much of the other. Where both setups roll on
// the same tyres, the difference of Crr that was measured is mostly error,
// and the error of CdA that goes with it can be taken back: the regression of
// one on the other, with a prior of mean zero and standard deviation
// TyresAlike for the relative difference of Crr (Gelman and others, Bayesian
// Data Analysis, chapter 3). A measured difference of Crr too large for alike
// tyres is believed: ok is false and the plain difference is returned.
func (e *Estimate) Alike(a, b int) (d LoadDifference, ok bool) {
	d = e.Between(a, b)
	prior := TyresAlike * e.Loads[a].Crr.X
	if math.Abs(d.Crr.X) > 2.5*math.Hypot(d.Crr.SE, prior) {
		return d, false
	}
	k := takeBack(e.Cov, a, b, prior) // by noise: only that opposes the two in a way that alike tyres undo
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

// LoadDifference is what the road load of one setup has over that of another.
type LoadDifference struct {
	CdA, Crr    measure.Value // m² and 1
	Cov         float64       // of the two, m²
	DoF, CrrDoF float64       // of their t intervals
	TakenBack   float64       // m² of CdA for each 1 that Crr differs, taken back because the tyres are alike; 0: plain
	WarmCdA     float64       // m² of CdA, and of Crr 1, taken off the plain difference since tyres warmed up meanwhile
	WarmCrr     float64
	Budget      []Part // of CdA
}

// Held is the part of the standard uncertainty of CdA that comes from what is
// assumed, m²: more pairs do not make it smaller.
func (d LoadDifference) Held() float64 {
	var sum float64
	for _, p := range d.Budget {
		if p.Code != codeNoise {
			sum += p.SE * p.SE
		}
	}
	return math.Sqrt(sum)
}

// Between is the plain difference between setups a and b, with what is assumed:
// most of that is common to both and cancels. Tyres that warm up do not cancel
// where one setup was ridden earlier; as far as the runs show how rolling resistance
// fell from the first to the last, that is taken off.
func (e *Estimate) Between(a, b int) LoadDifference {
	var d LoadDifference
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(b)], w[cdaAt(a)] = 1, -1
	d.CdA, d.DoF = e.contrast(w)
	d.WarmCdA = e.Assumed.shows(w)
	d.Budget = e.contrastBudget(w)
	clear(w)
	w[crrAt(b)], w[crrAt(a)] = 1, -1
	d.Crr, d.CrrDoF = e.contrast(w)
	d.WarmCrr = e.Assumed.shows(w)
	d.Cov = differenceCov(e.Cov, a, b, 0, 1) + differenceCov(e.Assumed.contrasts, a, b, 0, 1)
	return d
}

// withAssumed is Combine with what is assumed on top. That part is no count
// from data, so it adds to the degrees of freedom (Satterthwaite).
func (e *Estimate) withAssumed(w []float64) (measure.Value, float64) {
	return e.on(w, e.Assumed.SE(w))
}

// contrast is withAssumed for a difference: what the runs show of what is assumed
// is taken off.
func (e *Estimate) contrast(w []float64) (measure.Value, float64) {
	v, dof := e.on(w, e.Assumed.ContrastSE(w))
	v.X -= e.Assumed.shows(w)
	return v, dof
}

func (e *Estimate) on(w []float64, assumed float64) (measure.Value, float64) {
	v, dof := e.Combine(w)
	whole := measure.Value{X: v.X, SE: math.Hypot(v.SE, assumed)}
	return whole, dof * math.Pow(whole.SE/v.SE, 4)
}

// Total is the road load of a setup with what is assumed in its uncertainty.
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

// takeBack is the regression of ΔCdA on ΔCrr with a prior for the latter, m².
func takeBack(cov *mat.SymDense, a, b int, prior float64) float64 {
	return differenceCov(cov, a, b, 0, 1) / (differenceCov(cov, a, b, 1, 1) + prior*prior)
}

// differenceCov is the covariance of what two of CdA (0) and Crr (1) of setup b
// have over setup a.
func differenceCov(cov *mat.SymDense, a, b, i, j int) float64 {
	return cov.At(2*a+i, 2*a+j) + cov.At(2*b+i, 2*b+j) - cov.At(2*a+i, 2*b+j) - cov.At(2*b+i, 2*a+j)
}
