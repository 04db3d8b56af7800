package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestCoastDownsWithHoles: gaps of 0.05 to 1 s in the motion lose no coast-down,
// and the drag area stays within five standard errors. Nothing was tuned on these
// seeds.
func TestCoastDownsWithHoles(t *testing.T) {
	t.Parallel()
	parallel(batch.Size(20, 2), func(i int) {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Plan = sim.CoastPairs(2, 110*units.KMH, 40*units.KMH)
		whole, _ := rideAndResult(t, sc, fresh+uint64(i))
		if whole == nil {
			return
		}
		log := *whole.Log
		log.Motion = nil
		for _, m := range whole.Log.Motion {
			if !inHole(whole.Truth, m.T, i) {
				log.Motion = append(log.Motion, m)
			}
		}
		result, err := Analyse(t.Context(), &log, Options{})
		if err != nil || len(log.Motion) == len(whole.Log.Motion) {
			t.Errorf("seed %d: nothing was cut, or %v", i, err)
			return
		}
		n := 0
		for _, r := range result.Runs {
			if r.Kind == CoastDown && r.Accepted() {
				n++
			}
		}
		if n != 4 || len(result.RoadLoads) != 1 {
			t.Errorf("seed %d: %d of 4 coast-downs and %d road loads", i, n, len(result.RoadLoads))
			return
		}
		if c := result.RoadLoads[0].CdA; (c.X-sc.Bike.CdA)/c.SE > 5 || (c.X-sc.Bike.CdA)/c.SE < -5 {
			t.Errorf("seed %d: CdA %v, true %v", i, c, sc.Bike.CdA)
		}
	})
}

// inHole reports whether a time is in the gap of a coast-down; the gaps have
// different lengths.
func inHole(truth *sim.Truth, at float64, seed int) bool {
	for _, d := range truth.Of(sim.KindCoastDown) {
		from, length := d.Start+9, 0.05+0.95*float64(d.Pair+seed%3)/5
		if at > from && at < from+length {
			return true
		}
	}
	return false
}
