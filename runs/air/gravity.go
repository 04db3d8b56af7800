package air

import (
	"math"

	"stillair/sensors/units"
)

// Gravity returns normal gravity, m/s², at a latitude in degrees and a height
// above the ellipsoid in m: the closed formula of Somigliana with the constants
// of WGS 84 (NGA.STND.0036, section 4), and the free-air gradient to second
// order.
func Gravity(latitude, height float64) float64 {
	const (
		equator = 9.7803253359
		k       = 0.00193185265241
		e2      = 0.00669437999014
		a       = 6378137.0
		f       = 1 / 298.257223563
		m       = 0.00344978650684
	)
	s := math.Sin(latitude * units.Degree)
	s2 := s * s
	ground := equator * (1 + k*s2) / math.Sqrt(1-e2*s2)
	return ground * (1 - 2/a*(1+f+m-2*f*s2)*height + 3*height*height/(a*a))
}
