package device

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestArrivalTakesTheWaitOut plays reports whose delivery is delayed by
// redraws, on clocks that drift by 50 µs a second.
func TestArrivalTakesTheWaitOut(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var a Arrival
	var raw, corrected Spread
	for i := range 3600 {
		true_ := float64(i)
		stamp := 1.7e9 + true_*(1+50e-6)
		handed := true_ + rng.ExpFloat64()*0.04
		at := a.At(stamp, handed)
		if i >= window {
			raw.Add(math.Abs(handed - true_))
			corrected.Add(math.Abs(at - true_))
		}
		if at > handed {
			t.Fatalf("arrived %g s after it was handed over", at-handed)
		}
	}
	if raw.Mean() < 0.035 || corrected.Mean() > 0.004 || corrected.Most() > 0.02 {
		t.Errorf("mean error %.4f s (raw %.4f), largest %.4f s", corrected.Mean(), raw.Mean(), corrected.Most())
	}
	if w := a.Waits(); math.Abs(w.Mean()-0.04) > 0.005 {
		t.Errorf("mean wait %.4f s, want 0.04 s", w.Mean())
	}
}

func TestArrivalBearsAClockThatSteps(t *testing.T) {
	for _, c := range []struct {
		name string
		step float64 // s, of the wall clock
	}{
		{"an hour back", -3600}, {"an hour on", 3600}, {"two seconds back", -2}, {"two seconds on", 2},
		{"half a second on", 0.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			var a Arrival
			for i := range 100 {
				stamp := 1.7e9 + float64(i)
				if i >= 50 {
					stamp += c.step
				}
				if at := a.At(stamp, float64(i)); math.Abs(at-float64(i)) > 1e-6 {
					t.Fatalf("report %d: arrival %g", i, at)
				}
			}
		})
	}
}

// TestArrivalFindsASmallStepBack: a step of half a second back looks like a
// delay at first, and is recognised after a few reports.
func TestArrivalFindsASmallStepBack(t *testing.T) {
	var a Arrival
	for i := range 100 {
		stamp := 1.7e9 + float64(i)
		if i >= 50 {
			stamp -= 0.5
		}
		at := a.At(stamp, float64(i))
		if off := math.Abs(at - float64(i)); off > 0.5+1e-6 || (off > 1e-6 && (i < 50 || i >= 50+inARow)) {
			t.Fatalf("report %d: arrival %g", i, at)
		}
	}
}

func TestArrivalWithoutAStamp(t *testing.T) {
	var a Arrival
	if at := a.At(math.NaN(), 12.5); at != 12.5 {
		t.Errorf("arrival %g, want when it was handed over", at)
	}
	if !math.IsNaN(a.Offset()) {
		t.Errorf("offset %g without a stamp", a.Offset())
	}
}
