package runs

import (
	"context"
	"fmt"
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestSpeedScale: speeds with a wrong scale, by a conversion or a wrong unit, are
// corrected by the positions, with a warning if needed: the truth stays within the
// bands.
func TestSpeedScale(t *testing.T) {
	t.Parallel()
	factors := []float64{0.9, 0.95, 0.98, 1, 1.02, 1.05, 1.1, 3.6, 1 / units.MPH, 3600.0 / 1852, 1 / units.Foot}
	if testing.Short() {
		factors = []float64{0.95, 3.6}
	}
	errs, loads := newErrors(), newLoadErrors()
	parallel(len(factors), func(i int) {
		factor := factors[i%len(factors)]
		sc := sim.DefaultScenario(sim.Bikes()[i%len(sim.Bikes())])
		sc.Entered.MassSD = 0.3
		sc.Plan = append(sim.Launches(2, 105*units.KMH, 300), sim.CoastPairs(2, 105*units.KMH, 40*units.KMH)...)
		ride, err := sim.Run(sc, fresh+uint64(i))
		if err != nil {
			t.Error(err)
			return
		}
		for k := range ride.Log.Fixes {
			ride.Log.Fixes[k].Speed *= factor
		}
		result, err := Analyse(context.Background(), ride.Log, Options{})
		if err != nil {
			t.Errorf("× %.3f: %v", factor, err)
			return
		}
		for _, d := range ride.Truth.Of(sim.KindLaunch) {
			if run, ok := launchAt(result, d.Start); ok && run.Accepted() {
				addMarks(errs, ride.Truth, d, run)
			} else {
				t.Errorf("× %.3f: the launch at %.1f s is not there", factor, d.Start)
			}
		}
		if len(result.RoadLoads) != 1 {
			t.Errorf("× %.3f: no road load, %q", factor, result.Warnings)
			return
		}
		l := result.RoadLoads[0]
		held := 0.0
		if l.CdACI[0] < sc.Bike.CdA && sc.Bike.CdA < l.CdACI[1] {
			held = 1
		}
		loads.covered.add("CdA", Value{X: held, SE: 1}, 0)
		loads.errs.add(fmt.Sprintf("CdA × %.3f", factor), l.CdA.Times(1/sc.Bike.CdA), 1)
	})
	for name, v := range loads.errs.of {
		t.Logf("%s: %+v", name, v)
	}
	held := loads.covered.spread("CdA")
	t.Logf("the band of CdA held in %.0f %% of %d", 100*held.mean, held.n)
	if held.mean < 0.85 {
		t.Errorf("the band of CdA held in %.0f %% of %d", 100*held.mean, held.n)
	}
	for _, mark := range []string{"0-60 km/h from the rollout", "0-100 km/h from the rollout"} {
		s := errs.spread(mark)
		t.Logf("%s: %v", mark, s)
		if s.coveredLess(0.92) {
			t.Errorf("%s: %v", mark, s)
		}
	}
}

// TestScaleOfPositions: the simulator's speeds and positions agree, and the
// reported scale is correct.
func TestScaleOfPositions(t *testing.T) {
	var z2, n float64
	for i := range uint64(3) {
		sc := sim.DefaultScenario(sim.Bikes()[i%3])
		sc.Plan = sim.CoastPairs(2, 105*units.KMH, 40*units.KMH)
		ride, err := sim.Run(sc, fresh+i)
		if err != nil {
			t.Fatal(err)
		}
		scale, se, ok := sensors.SpeedScale(ride.Log.Fixes)
		if !ok || math.Abs(scale-1) > 0.01 {
			t.Errorf("seed %d: scale %.4f ± %.4f, %v", i, scale, se, ok)
		}
		z2, n = z2+(scale-1)*(scale-1)/(se*se), n+1
	}
	if z := math.Sqrt(z2 / n); z > 2 {
		t.Errorf("scales err by %.2f times what is said", z)
	}
}
