package sensors

import (
	"math"
	"time"

	"gonum.org/v1/gonum/spatial/r3"
)

// Motion is one reading of the phone's accelerometer and gyroscope.
type Motion struct {
	T     float64 // when it was measured, s on the log's clock
	Force r3.Vec  // specific force, m/s², phone axes; at rest it has the size of g and points up
	Turn  r3.Vec  // turn rate, rad/s, right-handed about the phone axes; NaN without a gyroscope
}

// HasTurn reports whether the reading has a turn rate.
func (m Motion) HasTurn() bool {
	return !math.IsNaN(m.Turn.X) && !math.IsNaN(m.Turn.Y) && !math.IsNaN(m.Turn.Z)
}

// Fix is one report of the satellite receiver. T is its arrival; it describes
// an earlier time, by a lag that is nearly constant over a ride and is
// estimated by package fusion. Any field but T and Speed may be absent, which
// is represented by NaN (UTC: the zero time).
type Fix struct {
	T          float64   // arrival, s on the log's clock
	Speed      float64   // over ground, m/s
	SpeedSD    float64   // the receiver's own standard deviation of Speed, m/s
	LatDeg     float64   // WGS 84 latitude, degrees north
	LonDeg     float64   // WGS 84 longitude, degrees east
	HSD        float64   // the receiver's own horizontal standard deviation, m
	Alt        float64   // altitude from the receiver, m
	BearingDeg float64   // course over ground, degrees clockwise from true north
	UTC        time.Time // the receiver's own time of the fix
}

// NewFix returns a fix with a speed and nothing else.
func NewFix(t, speed float64) Fix {
	nan := math.NaN()
	return Fix{T: t, Speed: speed, SpeedSD: nan, LatDeg: nan, LonDeg: nan, HSD: nan, Alt: nan, BearingDeg: nan}
}

// HasPosition reports whether the fix has a position.
func (f Fix) HasPosition() bool { return !math.IsNaN(f.LatDeg) && !math.IsNaN(f.LonDeg) }

// Pressure is one reading of the barometer.
type Pressure struct {
	T  float64 // s on the log's clock
	Pa float64 // static pressure at the sensor, Pa
}
