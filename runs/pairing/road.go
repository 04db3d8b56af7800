package pairing

import (
	"math"

	"stillair/sensors"
)

// Coast is one coast-down to be paired.
type Coast struct {
	ID         int
	Setup      string
	Start, End float64       // s
	Fixes      []sensors.Fix // those that describe the bike within the run
}

// MiddleTime is halfway through the run, s.
func (c Coast) MiddleTime() float64 { return (c.Start + c.End) / 2 }

// BearingDeg is the direction of travel, degrees clockwise from north: from
// the first position to the last or, without positions, the mean course. NaN
// where the fixes carry neither.
func (c Coast) BearingDeg() float64 {
	if p := newPlane(c.Fixes).points(c.Fixes); len(p) >= 2 {
		first, last := p[0], p[len(p)-1]
		if e, n := last.east-first.east, last.north-first.north; math.Hypot(e, n) > 20 {
			return degrees(math.Atan2(e, n))
		}
	}
	var e, n float64
	for _, f := range c.Fixes {
		if !math.IsNaN(f.BearingDeg) && f.Speed > 3 {
			sin, cos := math.Sincos(f.BearingDeg * math.Pi / 180)
			e, n = e+sin, n+cos
		}
	}
	if e == 0 && n == 0 {
		return math.NaN()
	}
	return degrees(math.Atan2(e, n))
}

// degrees turns an angle in rad to degrees from 0 to 360.
func degrees(rad float64) float64 { return math.Mod(rad*180/math.Pi+360, 360) }

// apart is the angle between two bearings, 0 to 180 degrees.
func apart(a, b float64) float64 {
	d := math.Mod(math.Abs(a-b), 360)
	return math.Min(d, 360-d)
}

// Radii of the Earth's curvature follow from WGS 84.
const (
	equatorRadius = 6378137.0
	eccentricity2 = 6.69437999014e-3
)

// plane touches the Earth where the ride was.
type plane struct{ lat, lon, perLat, perLon float64 }

type point struct{ east, north float64 } // m

// newPlane touches the Earth at the first position among the fixes.
func newPlane(fixes []sensors.Fix) plane {
	for _, f := range fixes {
		if f.HasPosition() {
			sin, cos := math.Sincos(f.LatDeg * math.Pi / 180)
			w := math.Sqrt(1 - eccentricity2*sin*sin)
			return plane{
				lat: f.LatDeg, lon: f.LonDeg,
				perLat: equatorRadius * (1 - eccentricity2) / (w * w * w) * math.Pi / 180,
				perLon: equatorRadius / w * cos * math.Pi / 180,
			}
		}
	}
	return plane{}
}

func (p plane) at(f sensors.Fix) point {
	lon := math.Mod(f.LonDeg-p.lon+540, 360) - 180
	return point{east: lon * p.perLon, north: (f.LatDeg - p.lat) * p.perLat}
}

func (p plane) points(fixes []sensors.Fix) []point {
	var out []point
	for _, f := range fixes {
		if f.HasPosition() {
			out = append(out, p.at(f))
		}
	}
	return out
}

// axis is a straight line through a stretch of road.
type axis struct {
	at          point
	east, north float64 // unit vector
}

// newAxis lays a line through points along the direction of their greatest
// spread, pointing as the unit vector of bearing does, more or less.
func newAxis(pts []point, bearing float64) axis {
	var a axis
	for _, p := range pts {
		a.at.east += p.east / float64(len(pts))
		a.at.north += p.north / float64(len(pts))
	}
	var ee, en, nn float64
	for _, p := range pts {
		e, n := p.east-a.at.east, p.north-a.at.north
		ee, en, nn = ee+e*e, en+e*n, nn+n*n
	}
	theta := 0.5 * math.Atan2(2*en, ee-nn)
	a.north, a.east = math.Sincos(theta)
	sin, cos := math.Sincos(bearing * math.Pi / 180)
	if a.east*sin+a.north*cos < 0 {
		a.east, a.north = -a.east, -a.north
	}
	return a
}

// along and beside are a point's coordinates on the axis, m.
func (a axis) along(p point) float64 {
	return (p.east-a.at.east)*a.east + (p.north-a.at.north)*a.north
}

func (a axis) beside(p point) float64 {
	return (p.north-a.at.north)*a.east - (p.east-a.at.east)*a.north
}
