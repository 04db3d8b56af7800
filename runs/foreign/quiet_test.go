package foreign

import (
	"math"
	"testing"

	"stillair/runs"
)

// TestNothingRidden: rides without a full-throttle push or a free coast-down show no
// such run, in 99 of 100. A start counts as a launch however gently it is ridden: its
// times are true. Accelerations repeated at one share of full throttle cannot be
// distinguished from full throttle by their shape, and are not among these.
func TestNothingRidden(t *testing.T) {
	for _, tt := range []struct {
		name string
		ride func(w *world)
	}{
		{"everyday", everyday},
		{"stop and go", stopAndGo},
		{"country road", countryRoad},
		{"engine braking", engineBrakes},
		{"gear left in", gearLeftIn},
	} {
		t.Run(tt.name, func(t *testing.T) {
			rode, clean := 0, 0
			each(t, many(8), tt.ride, func(seed uint64, w *world, res *runs.Result) {
				rode++
				accepted := len(res.RoadLoads)
				for _, r := range res.Runs {
					if r.Accepted() && r.Kind != runs.Launch {
						accepted++
						t.Logf("seed %d, %.0f kW: %s at %.0f s, %.1f to %.1f m/s", seed, w.power/1e3, r.Kind, r.Start-zero, r.FromMPS, r.ToMPS)
					}
				}
				for _, l := range res.RoadLoads {
					t.Logf("seed %d, %.0f kW: CdA %.3f and Crr %.4f", seed, w.power/1e3, l.CdA.X, l.Crr.X)
				}
				if accepted == 0 {
					clean++
				}
			})
			t.Logf("%d of %d rides without a run", clean, rode)
			if most := 0.01 * float64(rode); float64(rode-clean) > most+1+math.Sqrt(most) {
				t.Errorf("%d of %d rides without a run", clean, rode)
			}
		})
	}
}

// engineBrakes accelerates through the gears and closes the throttle in gear.
func engineBrakes(w *world) {
	for range 8 {
		w.gear = 0
		w.accelerate(w.between(0.3, 0.6), 0.65*w.top())
		w.hold(w.v, w.between(1, 5))
		w.letGo(len(w.gears)-1-w.rng.IntN(2), 0.25*w.top())
		w.stopAndTurn(2)
	}
}

// gearLeftIn rides coast-downs without pulling the clutch.
func gearLeftIn(w *world) {
	w.inGear = true
	for range 8 {
		w.gear = 0
		w.roll(math.Min(0.7*w.top(), 31), w.between(6, 9))
		w.events[len(w.events)-1].kind = ""
		w.stopAndTurn(2)
	}
}

// stopAndGo is traffic queueing at lights.
func stopAndGo(w *world) {
	for range 30 {
		w.gear = 0
		w.accelerate(w.between(0.1, 0.6), math.Min(w.between(3, 15), 0.6*w.top()))
		if w.rng.IntN(2) == 0 {
			w.hold(w.v, w.between(1, 8))
		}
		if w.rng.IntN(3) == 0 {
			w.until(coasting, w.between(1, 6), func() bool { return w.v < 1.5 })
		}
		w.brake(w.between(0.8, 3), w.between(0, 1)*2)
		if w.v < 1 {
			w.brake(1.5, 0)
			w.stand(w.between(1, 20))
		}
	}
}

// countryRoad is bends and villages at a gentle pace.
func countryRoad(w *world) {
	for range 15 {
		v := math.Min(w.between(14, 27), 0.75*w.top())
		if w.v < v {
			w.gear = w.gearFor(math.Max(w.v, 5))
			w.accelerate(w.between(0.25, 0.6), v)
		} else {
			w.letGo(w.gearFor(w.v), v)
		}
		for range 1 + w.rng.IntN(3) {
			w.hold(v, w.between(3, 15))
			w.yaw = w.between(-0.3, 0.3) * 8 / math.Max(8, w.v)
			w.hold(v*w.between(0.85, 1), w.between(2, 6))
			w.yaw = 0
		}
		if w.rng.IntN(5) == 0 {
			w.brake(w.between(1, 3), 0)
			w.stand(w.between(3, 12))
			w.gear = 0
			w.accelerate(w.between(0.2, 0.6), 10)
		}
	}
}
