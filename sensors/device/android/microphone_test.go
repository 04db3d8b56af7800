//go:build doubles

package android

import (
	"context"
	"math"
	"math/cmplx"
	"strings"
	"testing"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/device/android/doubles"
	"stillair/sensors/sourcetest"
)

// listen runs the phone with its microphone for d.
func listen(t *testing.T, d time.Duration, library string) *sensors.Log {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), d)
	defer cancel()
	microphone := NewMicrophone(machine.Native)
	if library != "" {
		microphone.library = library
	}
	log, _ := sensors.Collect(ctx, device.NewLive(device.Hearing(NewPort(machine.Native), microphone), time.After))
	if n := doubles.Listening(); n != 0 {
		t.Errorf("%d microphones are still open", n)
	}
	return log
}

func TestMicrophoneKeepsTheContract(t *testing.T) {
	machine.Reset(35)
	machine.Set("allowed", "yes")
	machine.Set("may hear", "yes")
	sourcetest.Contract(t, func() sensors.Source {
		return device.NewLive(device.Hearing(NewPort(machine.Native), NewMicrophone(machine.Native)), time.After)
	}, sourcetest.Samples(600), sourcetest.Patience(5*time.Second))
}

// line is the amplitude of a tone and its phase against the log's clock.
func line(sounds []sensors.Sound, hz float64) (amplitude, phase float64) {
	var z complex128
	n := 0.0
	for _, s := range sounds {
		for k, level := range s.Level {
			at := math.Mod(s.T+float64(k)/s.Rate, 1)
			z += complex(float64(level)/sensors.FullScale, 0) * cmplx.Rect(1, -2*math.Pi*hz*at)
			n++
		}
	}
	z *= complex(0, 2/n) // of a sine
	return cmplx.Abs(z), cmplx.Phase(z)
}

// TestMicrophoneHearsWholeAndInTime checks that a tone is recorded with its amplitude
// and on the clock of the other sensors, and that nothing above the band aliases into
// it: 2900 Hz would appear at 500.
func TestMicrophoneHearsWholeAndInTime(t *testing.T) {
	for _, c := range []struct {
		name      string
		slept     time.Duration
		unstamped bool
		within    float64 // s
	}{
		{"stamped", 0, false, 50e-6},
		{"on a phone that has slept", time.Hour, false, 50e-6},
		{"by when it was handed over", 0, true, 0.002}, // plus the 15 ms of the stand-in, which is three periods
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("may hear", "yes")
			doubles.Sensors(doubles.Phone{Slept: c.slept, Shortest: 5 * time.Millisecond})
			doubles.SetMicrophone(doubles.Microphone{Unstamped: c.unstamped})
			log := listen(t, 4*time.Second, "")
			if len(log.Sound) < 30 || len(log.Motion) < 600 {
				t.Fatalf("%d stretches of sound, %d readings of motion in 4 s; %v", len(log.Sound), len(log.Motion), log.States)
			}
			sounds := log.Sound[len(log.Sound)-20:]
			for i, s := range sounds[1:] {
				if gap := s.T - sounds[i].End(); math.Abs(gap) > 0.0005 || s.Rate != 1200 || s.Clipped != 0 {
					t.Errorf("a gap of %g s, %g/s, %d clipped", gap, s.Rate, s.Clipped)
				}
			}
			tone, phase := line(sounds, 200)
			folded, _ := line(sounds, 500)
			off := phase / (2 * math.Pi * 200)
			t.Logf("200 Hz %.4f, %.1f µs off; 500 Hz %.6f", tone, 1e6*off, folded)
			if math.Abs(tone-0.25) > 0.002 || folded > tone/2000 || math.Abs(off) > c.within {
				t.Errorf("200 Hz came out as %.4f, %g s off, and 2900 Hz as %.6f at 500 Hz", tone, off, folded)
			}
			if d := sounds[19].T - log.Motion[len(log.Motion)-1].T; math.Abs(d) > 1 {
				t.Errorf("the last sound is %g s from the last motion", d)
			}
		})
	}
}

// TestWhatHappensToTheMicrophone: it is reported, and the rest continues.
func TestWhatHappensToTheMicrophone(t *testing.T) {
	const needsLater = "libnothing-of-that-name.so"
	for _, c := range []struct {
		name, leave, library string
		microphone           doubles.Microphone
		want                 string
	}{
		{"works", "yes", "", doubles.Microphone{}, "available working"},
		{"of Android 8", "yes", "libaaudio-early.so", doubles.Microphone{}, "available working"},
		{"no leave", "no", "", doubles.Microphone{}, "denied"},
		{"Android without AAudio", "yes", needsLater, doubles.Microphone{}, "missing"},
		{"not opened", "yes", "", doubles.Microphone{Denied: true}, "silent"},
		{"taken away", "yes", "", doubles.Microphone{Cut: time.Second}, "available working silent"},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("may hear", c.leave)
			doubles.SetMicrophone(c.microphone)
			log := listen(t, 4*time.Second, c.library)
			if got := conditions(log, sensors.SensorSound); got != c.want {
				t.Errorf("sound was %q, want %q; %v", got, c.want, log.States)
			}
			if why := log.States[len(log.States)-1].Detail.String(); c.microphone.Cut > 0 && !strings.Contains(why, "-899") {
				t.Errorf("reported end: %q, want AAUDIO_ERROR_DISCONNECTED, -899", why)
			}
			if len(log.Motion) < 600 {
				t.Errorf("%d readings of motion meanwhile", len(log.Motion))
			}
		})
	}
}

// TestUntreatedWhereThePhoneCan checks the presets, by the numbers of AAudio.h:
// 6 is VOICE_RECOGNITION and 9 is UNPROCESSED.
func TestUntreatedWhereThePhoneCan(t *testing.T) {
	for _, c := range []struct {
		name, can string
		picky     bool
		want      int
	}{
		{"it can", "true", false, 9},
		{"it cannot", "false", false, 6},
		{"it does not say", "", false, 6},
		{"it says so and does not", "true", true, 6},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("may hear", "yes")
			machine.Set("untreated", c.can)
			doubles.SetMicrophone(doubles.Microphone{Picky: c.picky})
			log := listen(t, 700*time.Millisecond, "")
			if got := doubles.Preset(); got != c.want || len(log.Sound) == 0 {
				t.Errorf("preset %d, want %d; %d stretches", got, c.want, len(log.Sound))
			}
		})
	}
}

func TestPermitMicrophone(t *testing.T) {
	for _, c := range []struct {
		name, given, answer, asked string
		api                        int
		want                       bool
	}{
		{"given before", "yes", "", "", 35, true},
		{"given when asked", "", "yes", "1", 35, true},
		{"refused when asked", "", "no", "1", 35, false},
		{"not to be asked again", "", "never ask", "1", 35, false},
		{"not answered", "", "", "1", 35, false},
		{"another question is open", "", "another is open", "1", 35, false},
		{"given at installation", "", "", "", 22, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(c.api)
			machine.Set("may hear", c.given)
			machine.Set("answer to hear", c.answer)
			soon := func(d time.Duration) <-chan time.Time { return time.After(d / 4) }
			if got := PermitMicrophone(machine.Native, soon); got != c.want {
				t.Errorf("leave: %v, want %v", got, c.want)
			}
			if got := machine.Get("asked to hear"); got != c.asked {
				t.Errorf("asked %q times, want %q", got, c.asked)
			}
		})
	}
}
