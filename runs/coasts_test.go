package runs

import (
	"math"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestRoadLoadFromLog follows five opposite pairs of coast-downs from 110 to 30
// km/h, in a wind of 1.5 m/s that changes from pair to pair and gusts, from the
// log to drag area and rolling resistance. The mass is entered as exact:
// otherwise the intervals would be wider than the simulated rides, which have
// exactly the entered mass, can fill.
func TestRoadLoadFromLog(t *testing.T) {
	t.Parallel()
	loads := newLoadErrors()
	parallel(batch.Size(200, 6), func(i int) {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Entered.MassSD = 0.3
		sc.Plan = sim.CoastPairs(5, 110*units.KMH, 30*units.KMH)
		loads.ride(t, sc, uint64(i))
	})
	loads.hold(t, loadLimit{"CdA", 0.005, 0.016}, loadLimit{"Crr", 0.015, 0.027})
	loads.cover(t, 0.92, 0.98)
}

// TestRoughRoadFromLog: the same on a road whose slope varies by 0.2 % over 150
// m, by a phone without a barometer. Every pair begins 200 m farther along than
// the one before it, out and back, and the spread stays within 1.4 times the
// bound for a smooth road, 1.42 % of CdA.
func TestRoughRoadFromLog(t *testing.T) {
	t.Parallel()
	all := newLoadErrors()
	for _, bike := range sim.Bikes() {
		t.Run(bike.Name, func(t *testing.T) {
			loads := loadErrors{newErrors(), all.covered}
			parallel(batch.Size(60, 2), func(i int) {
				sc := sim.DefaultScenario(bike)
				sc.Entered.MassSD = 0.3
				sc.Road.RoughSD, sc.Baro.Rate = 0.002, 0
				sc.Plan = sim.FartherPairs(5, 110*units.KMH, 30*units.KMH, 200)
				loads.ride(t, sc, uint64(i))
			})
			loads.hold(t, loadLimit{"CdA", 0.006, 1.4 * 0.0142}, loadLimit{"Crr", 0.02, 0.045})
		})
	}
	all.cover(t, 0.92, 0.99) // the intervals include air and growth of rolling resistance, whose entered values are exact here
}

// loadErrors collects relative errors of road loads, and how often the 95 %
// intervals held.
type loadErrors struct {
	errs, covered *errorsOf // covered: 1 where the interval holds the truth
}

func newLoadErrors() loadErrors { return loadErrors{newErrors(), newErrors()} }

// ride adds the result of a ride with one setup.
func (e loadErrors) ride(t *testing.T, sc sim.Scenario, seed uint64) {
	ride, result := rideAndResult(t, sc, seed)
	if ride == nil {
		return
	}
	if len(result.RoadLoads) != 1 {
		t.Errorf("seed %d: %d road loads, %q", seed, len(result.RoadLoads), result.Warnings)
		return
	}
	l := result.Estimate.Loads[0] // the intervals from noise: the assumptions hold in these rides
	for _, x := range []struct {
		name  string
		got   Value
		ci    [2]float64
		truth float64
	}{{"CdA", l.CdA, l.CdACI, sc.Bike.CdA}, {"Crr", l.Crr, l.CrrCI, sc.Bike.Crr}} {
		e.errs.add(x.name, x.got.Times(1/x.truth), 1)
		held := 0.0
		if x.ci[0] < x.truth && x.truth < x.ci[1] {
			held = 1
		}
		e.covered.add(x.name, Value{X: held, SE: 1}, 0)
	}
}

// loadLimit is the limit for the relative error of a figure.
type loadLimit struct {
	name     string
	bias, sd float64
}

func (e loadErrors) hold(t *testing.T, limits ...loadLimit) {
	t.Helper()
	for _, l := range limits {
		s := e.errs.spread(l.name)
		t.Logf("%s: %v", l.name, s)
		if testing.Short() {
			if s.p95 > 5*l.sd {
				t.Errorf("%s: %v", l.name, s)
			}
			continue
		}
		if math.Abs(s.mean) > l.bias || s.sd > l.sd {
			t.Errorf("%s: %v, want a bias under %v and a sd under %v", l.name, s, l.bias, l.sd)
		}
	}
}

// cover checks how often the 95 % intervals held.
func (e loadErrors) cover(t *testing.T, low, high float64) {
	t.Helper()
	for name := range e.covered.of {
		held := e.covered.spread(name).mean
		t.Logf("%s: the 95 %% interval held %.1f %%", name, 100*held)
		if !testing.Short() && (held < low || held > high) {
			t.Errorf("%s: the 95 %% interval held %.1f %%, want %.0f to %.0f", name, 100*held, 100*low, 100*high)
		}
	}
}
