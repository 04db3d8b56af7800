package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Estimate is the result of a fit.
type Estimate struct {
	Loads []Load // one for each setup, in order
	// Cov is the covariance of CdA (m²) and Crr of all setups, in the order
	// CdA₀, Crr₀, CdA₁, Crr₁ and so on. Common errors of setups (the road, the
	// mass) appear in the covariances between them; see Combine.
	Cov *mat.SymDense
	// Assumed is the contribution of the assumptions, which is not contained in
	// Cov or in the intervals of Loads.
	Assumed Assumed
	Noise   Noise // as learned
	Fitted  Fitted
	Runs    []RunFit
	Pairs   []PairFit
	Notes   []finding.Finding // notes about the figures

	held   []float64       // road loads at which the equations were made
	dials  []dial          // learned noise parameters
	spread *mat.SymDense   // covariance of the logarithms of the noise
	slopes []*mat.SymDense // derivative of Cov by each of them
}

// Load is the road load of one setup.
type Load struct {
	CdA, Crr measure.Value // m² and 1
	Cov      float64       // of CdA and Crr, m²
	DoF      float64       // of the t interval of CdA
	CrrDoF   float64       // of that of Crr
	CdACI    [2]float64    // 95 % interval
	CrrCI    [2]float64
	Pairs    int // complete pairs that were used
}

// RunFit describes the agreement of one run with the rest.
type RunFit struct {
	ID, Setup int
	Pair      int       // 0: alone
	Dir       float64   // as in Run
	T, V, Fit []float64 // s, measured and fitted speed, m/s; fixes close together are averaged
	Misfit    float64   // size of the errors relative to the expected one; 1 is usual
	MoveCdA   float64   // how much CdA of its setup would change without this run, m²
	MoveCrr   float64
	Road      []float64       // slope in the direction of travel at each fix, the pair's mean included
	Posture   float64         // drag area of this run relative to that of its setup, as fitted
	Against   float64         // mean wind against the run as fitted, m/s
	AirSpread []float64       // variance of the air speed at each fix due to gusts, m²/s²
	Wind      measure.Value   // mean against direction +1, m/s; SE is for the difference of the two runs of a pair
	Cuts      []Cut           // stretches left out
	Reason    finding.Finding // why the whole run was left out; else zero
}

// Cut is a stretch of a run that was left out.
type Cut struct {
	From, To float64 // s
	Reason   finding.Finding
}

// PairFit describes one pair of opposite runs.
type PairFit struct {
	Pair             int
	Wind             measure.Value // mean, against direction +1, m/s
	Grade            measure.Value // mean slope, upwards in direction +1
	Shift            measure.Value // change of the mean wind from its first run to its second, against direction +1, m/s; SE 0: no significant change
	MoveCdA, MoveCrr float64       // how much its setup's figures would change without it, m² and 1
	CdA, Crr         measure.Value // from this pair alone, with the noise and the road from all runs
}

// WindChanged reports whether the mean wind changed significantly between the
// two runs of the pair: by more than twice the standard error of Shift.
func (p PairFit) WindChanged() bool {
	return p.Shift.SE > 0 && math.Abs(p.Shift.X) > 2*p.Shift.SE
}
