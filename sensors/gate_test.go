package sensors

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestClockGuard plays a live recording of a minute, 50 readings and a fix a second,
// with several kinds of wrong stamps: every sample passes except those with a wild
// stamp, in the order and at the pace at which they were measured.
func TestClockGuard(t *testing.T) {
	for _, tt := range []struct {
		name    string
		motion  func(i int, at float64) float64 // stamp of a reading
		fix     func(at float64) float64        // of a fix; nil: as the motion
		present func(at float64) float64        // of the program; nil: not known
		wild    int
		steps   int
	}{
		{name: "nothing wrong", motion: func(_ int, at float64) float64 { return at }},
		{name: "an hour ahead, once", motion: func(i int, at float64) float64 { return at + when(i == 1000, 3600) }, wild: 1},
		{name: "two hours ahead, three times", motion: func(i int, at float64) float64 { return at + when(i%900 == 899, 7200) }, wild: 3},
		{name: "five seconds ahead, once", motion: func(i int, at float64) float64 { return at + when(i == 1000, 5) }, wild: 1},
		{name: "an hour back, once", motion: func(i int, at float64) float64 { return at - when(i == 1000, 3600) }, wild: 1},
		{name: "two wild ones on end", motion: func(i int, at float64) float64 { return at + when(i == 1000 || i == 1001, 7200) },
			present: func(at float64) float64 { return at }, wild: 2},
		{name: "the clock is set back", motion: func(_ int, at float64) float64 { return at - when(at >= 20, 5000) }, steps: 1},
		{name: "back, and forward again", motion: func(_ int, at float64) float64 { return at - when(at >= 20 && at < 40, 5000) }, steps: 1},
		{name: "back by a minute, twice", motion: func(_ int, at float64) float64 { return at - when(at >= 20, 60) - when(at >= 40, 60) }, steps: 2},
		{name: "only the motion's clock is set forward", motion: func(_ int, at float64) float64 { return at + when(at >= 20, 3600) },
			fix: func(at float64) float64 { return at }, present: func(at float64) float64 { return at }, steps: 1},
		{name: "all is set back, the present too", motion: func(_ int, at float64) float64 { return at - when(at >= 20, 5000) },
			present: func(at float64) float64 { return at - when(at >= 20, 5000) }, steps: 1},
	} {
		t.Run(tt.name, func(t *testing.T) {
			all := NewCollector()
			o := NewInOrder(all)
			if tt.fix == nil {
				tt.fix = func(at float64) float64 { return tt.motion(-1, at) }
			}
			for i := range 3000 {
				at := float64(i) / 50
				if tt.present != nil && i%5 == 4 {
					o.Present(tt.present(at))
				}
				o.Motion(Motion{T: tt.motion(i, at)})
				if i%50 == 25 {
					o.Fix(NewFix(tt.fix(at), at))
				}
			}
			log := all.Log()
			if len(log.Motion) != 3000-tt.wild || len(log.Fixes) != 60 || o.Lost() != tt.wild || o.Steps != tt.steps {
				t.Errorf("%d readings, %d fixes; %d lost, want %d; %d steps, want %d",
					len(log.Motion), len(log.Fixes), o.Lost(), tt.wild, o.Steps, tt.steps)
			}
			for i := 1; i < len(log.Motion); i++ {
				if dt := log.Motion[i].T - log.Motion[i-1].T; math.Abs(dt-0.02) > 1e-6 && math.Abs(dt-0.04) > 1e-6 && math.Abs(dt-0.06) > 1e-6 {
					t.Fatalf("%.3f s between two readings at %.3f s", dt, log.Motion[i].T)
				}
			}
			for _, f := range log.Fixes {
				if math.Abs(f.T-f.Speed) > 0.1 {
					t.Fatalf("a fix measured at %.2f s is at %.2f s", f.Speed, f.T)
				}
			}
			o.TellLost(60)
			lost, stepped := 0.0, 0
			for _, s := range log.States {
				if n, ok := s.Detail.Arg("samples"); ok && s.Detail.Code == codeLost {
					lost += n.X
				}
				if s.Detail.Code == codeClockStep {
					stepped++
				}
			}
			if n := len(log.ClockNotes()); n < tt.steps || tt.wild > 0 && n == 0 {
				t.Errorf("%d notes", n)
			}
			if int(lost) != tt.wild || stepped < tt.steps {
				t.Errorf("the log tells of %g lost samples and %d steps", lost, stepped)
			}
		})
	}
}

func when(yes bool, by float64) float64 {
	if yes {
		return by
	}
	return 0
}

// TestClockGuardAgainstAnything draws stamps at random: what passes is in order.
func TestClockGuardAgainstAnything(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 100 {
		all := NewCollector()
		o := NewInOrder(all)
		given, at := 0, 0.0
		for range 500 {
			at += math.Pow(10, 3*rng.Float64()-3) * when(rng.Float64() < 0.98, 1)
			if rng.IntN(60) == 0 {
				at += 1e4 * rng.NormFloat64()
			}
			if rng.IntN(10) == 0 {
				o.Present(at)
			}
			o.Motion(Motion{T: at + 10*when(rng.IntN(40) == 0, rng.NormFloat64())})
			o.Pressure(Pressure{T: at, Pa: 1e5})
			given++
		}
		for i, m := range all.Log().Motion {
			if i > 0 && !(m.T > all.Log().Motion[i-1].T) {
				t.Fatalf("reading %d is not later than the one before", i)
			}
		}
		if n := len(all.Log().Motion); n > given {
			t.Fatalf("%d of %d readings", n, given)
		}
	}
}

// TestTheLastIsCounted: a wild sample at the end, for which no other follows, is
// counted.
func TestTheLastIsCounted(t *testing.T) {
	all := NewCollector()
	o := NewInOrder(all)
	for i := range 100 {
		o.Motion(Motion{T: float64(i) / 50})
	}
	o.Motion(Motion{T: 3600})
	o.Fix(NewFix(1, 0))
	o.Fix(NewFix(-100, 0))
	o.End(2)
	if o.Lost() != 2 || o.Wild != 1 || o.Late != 1 || len(all.Log().ClockNotes()) != 1 {
		t.Errorf("%d lost, %d wild, %d late, notes %v", o.Lost(), o.Wild, o.Late, all.Log().ClockNotes())
	}
}
