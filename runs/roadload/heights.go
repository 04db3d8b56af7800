package roadload

import (
	"math"

	"stillair/sensors"
)

// nearTime is the largest distance in time of a pressure reading from the fix
// to which it is assigned, s.
const nearTime = 0.5

// Heights turns a barometer's readings, in order of time, into heights at the
// times t of fixes, for Run.Height: every reading is assigned to the nearest
// fix, and their mean becomes a height by dh = −dp/(ρg). It returns nil where
// less than half of the fixes get one.
func Heights(t []float64, readings []sensors.Pressure, density, gravity float64) []float64 {
	sum, count := make([]float64, len(t)), make([]float64, len(t))
	first, i := math.NaN(), 0
	for _, r := range readings {
		if math.IsNaN(r.Pa) || len(t) == 0 {
			continue
		}
		for i < len(t)-1 && math.Abs(t[i+1]-r.T) <= math.Abs(t[i]-r.T) {
			i++
		}
		if math.Abs(t[i]-r.T) > nearTime {
			continue
		}
		if math.IsNaN(first) {
			first = r.Pa
		}
		sum[i] -= (r.Pa - first) / (density * gravity)
		count[i]++
	}
	known := 0
	for i := range sum {
		sum[i] /= count[i] // NaN if there is none
		if count[i] > 0 {
			known++
		}
	}
	if 2*known < len(t) || known == 0 {
		return nil
	}
	return sum
}
