package repair

import (
	"math"

	"stillair/sensors"
)

// ClockUnit returns the unit in seconds that the times of motion samples are
// in: 1, or 1e-3, 1e-6, 1e-9. Phones measure motion 5 to 1000 times a second;
// intervals with a median above 1.5 "seconds" are taken to be in a smaller
// unit, which gives such a rate. It returns NaN if no unit fits.
func ClockUnit(motion []sensors.Motion) float64 {
	if len(motion) < 2 {
		return 1
	}
	every := max(1, len(motion)/20_000)
	var steps []float64
	for i := 1; i < len(motion); i += every {
		steps = append(steps, motion[i].T-motion[i-1].T)
	}
	step := quantile(steps, 0.5)
	if step <= 1.5 {
		return 1
	}
	for _, unit := range []float64{1e-3, 1e-6, 1e-9} {
		if s := step * unit; s >= 0.9e-3 && s <= 0.21 {
			return unit
		}
	}
	return math.NaN()
}
