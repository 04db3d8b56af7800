package fusion_test

import (
	"fmt"

	"stillair/fusion"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// An invented ride with one launch is smoothed; the time through 100 km/h comes
// with its standard uncertainty.
func ExampleSmooth() {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.Launches(1, 110*units.KMH, 0)
	ride, err := sim.Run(sc, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	track, err := fusion.Smooth(ride.Log, fusion.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	launch := ride.Truth.Of(sim.KindLaunch)[0]
	at, ok := track.TimeAtSpeed(100*units.KMH, fusion.Span{From: launch.Start, To: launch.End})
	speed := track.At(at.T)
	fmt.Println(ok, speed.V > 27.7 && speed.V < 27.8, len(track.T) > 1000)
	// Output: true true true
}
