package fusion

import "gonum.org/v1/gonum/spatial/r3"

// Track is the ride after the forward-backward smoother: the motion of the
// bike along its path. The slices are parallel, on strictly increasing times.
type Track struct {
	T []float64 // s on the log's clock
	V []float64 // speed, m/s, never negative
	A []float64 // forward acceleration, m/s², slope and sensor bias removed
	S []float64 // distance along the path since the start, m

	VSD []float64 // standard uncertainty of V, m/s
	ASD []float64 // standard uncertainty of A, m/s²

	Yaw   []float64 // turn rate about the vertical, rad/s, left positive; NaN without gyroscope
	Shake []float64 // rms of what the accelerometer holds above a few Hz, m/s²: engine and road

	Still  []Span // standstills
	Gaps   []Span // where motion samples are missing, or fixes for so long that the speed is a guess
	Lag    Lag
	Mounts []Mount // one for each way the phone was fixed, in order of time
}

// Span is a stretch of time, s on the log's clock.
type Span struct{ From, To float64 }

// Lag is how much later a fix arrives than what it describes.
type Lag struct {
	Seconds float64
	SE      float64 // standard error, s
	Found   bool    // false: the ride says too little and the values are what is assumed
}

// Mount is one way the phone was fixed to the bike, for as long as it held.
type Mount struct {
	Span
	Forward r3.Vec  // unit vector of the direction of travel, phone axes
	Up      r3.Vec  // unit vector away from the ground on level road, phone axes
	SE      float64 // standard uncertainty of Forward's angle to Up, rad
}
