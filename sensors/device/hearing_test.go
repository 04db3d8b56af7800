package device

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sourcetest"
)

// TestLowpassKeepsItsBand checks the response of a Lowpass to tones, for the
// usual rates of microphones: the band passes unchanged, and what would alias
// into it is removed.
func TestLowpassKeepsItsBand(t *testing.T) {
	for _, rate := range []float64{8000, 16000, 44100, 48000, 96000} {
		f := NewLowpass(rate)
		out := rate / float64(f.Factor)
		if math.Abs(out/sensors.SoundRate-1) > 0.06 {
			t.Errorf("%g/s comes down to %.0f/s", rate, out)
		}
		left := func(hz float64) float64 { // dB
			sum := 0.0
			for i, x := range f.Taps {
				sum += x * math.Cos(2*math.Pi*hz/rate*float64(i-len(f.Taps)/2))
			}
			return 20 * math.Log10(math.Abs(sum))
		}
		for hz := 0.0; hz < rate/2; hz += 7 {
			switch db := left(hz); {
			case hz <= sensors.SoundBand && math.Abs(db) > 0.01:
				t.Fatalf("%g/s: %.3f dB at %g Hz", rate, db, hz)
			case hz >= out-sensors.SoundBand && db > -78:
				t.Fatalf("%g/s: %.1f dB at %g Hz", rate, db, hz)
			}
		}
		t.Logf("%g/s: %d taps, %.1f million products a second", rate, len(f.Taps), float64(len(f.Taps))*out/1e6)
	}
}

// TestSoundClockStaysWhole plays stretches that are delayed by redraws, on
// clocks that drift: the times stay within a few milliseconds, and the phase of
// 500 Hz hardly changes between stretches.
func TestSoundClockStaysWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 3))
	var c SoundClock
	last := math.NaN()
	for i := range 6000 {
		true_ := float64(i) / 10
		at := c.At(true_*(1+50e-6), true_+0.004+rng.ExpFloat64()*0.02)
		if i > 600 {
			if math.Abs(at-true_-0.004) > 0.006 {
				t.Fatalf("stretch %d is at %.4f s instead of %.4f", i, at, true_)
			}
			if step := at - last - 0.1; math.Abs(step) > 2e-4 {
				t.Fatalf("the clock steps by %.2g s at stretch %d", step, i)
			}
		}
		last = at
	}
	if at := c.At(700, 600); math.Abs(at-600) > 1e-9 {
		t.Errorf("after a cut the clock says %.3f s", at)
	}
}

// tone is a microphone that delivers sound evenly as long as its bench lets it.
type tone struct {
	bench *bench
	end   float64 // s, when it falls silent
	says  *Report
}

func (e *tone) Start() {}
func (e *tone) Stop()  { e.bench.stops++ }
func (e *tone) Drain(b *Batch) {
	if e.says != nil {
		b.Reports, e.says = append(b.Reports, *e.says), nil
	}
	if now := e.bench.now; now < e.end {
		b.Sound = append(b.Sound, sensors.Sound{T: now - 0.1, Rate: 1200, Level: make([]int16, 120)})
	}
}

func TestHearingKeepsTheContract(t *testing.T) {
	sourcetest.Contract(t, func() sensors.Source {
		b := &bench{end: math.Inf(1)}
		return NewLive(Hearing(b, &tone{bench: b, end: math.Inf(1)}), soon)
	}, sourcetest.Samples(3000))
}

// TestHearingTellsOfTheMicrophone: what happens to the microphone is reported, and the
// rest continues.
func TestHearingTellsOfTheMicrophone(t *testing.T) {
	for _, tt := range []struct {
		name string
		tone tone
		want []sensors.Condition
	}{
		{"works", tone{end: 100}, []sensors.Condition{sensors.Working}},
		{"dies", tone{end: 5}, []sensors.Condition{sensors.Working, sensors.Silent}},
		{"denied", tone{says: &Report{sensors.SensorSound, sensors.Denied, finding.New("browser.no_microphone_leave")}}, []sensors.Condition{sensors.Denied}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b := &bench{end: 100}
			tt.tone.bench = b
			ctx, cancel := context.WithCancel(t.Context())
			defer cancel()
			c := sensors.NewCollector()
			err := NewLive(Hearing(b, &tt.tone), until12(b, cancel)).Run(ctx, c)
			if !errors.Is(err, context.Canceled) {
				t.Fatal(err)
			}
			var is []sensors.Condition
			for _, s := range c.Log().States {
				if s.Sensor == sensors.SensorSound {
					is = append(is, s.Condition)
				}
			}
			if len(is) != len(tt.want) || is[len(is)-1] != tt.want[len(is)-1] {
				t.Errorf("reported %v, want %v", is, tt.want)
			}
			if len(c.Log().Motion) < 1000 || b.stops != 2 {
				t.Errorf("%d readings of motion, %d stops", len(c.Log().Motion), b.stops)
			}
		})
	}
}

// until12 cancels once a bench is past 12 s.
func until12(b *bench, cancel func()) func(time.Duration) <-chan time.Time {
	return func(d time.Duration) <-chan time.Time {
		if b.now > 12 {
			cancel()
		}
		return soon(d)
	}
}
