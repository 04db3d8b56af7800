// Package kalman implements the fixed-interval smoother: a state of seven
// components, an extended Kalman filter forward and the modified Bryson-Frazier
// (adjoint) recursion backward.
//
// # State
//
//	s  distance along the path, m
//	v  speed, m/s
//	b  what the forward accelerometer reads at constant speed, m/s²: its own
//	   bias, the mount's pitch, and the slope of the road times g
//	c  the receiver's correlated error, m/s, a first-order Gauss-Markov process
//	k  how much the accelerometer reads too much, as a share: chassis pitch
//	   that follows the acceleration looks exactly like this
//	d  how much later than assumed the receiver is, s
//	w  the square of the receiver's smoothing time beyond the one assumed, s²
//
// The speed follows from the forward specific force f by
// dv/dt = (f - b)·(1 - k) + white noise.
//
// # The way back
//
// The textbook recursion (Rauch, Tung and Striebel, AIAA Journal 3 (1965) 1445)
// solves a system of seven equations at each node. That of Bryson and Frazier
// ("Smoothing for linear and nonlinear dynamic systems", 1963; Bierman, "Fixed
// interval smoothing with discrete measurements", International Journal of
// Control 18 (1973) 65) solves none: the information of all later observations
// about the state at a node is propagated backward as an adjoint vector η and a
// matrix Λ, through each step by its transposed transition F,
//
//	η ← Fᵀη    Λ ← FᵀΛF
//
// and through each observation h with innovation e, its variance r and gain g
// by
//
//	η ← η + h·(e/r - gᵀη)    Λ ← (1 - h·gᵀ)·Λ·(1 - g·hᵀ) + h·hᵀ/r.
//
// The filter's state x and covariance P there become x + Pη and P - PΛP. F has
// five off-diagonal entries and two diagonal ones other than 1, so a step costs
// some tens of multiplications in each direction. No observation depends on the
// distance, so η and Λ have no entries for it. The cross-covariance with later
// nodes needs only the filter's P, F and g: see Walk.
package kalman

// Indices of the state's components.
const (
	S = iota
	V
	B
	C
	K
	D
	W
	N // how many there are
)

// Vec is a state vector.
type Vec [N]float64

// Sym is a symmetric matrix such as a covariance; each pair is stored once.
type Sym struct {
	SS, SV, SB, SC, SK, SD, SW float64
	VV, VB, VC, VK, VD, VW     float64
	BB, BC, BK, BD, BW         float64
	CC, CK, CD, CW             float64
	KK, KD, KW                 float64
	DD, DW                     float64
	WW                         float64
}

// Diagonal is the covariance matrix of uncorrelated components.
func Diagonal(variance Vec) Sym {
	return Sym{SS: variance[S], VV: variance[V], BB: variance[B], CC: variance[C], KK: variance[K], DD: variance[D], WW: variance[W]}
}

// Variances is the diagonal.
func (p *Sym) Variances() Vec { return Vec{p.SS, p.VV, p.BB, p.CC, p.KK, p.DD, p.WW} }

// columns returns the columns of the full matrix.
func (p *Sym) columns() [N]Vec {
	return [N]Vec{
		{p.SS, p.SV, p.SB, p.SC, p.SK, p.SD, p.SW},
		{p.SV, p.VV, p.VB, p.VC, p.VK, p.VD, p.VW},
		{p.SB, p.VB, p.BB, p.BC, p.BK, p.BD, p.BW},
		{p.SC, p.VC, p.BC, p.CC, p.CK, p.CD, p.CW},
		{p.SK, p.VK, p.BK, p.CK, p.KK, p.KD, p.KW},
		{p.SD, p.VD, p.BD, p.CD, p.KD, p.DD, p.DW},
		{p.SW, p.VW, p.BW, p.CW, p.KW, p.DW, p.WW},
	}
}

// Step is the process model between one node and the next.
type Step struct {
	H      float64 // duration, s
	DV, DS float64 // forward specific force integrated once (m/s) and twice (m)
	RV     float64 // change of speed by the reference, free of vibration, for the scale's share, m/s
	Q      float64 // variance that the vibration adds to v, m²/s²
	QB     float64 // variance added to b, (m/s²)²
	QC     float64 // variance added to c, m²/s²
	QK     float64 // variance added to k
	QD     float64 // variance added to d, s²
	PhiC   float64 // share of c that remains
	PhiK   float64 // share of k that remains
	Blind  bool    // no force was measured: the speed is a random walk
}

// Observation is a measurement of the speed at a node: a fix, or a standstill
// (zero-velocity update).
type Observation struct {
	Z     float64 // observed speed minus everything known, m/s
	R     float64 // its variance, m²/s²
	Accel float64 // acceleration there: the decrease of the reading with the lag, m/s²
	Shape float64 // change of the reading with w, (m/s)/s²
	Still bool    // only v is seen, free of the receiver's errors: a standstill, but where Vague
	Vague bool    // nothing was observed; only a vague prior of vehicle speeds
}

// Node is a time at which the state is estimated.
type Node struct {
	Index       int         // sample of the series
	Step        Step        // from the node before
	Seen        bool        // whether Observation holds
	Observation Observation // what was observed here
}
