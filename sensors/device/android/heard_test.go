package android

import (
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/device"
)

// played returns n readings of a tone of 100 Hz from reading first on, stamped
// at its end; reading 0 is at 5 s after the phone was started.
func played(first int64, n int) heard {
	x := heard{first: first, n: first + int64(n), stamped: true, level: make([]int16, n)}
	x.t = 5e9 + x.n*1e9/48000
	for i := range x.level {
		x.level[i] = int16(math.Round(16384 * math.Sin(2*math.Pi*100*float64(first+int64(i))/48000)))
	}
	return x
}

func TestHearingIsTheSameHoweverItIsCut(t *testing.T) {
	for _, each := range []int{1, 37, 960, 48000} {
		h := newHearing(48000)
		var b device.Batch
		for first := 0; first+each <= 48000; first += each {
			h.add(played(int64(first), each), &b)
		}
		if len(b.Sound) < 9 {
			t.Fatalf("%d at once: %d stretches of a second", each, len(b.Sound))
		}
		for _, s := range b.Sound {
			for k, level := range s.Level {
				want := 16384 * math.Sin(2*math.Pi*100*(s.T-5+float64(k)/s.Rate))
				if math.Abs(float64(level)-want) > 16 { // a thousandth
					t.Fatalf("%d at once: %d at %.4f s, want %.0f", each, level, s.T+float64(k)/s.Rate, want)
				}
			}
		}
		if len(h.past) > len(h.filter.Taps) {
			t.Errorf("%d readings are kept", len(h.past))
		}
	}
}

func TestHearingAcrossALoss(t *testing.T) {
	h := newHearing(48000)
	var b device.Batch
	h.add(played(0, 24000), &b)
	before := len(b.Sound)
	h.add(played(34000, 24000), &b)
	if before == 0 || len(b.Sound) <= before {
		t.Fatalf("%d stretches, then %d", before, len(b.Sound))
	}
	if gap := b.Sound[before].T - b.Sound[before-1].End(); gap < 10000.0/48000 {
		t.Errorf("a gap of %g s where more than %g s were lost", gap, 10000.0/48000)
	}
}

// TestHearingTrustsTheSystem: the time of delivery, here 30 ms late, counts
// only as long as the system provides none.
func TestHearingTrustsTheSystem(t *testing.T) {
	h := newHearing(48000)
	var b device.Batch
	for i := range 60 {
		x := played(int64(960*i), 960)
		if i < 10 || i%3 == 0 {
			x.stamped = false
			x.t += 30e6
		}
		h.add(x, &b)
	}
	first, last := b.Sound[0], b.Sound[len(b.Sound)-1]
	if d := last.T - first.T - 0.1*float64(len(b.Sound)-1); math.Abs(d+0.03) > 1e-6 {
		t.Errorf("the times moved by %g s, want -0.03", d)
	}
	for i, s := range b.Sound[3:] {
		if d := s.T - b.Sound[2].T - 0.1*float64(i+1); math.Abs(d) > 1e-6 {
			t.Errorf("stretch %d is %g s off", i+3, d)
		}
	}
}

func TestHearingCountsWhatIsTooLoud(t *testing.T) {
	h := newHearing(48000)
	var b device.Batch
	x := played(0, 6000)
	x.level[5], x.level[6], x.level[7] = math.MaxInt16, math.MinInt16, 32000
	h.add(x, &b)
	if len(b.Sound) != 1 || b.Sound[0].Clipped != 2 {
		t.Errorf("heard %+v, want 2 clipped", b.Sound)
	}
}

func TestEveryStateOfTheMicrophoneIsPutInWords(t *testing.T) {
	for state := microphoneNone; state <= microphoneCut; state++ {
		said, ok := microphoneReport(state, -899)
		if !ok || said.Sensor != sensors.SensorSound || said.Detail.IsZero() && said.Condition != sensors.Available {
			t.Errorf("state %d: %+v", state, said)
		}
	}
	if _, ok := microphoneReport(microphoneOpening, 0); ok {
		t.Error("something is said before anything is known")
	}
}
