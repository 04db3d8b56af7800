package roadload

import (
	"errors"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// Why a fit is not possible. Each says what is missing.
var (
	ErrNoRuns       = errors.New("no coast-down to fit")
	ErrOneDirection = errors.New("all coast-downs go the same way: ride the road in the other direction too, or wind and slope pass for drag")
	ErrMass         = errors.New("the mass of bike and rider is not known: weigh them, or add the rider to the bike's mass in its papers")
	ErrDensity      = errors.New("the air density is not known: it follows from temperature and pressure")
	ErrSpeedRange   = errors.New("the coast-downs cover too small a range of speed to tell drag from rolling resistance: start faster or roll longer")
)

// Estimate is what all the runs together say.
type Estimate struct {
	Loads []Load // one for each setup, in order
	// Cov is the covariance of CdA (m²) and Crr of all setups, in the order
	// CdA₀, Crr₀, CdA₁, Crr₁ and so on. It holds what differs between setups
	// as well as what they share; see Difference.
	Cov   *mat.SymDense
	Noise Noise // as learned
	Runs  []RunFit
	Pairs []PairFit
	Notes []string // what a reader of the figures should know, in plain words
}

// Load is the road load of one setup.
type Load struct {
	CdA, Crr measure.Value // m² and 1
	Cov      float64       // of CdA and Crr, m²
	DoF      float64       // of the t intervals, for CdA
	CdACI    [2]float64    // 95 % interval
	CrrCI    [2]float64
	Pairs    int // complete pairs that were used
}

// RunFit is how one run agrees with the rest.
type RunFit struct {
	ID        int
	T, V, Fit []float64 // s, measured and fitted speed, m/s
	Misfit    float64   // how far the run is from what its errors allow; 1 is usual
	MoveCdA   float64   // how much CdA of its setup would move without this run, m²
	MoveCrr   float64
	Wind      measure.Value // mean wind against direction +1, m/s
	Cuts      []Cut         // stretches left out
	Reason    string        // in plain words, when the whole run was left out; else empty
}

// Cut is a stretch of a run that was left out.
type Cut struct {
	From, To float64 // s
	Reason   string  // in plain words
}

// PairFit is what leaving out one pair changes.
type PairFit struct {
	Pair             int
	Setup            int
	MoveCdA, MoveCrr float64 // how much the setup's figures would move without it, m² and 1
}

