package runs

import (
	"context"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestLaunchesOfAScooter: launches of a scooter of 9 kW, which nothing was tuned
// on, are found and count, though a strong bike rides off like that in town.
func TestLaunchesOfAScooter(t *testing.T) {
	rides, launches, counted := 12, 0, 0
	if testing.Short() {
		rides = 4
	}
	for seed := range rides {
		sc := sim.DefaultScenario(sim.Scooter())
		sc.Plan = sim.Launches(4, 75*units.KMH, 0)
		ride, err := sim.Run(sc, 9300+uint64(seed))
		if err != nil {
			t.Fatal(err)
		}
		res, err := Analyse(context.Background(), ride.Log, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range ride.Truth.Of(sim.KindLaunch) {
			launches++
			for _, r := range res.Runs {
				if r.Kind == Launch && r.Start < d.End && r.End > d.Start {
					if r.Accepted() {
						counted++
					} else {
						t.Logf("seed %d: %v", seed, r.Reasons)
					}
				}
			}
		}
	}
	if counted < launches*97/100 {
		t.Errorf("%d of %d launches count", counted, launches)
	}
}
