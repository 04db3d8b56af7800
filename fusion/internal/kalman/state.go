// Package kalman is the forward-backward smoother's arithmetic: a state of
// seven numbers in fixed-size arrays, an extended Kalman filter forward and a
// Rauch-Tung-Striebel pass backward.
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

// Mat is a covariance or a gain.
type Mat [N][N]float64

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

// Sight is an observation of the speed at a node: a fix, or a standstill.
type Sight struct {
	Z     float64 // observed speed less everything known, m/s
	R     float64 // its variance, m²/s²
	Accel float64 // acceleration there: how a later fix reads less, m/s²
	Shape float64 // change of the reading with w, (m/s)/s²
	Still bool    // only v is seen, free of the receiver's errors: a standstill, but where Vague
	Vague bool    // nothing was observed; speeds merely lie where those of vehicles do
}

// Node is a place in time where the state is kept.
type Node struct {
	Index int   // sample of the series
	Step  Step  // from the node before
	Seen  bool  // whether Sight holds
	Sight Sight // what was observed here
}
