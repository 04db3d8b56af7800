package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// everything is a plan with every kind of run, and with engine braking and
// riding in town, which are not runs.
func everything(townMinutes float64) []sim.Act {
	plan := sim.Launches(2, 120*units.KMH, 420)
	plan = append(plan, sim.RollOns(2, 0, 60*units.KMH, 125*units.KMH)...)
	plan = append(plan, sim.Pulls(1, 4)...)
	plan = append(plan, sim.CoastPairs(2, 110*units.KMH, 30*units.KMH)...)
	plan = append(plan, sim.Reach{Speed: 30}, sim.EngineBrake{To: 8})
	plan = append(plan, sim.Reach{Speed: 30}, sim.Brake{Decel: 6}, sim.Stand{Seconds: 5})
	return append(plan, sim.Town{Minutes: townMinutes})
}

// TestEveryRunIsFound: on three invented bikes with fixes once a second, motion
// at 100 Hz and a phone at any attitude, every launch, roll-on, pull,
// coast-down and stop is found, and nothing else.
func TestEveryRunIsFound(t *testing.T) {
	t.Parallel()
	town := 40.0
	if testing.Short() {
		town = 8
	}
	bikes := sim.Bikes()
	each := batch.Size(20, 1)
	parallel(len(bikes)*each, func(i int) {
		sc := sim.DefaultScenario(bikes[i%len(bikes)])
		sc.Plan = everything(town)
		ride, result := rideAndResult(t, sc, uint64(i))
		if ride == nil {
			return
		}
		for _, problem := range compareEvents(ride.Truth, result) {
			t.Errorf("%s, seed %d: %s", sc.Bike.Name, i, problem)
		}
	})
}
