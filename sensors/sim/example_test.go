package sim_test

import (
	"fmt"

	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// A ride with one launch on a harshly shaken phone and a faster receiver; the
// truth says what a stopwatch without error would have read.
func ExampleRun() {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Phone = sim.HarshPhone()
	sc.Receiver.Rate = 10
	sc.Wind.SD = 0
	sc.Plan = sim.Launches(1, 110*units.KMH, 0)
	ride, err := sim.Run(sc, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	launch := ride.Truth.Of(sim.KindLaunch)[0]
	for _, m := range ride.Truth.Marks(launch) {
		if m.Name == "0-100 km/h" {
			fmt.Printf("%s: %.1f s, %.1f s from the rollout\n", m.Name, m.Time, m.Rollout)
		}
	}
	// Output: 0-100 km/h: 4.5 s, 4.1 s from the rollout
}
