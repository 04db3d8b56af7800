package runs

import (
	"math"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestRoadLoadFromLog follows five opposite pairs of coast-downs from 110 to
// 30 km/h, in a wind of 1.5 m/s that changes from pair to pair and gusts, from
// the log to drag area and rolling resistance. The mass is told exactly and
// said to be so: it would otherwise widen intervals that the simulated ride,
// which keeps to the told mass, has no reason to fill.
func TestRoadLoadFromLog(t *testing.T) {
	t.Parallel()
	errs := newErrors()
	covered := newErrors() // 1 where the interval holds the truth
	parallel(seeds(200, 6), func(i int) {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Told.MassSD = 0.3
		sc.Plan = sim.CoastPairs(5, 110*units.KMH, 30*units.KMH)
		ride, result := rideAndResult(t, sc, uint64(i))
		if ride == nil {
			return
		}
		if len(result.RoadLoads) != 1 {
			t.Errorf("seed %d: %d road loads, %q", i, len(result.RoadLoads), result.Warnings)
			return
		}
		l := result.RoadLoads[0]
		for _, x := range []struct {
			name  string
			got   Value
			ci    [2]float64
			truth float64
		}{{"CdA", l.CdA, l.CdACI, sc.Bike.CdA}, {"Crr", l.Crr, l.CrrCI, sc.Bike.Crr}} {
			errs.add(x.name, x.got.Times(1/x.truth), 1)
			held := 0.0
			if x.ci[0] < x.truth && x.truth < x.ci[1] {
				held = 1
			}
			covered.add(x.name, Value{X: held, SE: 1}, 0)
		}
	})
	for _, tt := range []struct {
		name     string
		bias, sd float64
	}{{"CdA", 0.005, 0.016}, {"Crr", 0.015, 0.027}} {
		s, held := errs.spread(tt.name), covered.spread(tt.name).mean
		t.Logf("%s: %v; the 95 %% interval held %.1f %%", tt.name, s, 100*held)
		if testing.Short() {
			if s.p95 > 5*tt.sd {
				t.Errorf("%s: %v", tt.name, s)
			}
			continue
		}
		if math.Abs(s.mean) > tt.bias || s.sd > tt.sd {
			t.Errorf("%s: %v, want a bias under %v and a sd under %v", tt.name, s, tt.bias, tt.sd)
		}
		if held < 0.92 || held > 0.98 {
			t.Errorf("%s: the 95 %% interval held %.1f %%, want 92 to 98", tt.name, 100*held)
		}
	}
}
