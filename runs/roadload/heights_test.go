package roadload_test

import (
	"math"
	"testing"

	"stillair/runs/air"
	"stillair/runs/roadload"
	"stillair/sensors"
)

// TestHeights: pressures of the standard atmosphere (ISO 2533) on a climb of 2
// m/s give the climb, minus the effect of the decreasing density.
func TestHeights(t *testing.T) {
	_, _, rho := air.Standard(100)
	var readings []sensors.Pressure
	for i := range 200 {
		at := float64(i) * 0.1
		_, p, _ := air.Standard(100 + 2*at)
		readings = append(readings, sensors.Pressure{T: 50 + at, Pa: p})
	}
	readings[40].Pa = math.NaN()
	var times []float64
	for s := 51.0; s < 69; s++ {
		times = append(times, s)
	}
	h := roadload.Heights(times, readings, rho, 9.80665)
	if len(h) != len(times) {
		t.Fatalf("%d heights, want %d", len(h), len(times))
	}
	for i := range h {
		if want := 2 * float64(i); math.Abs(h[i]-h[0]-want) > 0.2 {
			t.Errorf("fix %d: %.2f m above the first, want %.2f", i, h[i]-h[0], want)
		}
	}
	if h := roadload.Heights(times, readings[:60], rho, 9.80665); h != nil {
		t.Errorf("heights %v from readings over a third of the time, want none", h)
	}
	if h := roadload.Heights(times, nil, rho, 9.80665); h != nil {
		t.Errorf("heights %v without a barometer", h)
	}
	far := roadload.Heights([]float64{51, 200}, readings, rho, 9.80665)
	if len(far) != 2 || !math.IsNaN(far[1]) || math.IsNaN(far[0]) {
		t.Errorf("heights %v, want one and none", far)
	}
}
