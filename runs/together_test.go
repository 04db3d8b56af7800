package runs

import (
	"math"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// twoDays simulates one rough road on two days, the second with more drag, and
// returns both results.
func twoDays(t *testing.T, seed uint64) []Named {
	t.Helper()
	var out []Named
	for day, cda := range []float64{0.55, 0.60} {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Bike.CdA = cda
		sc.Entered.MassSD = 0.3
		sc.Baro.Rate = 0 // so that the common road matters
		sc.Road.RoughSD, sc.Road.Seed = 0.002, 1000+seed
		sc.Plan = sim.CoastPairs(4, 110*units.KMH, 30*units.KMH)
		ride, result := rideAndResult(t, sc, 2*seed+uint64(day))
		if ride == nil {
			t.FailNow()
		}
		out = append(out, Named{Name: []string{"May", "June"}[day], Result: result})
	}
	return out
}

// checkLimitsBetween checks that the causes of a difference add up to no more than
// its standard error allows, that the road and the assumptions, which are common
// to both rides, contribute less to the difference than to two separate rides, and
// that assumptions are among the causes of a road load.
func checkLimitsBetween(t *testing.T, e *common, rides []Named) {
	t.Helper()
	cost := func(all []Limit, cause Cause) float64 {
		for _, l := range all {
			if l.Cause == cause {
				return l.SE
			}
		}
		return math.NaN()
	}
	together := e.bounds.limitsBetween(e.est, e.opts, 0, 1)
	apart := limitsApart(rides[0].Result.RoadLoads[0], rides[1].Result.RoadLoads[0])
	for _, cause := range []Cause{ByRoad, ByAssumed} {
		if !(cost(together, cause) < cost(apart, cause)) {
			t.Errorf("%s costs %.4f m² together, %.4f apart", cause, cost(together, cause), cost(apart, cause))
		}
	}
	one := rides[0].Result.RoadLoads[0]
	held := math.Hypot(cost(one.Limits, ByAssumed), math.Hypot(cost(one.Limits, ByMass), cost(one.Limits, ByAir)))
	if !(math.Abs(held/one.CdAAssumed-1) < 1e-3) {
		t.Errorf("assumptions, mass and air cost %.5f m², %.5f in the road load", held, one.CdAAssumed)
	}
	for i, l := range together {
		if math.IsNaN(l.SE) || l.SE < 0 || i > 0 && l.SE > together[i-1].SE {
			t.Errorf("limits are %v", together)
		}
	}
}

// TestTogether checks that a rough road common to two rides contributes less to
// their difference if both are fitted together, and that its standard error is
// correct.
func TestTogether(t *testing.T) {
	if !testing.Short() {
		t.Parallel()
	}
	n := batch.Size(40, 2)
	joint, alone := make([]float64, n), make([]float64, n)
	z := make([]float64, n)
	parallel(n, func(i int) {
		rides := twoDays(t, uint64(i))
		e := together(rides)
		if len(rides[0].Result.RoadLoads) == 0 || len(rides[1].Result.RoadLoads) == 0 {
			t.Errorf("seed %d: a ride has no road load", i)
			return
		}
		plain := independent(rides[0].Result.RoadLoads[0], rides[1].Result.RoadLoads[0])
		alone[i] = plain.CdA.SE
		joint[i], z[i] = plain.CdA.SE, (plain.CdA.X-0.05)/plain.CdA.SE
		if e != nil {
			d := e.est.Between(0, 1)
			checkLimitsBetween(t, e, rides)
			joint[i], z[i] = d.CdA.SE, (d.CdA.X-0.05)/d.CdA.SE
		}
	})
	var ratio, spread float64
	for i := range n {
		ratio += joint[i] / alone[i] / float64(n)
		spread += z[i] * z[i] / float64(n)
	}
	t.Logf("standard error together is %.2f of that alone; errors over it have rms %.2f", ratio, math.Sqrt(spread))
	if ratio > 0.95 {
		t.Errorf("together is no better than alone: %.2f", ratio)
	}
	if !testing.Short() && (math.Sqrt(spread) > 1.3 || math.Sqrt(spread) < 0.7) {
		t.Errorf("errors over standard errors have rms %.2f", math.Sqrt(spread))
	}
}
