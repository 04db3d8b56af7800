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
// known of their rolling resistance. In coast-downs the two are told apart by
// their growth with speed only, so their errors are opposed: a test that finds too
// little of the one has found too much of the other. Where both setups roll on
// the same tyres, the difference of Crr that was measured is mostly error,
// and the error of CdA that goes with it can be taken back: the regression of
// one on the other, with a prior of mean zero and standard deviation
// TyresAlike for the relative difference of Crr (Gelman and others, Bayesian
// Data Analysis, chapter 3). A measured difference of Crr too large for alike
// tyres is believed: ok is false and the plain difference is returned.
func (e *Estimate) Alike(a, b int) (cda measure.Value, dof float64, ok bool) {
	plain, crr, dof, _ := e.Difference(a, b)
	prior := TyresAlike * e.Loads[a].Crr.X
	if math.Abs(crr.X) > 2.5*math.Hypot(crr.SE, prior) {
		return plain, dof, false
	}
	k := takeBack(e.Cov, a, b, prior)
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(b)], w[cdaAt(a)], w[crrAt(b)], w[crrAt(a)] = 1, -1, -k, k
	cda, dof = e.Combine(w)
	cda.SE = math.Hypot(cda.SE, k*prior)
	return cda, dof, true
}

// AlikeSE is the standard error that Alike gives for a planned test whose road
// loads have covariance cov, as Bound returns it, and a rolling resistance crr.
func AlikeSE(cov *mat.SymDense, a, b int, crr float64) float64 {
	prior := TyresAlike * crr
	k := takeBack(cov, a, b, prior)
	v := differenceCov(cov, a, b, 0, 0) - 2*k*differenceCov(cov, a, b, 0, 1) + k*k*differenceCov(cov, a, b, 1, 1)
	return math.Sqrt(v + k*k*prior*prior)
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

// DifferenceCov is the covariance of the differences in CdA and in Crr between
// setups a and b, m².
func (e *Estimate) DifferenceCov(a, b int) float64 { return differenceCov(e.Cov, a, b, 0, 1) }
