package recorder_test

import (
	"math"
	"testing"

	"stillair/app/recorder"
	"stillair/sensors"
)

// TestSensed checks 60 s of motion at 100 Hz with gaps of 3 s and 0.5 s and fixes
// at 1 Hz without gaps.
func TestSensed(t *testing.T) {
	log := &sensors.Log{}
	for i := range 6000 {
		at := float64(i) / 100
		if at > 20 && at < 23 || at > 40 && at < 40.5 {
			continue
		}
		log.Motion = append(log.Motion, sensors.Motion{T: at})
	}
	log.Motion = append(log.Motion, log.Motion[len(log.Motion)-1]) // repeated, without a step back in time
	for i := range 60 {
		log.Fixes = append(log.Fixes, sensors.NewFix(float64(i), 20))
	}
	of := map[sensors.Sensor]recorder.Sense{}
	for _, x := range recorder.Sensed(log) {
		of[x.Sensor] = x
	}
	if x := of[sensors.SensorMotion]; math.Abs(x.Rate-100) > 0.01 || x.Gaps != 2 || math.Abs(x.Longest-3) > 0.011 || x.Count != len(log.Motion) {
		t.Errorf("motion: %+v", x)
	}
	if x := of[sensors.SensorFix]; x.Rate != 1 || x.Gaps != 0 || x.Longest != 1 || x.Count != 60 {
		t.Errorf("fixes: %+v", x)
	}
	if x := of[sensors.SensorPressure]; x.Count != 0 || !math.IsNaN(x.Rate) || x.Condition != "" {
		t.Errorf("pressure: %+v", x)
	}
}
