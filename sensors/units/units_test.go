package units_test

import (
	"math"
	"testing"

	"stillair/sensors/units"
)

// TestPublished checks against NIST SP 811 (2008), appendix B.8, to the digits
// printed there.
func TestPublished(t *testing.T) {
	for _, c := range []struct {
		name      string
		got, want float64
		digit     float64 // half of the last printed digit
	}{
		{"mile per hour", units.MPH, 0.44704, 1e-15},
		{"foot", units.Foot, 0.3048, 1e-15},
		{"mile", units.Mile, 1609.344, 1e-9},
		{"kilometre per hour", units.KMH, 0.2777778, 0.5e-7},
		{"horsepower (550 ft·lbf/s)", units.Horsepower, 745.6999, 0.5e-4},
		{"horsepower, more digits", units.Horsepower, 745.69987, 0.5e-5},
		{"horsepower (metric)", units.MetricHorsepower, 735.49875, 1e-9},
		{"pound-force", units.PoundForce, 4.448222, 0.5e-6},
		{"psi", units.PSI, 6894.757, 0.5e-3},
		{"gallon (US)", units.GallonUS, 3.785412e-3, 0.5e-9},
		{"degree", units.Degree, 0.01745329, 0.5e-8},
		{"revolution per minute", units.RPM, 0.1047198, 0.5e-7},
		{"conventional mm of mercury", units.MercuryMM, 133.3224, 0.5e-4},
		{"quarter mile, m", units.Mile / 4, 402.336, 1e-9},
	} {
		if math.Abs(c.got-c.want) > c.digit {
			t.Errorf("%s: %.10g, want %.10g", c.name, c.got, c.want)
		}
	}
}
