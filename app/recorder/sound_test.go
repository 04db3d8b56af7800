package recorder_test

import (
	"context"
	"testing"

	"stillair/app/recorder"
	"stillair/sensors"
)

// hums is a simulated source with sound, until its microphone fails.
type hums struct {
	made
	dies float64 // s
}

func (h hums) Run(ctx context.Context, sink sensors.Sink) error {
	m := h.made
	m.each = func(t float64) {
		if t < h.dies {
			clipped := 0
			if t >= 10 {
				clipped = 3
			}
			sink.Sound(sensors.Sound{T: m.clock(t), Rate: 1200, Level: []int16{1, -2, int16(t)}, Clipped: clipped})
		}
	}
	return m.Run(ctx, sink)
}

// TestSoundIsKept checks that every stretch of sound is in the file, even after
// the phone's clock was set back, that clipping is reported, and that the rest
// continues if the microphone fails.
func TestSoundIsKept(t *testing.T) {
	b := newBench()
	back := func(t float64) float64 {
		if t >= 20 {
			return t - 10
		}
		return t
	}
	rec := b.record(t, hums{made{seconds: 60, hz: 50, speed: steadyRide, clock: back}, 40})
	status, got := b.finish(t, rec)
	if n := len(got.Log.Sound); n != 40 {
		t.Fatalf("%d of 40 stretches of sound were kept", n)
	}
	for i, s := range got.Log.Sound {
		if s.Level[2] != int16(i) || i > 0 && !s.Follows(got.Log.Sound[i-1]) {
			t.Fatalf("stretch %d is %+v", i, s)
		}
	}
	var sound recorder.Sense
	for _, s := range status.Senses {
		if s.Sensor == sensors.SensorSound {
			sound = s
		}
	}
	if sound.Count != 40 || !(sound.Clipped > 0) {
		t.Errorf("the status says %+v of sound", sound)
	}
	if len(got.Log.Motion) != 3000 {
		t.Errorf("%d of 3000 readings of motion were kept", len(got.Log.Motion))
	}
}
