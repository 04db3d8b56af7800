package runs

import (
	"fmt"
	"math"
	"sort"
	"testing"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// withoutMotion is a recording with fixes only, like NMEA and GPX.
func withoutMotion(sc *sim.Scenario) { sc.Phone.Rate = 0 }

// TestCoastsAlone: coast-downs lose hardly any accuracy without an
// accelerometer. The limits are those of TestRoadLoadFromLog.
func TestCoastsAlone(t *testing.T) {
	t.Parallel()
	loads := newLoadErrors()
	parallel(batch.All(40, 1), func(i int) {
		sc := sim.DefaultScenario(sim.Naked())
		withoutMotion(&sc)
		sc.Entered.MassSD = 0.3
		sc.Plan = sim.CoastPairs(5, 110*units.KMH, 30*units.KMH)
		loads.ride(t, sc, fresh+uint64(i))
	})
	loads.hold(t, loadLimit{"CdA", 0.007, 0.018}, loadLimit{"Crr", 0.015, 0.030})
	loads.cover(t, 0.8, 1)
}

// TestPushesAlone: without an accelerometer pushes and stops are found but
// rejected, with the reason. The times of roll-ons, which rejected runs have
// too, are within their uncertainty.
func TestPushesAlone(t *testing.T) {
	t.Parallel()
	for _, rate := range []float64{1, 10} {
		if testing.Short() && rate > 1 {
			continue
		}
		errs := newErrors()
		parallel(batch.Size(10, 1), func(i int) {
			sc := sim.DefaultScenario(sim.Naked())
			withoutMotion(&sc)
			sc.Receiver.Rate = rate
			sc.Plan = append(sim.Launches(2, 110*units.KMH, 300), sim.RollOns(2, 0, 60*units.KMH, 125*units.KMH)...)
			ride, result := rideAndResult(t, sc, fresh+uint64(i))
			if ride == nil {
				return
			}
			for _, r := range result.Runs {
				if r.Kind != CoastDown && (r.Accepted() || !finding.Any(r.Reasons, "run.satellites_alone")) {
					t.Errorf("seed %d: %s at %.1f s counts: %v", i, r.Kind, r.Start, r.Reasons)
				}
			}
			errs.addRollOns(ride.Truth, result)
		})
		s := errs.spread("80-120 km/h")
		t.Logf("%.0f Hz fixes: %v", rate, s)
		if s.coveredLess(0.92) {
			t.Errorf("%.0f Hz fixes: %v", rate, s)
		}
	}
}

// straight is the speed on straight lines between the fixes.
func straight(fixes []sensors.Fix, t float64) float64 {
	i := sort.Search(len(fixes), func(i int) bool { return fixes[i].T >= t })
	i = max(1, min(i, len(fixes)-1))
	a, b := fixes[i-1], fixes[i]
	return a.Speed + (b.Speed-a.Speed)*math.Max(0, math.Min(1, (t-a.T)/(b.T-a.T)))
}

// TestTrackAlone compares speeds without an accelerometer with the truth, at
// every rate of fixes: no worse than straight lines between the fixes, and with
// bands that hold. A fiftieth is allowed for the cost of smoothing.
func TestTrackAlone(t *testing.T) {
	for _, rate := range []float64{10, 5, 1, 0.5, 0.33, 0.2, 0.1} {
		t.Run(fmt.Sprintf("%g Hz", rate), func(t *testing.T) {
			sc := sim.DefaultScenario(sim.Naked())
			withoutMotion(&sc)
			sc.Receiver.Rate = rate
			sc.Plan = append(sim.Launches(2, 110*units.KMH, 300), sim.Town{Minutes: 3})
			ride, err := sim.Run(sc, 5)
			if err != nil {
				t.Fatal(err)
			}
			tr, err := fusion.Smooth(ride.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			var e2, z2, n, in, drawn float64
			for i := 0; i < len(tr.T); i += 3 {
				e := tr.V[i] - ride.Truth.V(tr.T[i])
				e2, n = e2+e*e, n+1
				l := straight(ride.Log.Fixes, tr.T[i]+ride.Truth.Lag) - ride.Truth.V(tr.T[i])
				drawn += l * l
				z2 += e * e / (tr.VSD[i] * tr.VSD[i])
				if math.Abs(e) < 1.96*tr.VSD[i] {
					in++
				}
			}
			t.Logf("%.3f m/s rms, straight lines %.3f, %.2f of what is said, 95 %% bands hold %.1f %%", math.Sqrt(e2/n), math.Sqrt(drawn/n), math.Sqrt(z2/n), 100*in/n)
			if e2 > 1.02*1.02*drawn || in < 0.85*n {
				t.Errorf("worse than straight lines, or bands that do not hold")
			}
		})
	}
}
