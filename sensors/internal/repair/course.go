package repair

import (
	"math"

	"stillair/sensors"
)

// heading is a course over ground at a time.
type heading struct {
	t   float64 // s, when the fix arrived
	rad float64 // clockwise from north
}

// courses returns the course of each fix that moves and is at least half a
// second after the one before: its bearing, or, without bearings, the direction
// between positions.
func courses(fixes []sensors.Fix) []heading {
	const moving = 2.5 // m/s, a slow turn in the road; below it, bearings are unreliable
	var out []heading
	last := sensors.NewFix(math.Inf(-1), 0)
	for _, f := range fixes {
		if f.T-last.T < 0.5 {
			continue
		}
		if f.Speed >= moving && !math.IsNaN(f.BearingDeg) {
			out = append(out, heading{f.T, f.BearingDeg * math.Pi / 180})
		} else if d, east, north := apart(last, f); f.Speed >= moving && d > 2 {
			out = append(out, heading{(last.T + f.T) / 2, math.Atan2(east, north)})
		}
		last = f
	}
	return out
}

// apart returns the distance and direction of b from a, in metres on a sphere,
// accurate enough for the few metres between fixes; NaN without positions.
func apart(a, b sensors.Fix) (distance, east, north float64) {
	const earth = 6371008.8 // m, mean radius (IUGG)
	rad := math.Pi / 180
	north = (b.LatDeg - a.LatDeg) * rad * earth
	east = math.Remainder(b.LonDeg-a.LonDeg, 360) * rad * earth * math.Cos((a.LatDeg+b.LatDeg)/2*rad)
	return math.Hypot(east, north), east, north
}
