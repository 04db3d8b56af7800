package air

import (
	"math"
	"testing"
)

// TestDensityAltitude: the tables of ISO 2533 give 1.2250 kg/m³ at 0 m, 1.1117 at
// 1000 m and 0.9093 at 3000 m.
func TestDensityAltitude(t *testing.T) {
	for rho, want := range map[float64]float64{1.2250: 0, 1.1117: 1000, 0.9093: 3000} {
		if got := DensityAltitude(rho); math.Abs(got-want) > 3 {
			t.Errorf("%v kg/m³: %.1f m, want %.0f", rho, got, want)
		}
	}
}
