package fusion

import (
	"gonum.org/v1/gonum/spatial/r3"
	"stillair/sensors/finding"
)

// Track is the ride after the forward-backward smoother: the motion of the
// bike along its path. The slices are parallel, on strictly increasing times:
// one entry for each motion sample, and ten a second where samples are missing.
type Track struct {
	T []float64 // s on the log's clock
	V []float64 // speed, m/s, never negative
	A []float64 // forward acceleration, m/s², without slope and sensor bias, smoothed over ±AReach
	S []float64 // distance along the path since the start, m

	VSD []float64 // standard uncertainty of V, m/s
	ASD []float64 // standard uncertainty of A, m/s²

	// Force is the forward acceleration sample by sample, m/s²: as A, but
	// unsmoothed and so with all vibration. It shows most precisely when
	// something began. NaN where motion samples are missing.
	Force []float64
	// Noise is the strength of the acceleration's white noise that the smoother
	// assumed, m²/s³: over a time h, the integral of Force has a standard
	// deviation of √(Noise·h).
	Noise []float64

	Yaw   []float64 // turn rate about the vertical, rad/s, left positive; NaN without gyroscope
	Shake []float64 // rms of the accelerometer above a few Hz, m/s²: engine and road

	// Still are the standstills: times in which the bike certainly stood. It
	// may have stood some tenths of a second longer at either end.
	Still    []Span
	Gaps     []Span     // where motion samples are missing, or fixes for so long that the speed is very uncertain
	GNSSOnly []GNSSOnly // where the accelerometer is not used: the speed is the satellites' alone
	Lag      Lag
	Mounts   []Mount // one for each attitude of the phone on the bike, in order of time

	Receiver Receiver
	Notes    []finding.Finding // notes about the track

	signed []float64 // speed before clamping to zero, m/s; nil: V
	post   posterior
}

// Signed is the unconstrained estimate of the speed, m/s, parallel to T: near
// standstill it may be negative, where V is clamped to zero. Use it to fit a
// model to the speed there, without the bias of clamping. The slice is the
// track's own.
func (tr *Track) Signed() []float64 {
	if tr.signed == nil {
		return tr.V
	}
	return tr.signed
}

// Span is a stretch of time, s on the log's clock.
type Span struct{ From, To float64 }

// GNSSOnly is a stretch of the ride smoothed from the satellite speeds alone, with
// the reason. Events there are known only to about a second.
type GNSSOnly struct {
	Span
	Why finding.Finding
}

// Contains reports whether t lies in the span.
func (s Span) Contains(t float64) bool { return t >= s.From && t <= s.To }

// Lag is how much later a fix arrives than what it describes: transmission and
// the receiver's own smoothing together.
type Lag struct {
	Seconds float64
	SE      float64 // standard error, s
	Found   bool    // false: it could not be estimated, and the values are assumed

	// Steps are the changes of the lag during the ride; nil if there are none.
	Steps []LagStep
}

// LagStep is the lag of the fixes that arrive from a time on.
type LagStep struct {
	From  float64 // arrival, s on the log's clock
	Other float64 // additional lag over Lag.Seconds from then on, s
}

// At is the lag of a fix that arrived at a time, s.
func (l Lag) At(arrival float64) float64 {
	lag := l.Seconds
	for _, s := range l.Steps {
		if arrival >= s.From {
			lag = l.Seconds + s.Other
		}
	}
	return lag
}

// Receiver holds the estimated properties of the satellite receiver.
type Receiver struct {
	WhiteSD      float64 // error of one fix's speed, independent of the others, m/s
	CorrelatedSD float64 // correlated error, over many fixes, m/s
	CorrelatedS  float64 // its correlation time (1/e), s
	Smoothing    float64 // time constant of its own first-order smoothing, s
	SmoothingSE  float64 // standard error of that, s
	Rejected     int     // outliers among the fixes, with little or no weight
}

// Mount is the phone's orientation on the bike during a stretch of time.
type Mount struct {
	Span
	Forward r3.Vec  // unit vector of the direction of travel, phone axes
	Up      r3.Vec  // unit vector away from the ground on level road, phone axes
	SE      float64 // standard uncertainty of Forward's angle to Up, rad
}
