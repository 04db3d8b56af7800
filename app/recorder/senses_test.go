package recorder

import (
	"math"
	"testing"

	"stillair/sensors"
)

// TestRateFromTheFirstSamplesOn: a receiver that hands over an old fix and a
// new one at once and then one a second is not taken for a fast one.
func TestRateFromTheFirstSamplesOn(t *testing.T) {
	s := newSenses()
	for i, at := range []float64{0, 0.07, 1.07, 2.07, 3.07, 4.07, 5.07} {
		s.sample(sensors.SensorFix, at)
		if rate := s.get(sensors.SensorFix).Rate; i >= 3 && (rate < 0.9 || rate > 1.5) {
			t.Errorf("after %d fixes the rate is %.2f a second", i+1, rate)
		}
	}
	s = newSenses()
	for i := range 600 {
		s.sample(sensors.SensorMotion, float64(i)/60)
	}
	if rate := s.get(sensors.SensorMotion).Rate; math.Abs(rate-60) > 0.1 {
		t.Errorf("60 readings a second show as %.2f", rate)
	}
}
