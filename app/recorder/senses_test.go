package recorder

import (
	"math"
	"slices"
	"testing"

	"stillair/sensors"
)

// TestRateFromTheFirstSamplesOn: a receiver that delivers an old fix and a new
// one together and then one a second is not mistaken for a fast one.
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

// TestRateAfterAPause: a pause is a gap and not a low rate, even if it lasted
// many times the time over which the rate is smoothed.
func TestRateAfterAPause(t *testing.T) {
	for _, c := range []struct {
		name   string
		sensor sensors.Sensor
		rate   float64
		pause  float64
	}{
		{"a screen that was off", sensors.SensorMotion, 60, 12},
		{"a long one", sensors.SensorMotion, 60, 600},
		{"a short one", sensors.SensorMotion, 60, 0.4},
		{"satellites in a tunnel", sensors.SensorFix, 1, 40},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, at := newSenses(), 0.0
			for range 100 {
				at += 1 / c.rate
				s.sample(c.sensor, at)
			}
			at += c.pause
			s.sample(c.sensor, at)
			for range 2 {
				at += 1 / c.rate
				s.sample(c.sensor, at)
			}
			x := s.get(c.sensor)
			if math.Abs(x.Rate/c.rate-1) > 0.02 {
				t.Errorf("two samples after the pause the rate is %.2f a second, not %g", x.Rate, c.rate)
			}
			if x.Gaps != 1 || x.Longest < c.pause-1e-9 {
				t.Errorf("%d gaps, the longest %.1f s", x.Gaps, x.Longest)
			}
		})
	}
}

// TestRateOfASlowSensor: intervals longer than the usual limit for a gap count
// as a rate if they are the rule.
func TestRateOfASlowSensor(t *testing.T) {
	s := newSenses()
	for i := range 30 {
		s.sample(sensors.SensorMotion, float64(i)/3)
	}
	if rate := s.get(sensors.SensorMotion).Rate; math.Abs(rate-3) > 0.01 {
		t.Errorf("3 readings a second show as %.2f", rate)
	}
}

// TestRateIsNeverWrongForLong: whatever a sensor did before, its rate is shown
// correctly after two and a half seconds at its usual rate.
func TestRateIsNeverWrongForLong(t *testing.T) {
	for _, c := range []struct {
		name   string
		before []float64 // intervals
	}{
		{"a pause after the very first sample", []float64{39}},
		{"one pause after the other", []float64{39, 39, 0.01, 39}},
		{"a busy page for a while", slices.Repeat([]float64{0.2}, 100)},
		{"a slow page", slices.Repeat([]float64{3}, 30)},
		{"a burst", append(slices.Repeat([]float64{0.0001}, 500), 5)},
	} {
		t.Run(c.name, func(t *testing.T) {
			s, at := newSenses(), 0.0
			s.sample(sensors.SensorMotion, at)
			for _, dt := range c.before {
				at += dt
				s.sample(sensors.SensorMotion, at)
			}
			for range 150 {
				at += 1.0 / 60
				s.sample(sensors.SensorMotion, at)
			}
			if rate := s.get(sensors.SensorMotion).Rate; math.Abs(rate-60) > 1 {
				t.Errorf("60 readings a second show as %.1f", rate)
			}
		})
	}
}
