package w3c

import (
	"math"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// radius95 is the radius that contains 95 % of a normal error in two
// dimensions, in standard deviations of one: √(−2 ln 0.05).
const radius95 = 2.447746830680816

// Coords is a GeolocationCoordinates, NaN for null.
type Coords struct {
	Latitude, Longitude float64 // degrees
	Altitude            float64 // m above the ellipsoid
	Accuracy            float64 // m, 95 % radius
	Heading             float64 // degrees clockwise from true north
	Speed               float64 // m/s
}

// MotionFrom makes a sample of a DeviceMotionEvent: its timeStamp in ms, its
// accelerationIncludingGravity in m/s², its rotationRate in deg/s. Values that
// are null are NaN. The sign of the force is left as it is.
func MotionFrom(timeStamp, x, y, z, alpha, beta, gamma float64) sensors.Motion {
	turn := r3.Scale(math.Pi/180, r3.Vec{X: alpha, Y: beta, Z: gamma})
	if s := turn.X + turn.Y + turn.Z; math.IsNaN(s) || math.IsInf(s, 0) {
		nan := math.NaN()
		turn = r3.Vec{X: nan, Y: nan, Z: nan} // an incomplete turn rate is unusable
	}
	return sensors.Motion{T: timeStamp / 1000, Force: r3.Vec{X: x, Y: y, Z: z}, Turn: turn}
}

// FixFrom makes a fix of a GeolocationPosition that arrived at the given ms of
// the page's clock; timestamp is its own, in ms since 1970.
func FixFrom(arrival float64, c Coords, timestamp float64) sensors.Fix {
	f := sensors.NewFix(arrival/1000, c.Speed)
	if math.Abs(c.Latitude) <= 90 && math.Abs(c.Longitude) <= 180 {
		f.LatDeg, f.LonDeg = c.Latitude, c.Longitude
		if c.Accuracy > 0 {
			f.HSD = c.Accuracy / radius95
		}
	}
	f.Alt = c.Altitude
	if c.Heading >= 0 && c.Heading <= 360 {
		f.BearingDeg = math.Mod(c.Heading, 360)
	}
	if isEpoch(timestamp) {
		f.UTC = time.UnixMicro(int64(math.Round(timestamp * 1000))).UTC()
	}
	return f
}

// isEpoch distinguishes milliseconds since 1970, in the years 1980 to 2200,
// from milliseconds since a page was opened.
func isEpoch(ms float64) bool { return ms > 3.2e11 && ms < 7.258e12 }
