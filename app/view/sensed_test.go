package view

import (
	"math"
	"strings"
	"testing"

	"stillair/app/recorder"
	"stillair/app/text"
	"stillair/fusion"
	"stillair/runs"
	"stillair/sensors"
)

// TestSensed checks the texts about rates, gaps and the clocks, both estimated and
// assumed.
func TestSensed(t *testing.T) {
	senses := []recorder.Sense{
		{Sensor: sensors.SensorMotion, Count: 6000, Rate: 99.7, Gaps: 1, Longest: 0.52, Condition: sensors.Working},
		{Sensor: sensors.SensorFix, Count: 60, Rate: 0.98, Longest: 1.1, Condition: sensors.Working},
		{Sensor: sensors.SensorPressure, Rate: math.NaN()},
	}
	found := &fusion.Track{Lag: fusion.Lag{Seconds: 0.214, SE: 0.02, Found: true}, Receiver: fusion.Receiver{Smoothing: 0.3}}
	c := english()
	got := c.Sensed(senses, found)
	if len(got) != 3 || got[0].Words != "100 a second, 1 gap of 0.5 s" || got[1].Words != "1.0 a second, no gaps" {
		t.Fatalf("got %+v", got)
	}
	if !strings.Contains(got[2].Words, "0.21 ± 0.04 s") || !strings.Contains(got[2].Detail, "0.3 s") { // 1.96 · 0.02
		t.Errorf("the clocks: %+v", got[2])
	}
	assumed := Context{Book: text.German()}.Sensed(nil, &fusion.Track{Lag: fusion.Lag{Seconds: 0.2}})
	if len(assumed) != 1 || !strings.Contains(assumed[0].Words, "angenommen sind 0,20 s") {
		t.Errorf("assumed: %+v", assumed)
	}
	if none := c.Sensed(nil, nil); none != nil {
		t.Errorf("out of nothing: %+v", none)
	}
	live := c.sensedLive(senses, &runs.Result{Track: found})
	if live != "Motion 100 a second, 1 gap of 0.5 s. Satellites 1 a second, no gaps. GPS runs 0.21 ± 0.04 s behind the motion sensors" {
		t.Errorf("at a halt: %q", live)
	}
	if live := c.sensedLive(senses, nil); strings.Contains(live, "behind") {
		t.Errorf("before any leg: %q", live)
	}
}
