package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestEveryBikeAndPhone: the intervals of launches have their nominal coverage
// on all bikes and phones, including the sport bike, whose engine is held at 5
// 940 1/min while the clutch slips: 99 turns a second, which alias to 1 Hz, and
// the tourer, which changes gear at 84 and 120 km/h. With worse data the ± is
// larger: the limits are on coverage, and on errors where these have been
// achieved. Nothing was tuned on the seeds from fresh on.
func TestEveryBikeAndPhone(t *testing.T) {
	t.Parallel()
	phones := []struct {
		name  string
		phone sim.Phone
	}{{"100 Hz", sim.DefaultPhone()}, {"a browser's 60 Hz", sim.BrowserPhone()}, {"harsh vibration", sim.HarshPhone()}}
	within := map[string]float64{ // s, for 95 % of 0-100 km/h from first movement
		"invented sport, 100 Hz":             0.120,
		"invented tourer, a browser's 60 Hz": 0.085,
		"invented naked, a browser's 60 Hz":  0.095,
	}
	// At 60 Hz all orders of the tourer's engine alias to zero at 7 200 1/min, a
	// third of a second before it changes gear at 120.5 km/h. At 18 m/s² of
	// vibration its orders at 6 000 1/min, 98 km/h, do the same, and those of the
	// sport bike at 12 000, 111 km/h. There the errors are larger than stated.
	poor := map[string]float64{
		"invented tourer, a browser's 60 Hz, 80-120 km/h":                  0.80,
		"invented tourer, harsh vibration, 0-100 km/h from first movement": 0.88,
		"invented tourer, harsh vibration, 0-100 km/h from the rollout":    0.88,
		"invented sport, harsh vibration, 80-120 km/h":                     0.88,
	}
	for _, bike := range sim.Bikes() {
		for _, p := range phones {
			if testing.Short() && bike.Name != "invented sport" {
				continue
			}
			name := bike.Name + ", " + p.name
			errs := launchErrorsFrom(t, fresh, batch.All(60, 1), func(sc *sim.Scenario) {
				plan := sc.Plan
				*sc = sim.DefaultScenario(bike)
				sc.Plan, sc.Phone = plan, p.phone
				if bike.Name != "invented naked" {
					sc.Plan = sim.Launches(4, 125*units.KMH, 450)
				}
			})
			for _, mark := range []string{"0-100 km/h from first movement", "0-100 km/h from the rollout", "80-120 km/h"} {
				s := errs.spread(mark)
				t.Logf("%s, %s: %v", name, mark, s)
				if testing.Short() {
					continue
				}
				holds, known := poor[name+", "+mark]
				if !known {
					holds = 0.92
				}
				if s.n < 220 || s.coveredLess(holds) {
					t.Errorf("%s, %s: %v, want 95 %% intervals that hold %.0f %%", name, mark, s, 100*holds)
				}
				if limit, ok := within[name]; ok && mark == "0-100 km/h from first movement" && s.p95 > limit {
					t.Errorf("%s, %s: %v, want 95 %% within %v s", name, mark, s, limit)
				}
			}
		}
	}
}

// fresh is the first of the seeds that are reserved for validation.
const fresh = 9000
