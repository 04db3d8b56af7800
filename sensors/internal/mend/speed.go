package mend

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/units"
)

// SpeedUnit is a unit of speed that a file may be in by mistake.
type SpeedUnit struct {
	Name string
	MPS  float64 // one of it in m/s
}

// speedUnits are exact by definition (NIST SP 811); within is how far the
// median ratio may be off, less where two units are near each other.
var speedUnits = [...]struct {
	SpeedUnit
	within float64
}{
	{SpeedUnit{"m/s", 1}, 0.12},
	{SpeedUnit{"knots", 1852.0 / 3600}, 0.06},
	{SpeedUnit{"mph", units.MPH}, 0.06},
	{SpeedUnit{"km/h", units.KMH}, 0.12},
}

// SpeedFromPositions compares each speed with the way between the positions
// around it, and returns the unit that fits the median of their ratio; ok is
// false where there are too few pairs to say, or no unit fits.
func SpeedFromPositions(fixes []sensors.Fix) (unit SpeedUnit, ok bool) {
	var ratios []float64
	from := 0
	for i := range fixes {
		dt := fixes[i].T - fixes[from].T
		if dt < 0.8 {
			continue
		}
		d, _, _ := apart(fixes[from], fixes[i])
		// The speed in the middle; way and speed must both be well above noise.
		if v := (fixes[from].Speed + fixes[i].Speed) / 2; dt < 5 && d/dt > 3 {
			ratios = append(ratios, v*dt/d)
		}
		from = i
	}
	if len(ratios) < 10 {
		return SpeedUnit{}, false
	}
	ratio := quantile(ratios, 0.5)
	for _, u := range speedUnits {
		if math.Abs(ratio*u.MPS-1) < u.within {
			return u.SpeedUnit, true
		}
	}
	return SpeedUnit{}, false
}

// FastSpeed returns the speed that one fix in a hundred exceeds, in the file's
// unit.
func FastSpeed(fixes []sensors.Fix) float64 {
	v := make([]float64, len(fixes))
	for i, f := range fixes {
		v[i] = f.Speed
	}
	return quantile(v, 0.99)
}
