package runs

import (
	"math/rand/v2"
	"testing"

	"stillair/runs/air"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// TestSeaLevelPressure enters the pressure of the weather report, and then the
// local pressure, on days with different weather.
func TestSeaLevelPressure(t *testing.T) {
	const days = 300
	for _, alt := range []float64{0, 100, 300, 500, 1000, 1500} {
		r := rand.New(rand.NewPCG(1, uint64(alt)))
		caught, falsely := 0, 0
		_, standard, _ := air.Standard(alt)
		for range days {
			sea := 101325 + 900*r.NormFloat64() // weather, Pa
			caught += asked(sea, alt)
			falsely += asked(sea*standard/101325, alt)
		}
		t.Logf("%.0f m: caught %d, falsely %d of %d", alt, caught, falsely, days)
		if alt >= 300 && caught < days*9/10 {
			t.Errorf("%.0f m: sea-level pressure was caught %d times in %d", alt, caught, days)
		}
		if falsely > days/10 {
			t.Errorf("%.0f m: a true pressure was doubted %d times in %d", alt, falsely, days)
		}
	}
}

// asked is 1 if the pressure is corrected or questioned.
func asked(pa, alt float64) int {
	c := conditions{ride: sensors.UnknownRide()}
	c.ride.Air.Pressure = pa
	f := sensors.NewFix(0, 20)
	f.Alt = alt
	c.settlePressure(&sensors.Log{Fixes: []sensors.Fix{f}})
	if finding.Any(c.warnings, codeSeaLevel) || finding.Any(c.warnings, codeMaybeSeaLevel) {
		return 1
	}
	return 0
}

// TestSeaLevelAt1500 checks the correction: 1013.25 hPa there is 845.6 hPa (ISO
// 2533, from memory).
func TestSeaLevelAt1500(t *testing.T) {
	c := conditions{ride: sensors.UnknownRide()}
	got := c.enteredPressure(101325, 1500)
	if got.X < 84500 || got.X > 84620 {
		t.Errorf("%.0f Pa, want 84 560", got.X)
	}
}
