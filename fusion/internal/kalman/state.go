// Package kalman is the forward-backward smoother's arithmetic: a state of
// seven numbers, an extended Kalman filter forward and the adjoint recursion
// of Bryson and Frazier backward.
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
// The textbook's way back (Rauch, Tung and Striebel, AIAA Journal 3 (1965)
// 1445) solves a system of seven equations at each node. Bryson and Frazier's
// ("Smoothing for linear and nonlinear dynamic systems", 1963; Bierman, "Fixed
// interval smoothing with discrete measurements", International Journal of
// Control 18 (1973) 65) needs none: what all later observations say about the
// state at a node is carried back as a vector η and a matrix Λ, through each
// step by its transposed transition F,
//
//	η ← Fᵀη    Λ ← FᵀΛF
//
// and through each observation h with innovation e, its variance r and gain g
// by
//
//	η ← η + h·(e/r - gᵀη)    Λ ← (1 - h·gᵀ)·Λ·(1 - g·hᵀ) + h·hᵀ/r.
//
// The filter's state x and covariance P there become x + Pη and P - PΛP. F has
// five entries beside its diagonal and three that are not one, so a step costs
// some tens of multiplications each way. No observation sees the distance, so
// that it has no place in η and Λ. The covariance with later nodes needs the
// filter's P, F and g alone, see Walk.
package kalman

// The places of the numbers in the state.
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

// Vec is a state.
type Vec [N]float64

// Sym is a symmetric matrix such as a covariance, each pair once.
type Sym struct {
	SS, SV, SB, SC, SK, SD, SW float64
	VV, VB, VC, VK, VD, VW     float64
	BB, BC, BK, BD, BW         float64
	CC, CK, CD, CW             float64
	KK, KD, KW                 float64
	DD, DW                     float64
	WW                         float64
}

// Diagonal is the covariance of numbers that have nothing to do with each
// other.
func Diagonal(variance Vec) Sym {
	return Sym{SS: variance[S], VV: variance[V], BB: variance[B], CC: variance[C], KK: variance[K], DD: variance[D], WW: variance[W]}
}

// Variances is the diagonal.
func (p *Sym) Variances() Vec { return Vec{p.SS, p.VV, p.BB, p.CC, p.KK, p.DD, p.WW} }

// columns are those of the whole matrix.
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

// Step is what happens between one node and the next.
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
	Blind  bool    // no force was measured: the speed wanders from what it was
}

// Observation is what was seen of the speed at a node: a fix, or a standstill.
type Observation struct {
	Z     float64 // observed speed less everything known, m/s
	R     float64 // its variance, m²/s²
	Accel float64 // acceleration there: how a later fix reads less, m/s²
	Shape float64 // change of the reading with w, (m/s)/s²
	Still bool    // only v is seen, free of the receiver's errors: a standstill, but where Vague
	Vague bool    // nothing was observed; speeds merely lie where those of vehicles do
}

// Node is a place in time where the state is kept.
type Node struct {
	Index       int         // sample of the series
	Step        Step        // from the node before
	Seen        bool        // whether Observation holds
	Observation Observation // what was observed here
}
