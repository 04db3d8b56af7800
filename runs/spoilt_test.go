package runs

import (
	"math"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestOneSpoiltRun: with one of ten coast-downs spoilt by the brake, a truck or
// a gear, that run is named, and the result agrees with that without the
// disturbance within half a standard error (root mean square).
func TestOneSpoiltRun(t *testing.T) {
	t.Parallel()
	spoils := []struct {
		name  string
		spoil sim.Spoil
		named bool // the effect of a truck may be no larger than that of gusts
	}{
		{"brake", sim.Spoil{Kind: sim.Brush, AtSpeed: 70 * units.KMH, Seconds: 1.5, Size: 250}, true},
		{"truck", sim.Spoil{Kind: sim.Truck, AtSpeed: 80 * units.KMH, Seconds: 4, Size: 8}, false},
		{"gear", sim.Spoil{Kind: sim.GearIn, AtSpeed: 110 * units.KMH, Seconds: 60}, true},
	}
	each := batch.Size(10, 1)
	moves := make([][]float64, len(spoils))
	for k := range moves {
		moves[k] = make([]float64, each)
	}
	parallel(len(spoils)*each, func(i int) {
		k, seed := i%len(spoils), i/len(spoils)
		sc := sim.DefaultScenario(sim.Naked())
		sc.Plan = sim.CoastPairs(5, 110*units.KMH, 30*units.KMH)
		_, clean := rideAndResult(t, sc, uint64(seed))
		pair := sc.Plan[2].(sim.CoastPair)
		pair.Spoils[0] = []sim.Spoil{spoils[k].spoil}
		sc.Plan[2] = pair
		ride, result := rideAndResult(t, sc, uint64(seed))
		if clean == nil || ride == nil {
			return
		}
		if len(clean.RoadLoads) != 1 || len(result.RoadLoads) != 1 {
			t.Errorf("%s, seed %d: no road load: %q", spoils[k].name, seed, result.Warnings)
			return
		}
		a, b := clean.RoadLoads[0].CdA, result.RoadLoads[0].CdA
		moves[k][seed] = math.Abs(a.X-b.X) / a.SE
		if spoils[k].named && !named(ride.Truth, result) {
			t.Errorf("%s, seed %d: the spoilt run is not named", spoils[k].name, seed)
		}
	})
	for k, s := range spoils {
		sum := 0.0
		for _, m := range moves[k] {
			sum += m * m / float64(each)
		}
		t.Logf("%s: CdA moved by %.2f standard errors (rms)", s.name, math.Sqrt(sum))
		if limit := 0.5; math.Sqrt(sum) > limit && !testing.Short() {
			t.Errorf("%s: CdA moved by %.2f standard errors (rms): %v", s.name, math.Sqrt(sum), moves[k])
		}
	}
}

// named reports whether every spoilt coast-down has a reason or a caution.
func named(truth *sim.Truth, result *Result) bool {
	for _, d := range truth.Of(sim.KindCoastDown) {
		if len(d.Spoilt) == 0 {
			continue
		}
		said := false
		for _, r := range result.Runs {
			if r.Kind == CoastDown && r.Start < d.End && r.End > d.Start && len(r.Reasons)+len(r.Cautions) > 0 {
				said = true
			}
		}
		if !said {
			return false
		}
	}
	return true
}
