package runs_test

import (
	"context"
	"fmt"

	"stillair/runs"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// From a log to results: an invented ride with coast-downs both ways is
// analysed like any recording.
func ExampleAnalyse() {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.CoastPairs(3, 110*units.KMH, 30*units.KMH)
	ride, err := sim.Run(sc, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	result, err := runs.Analyse(context.Background(), ride.Log, runs.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	load := result.RoadLoads[0]
	truth := sc.Bike.CdA
	fmt.Println(load.Pairs, "pairs; truth within the 95 % interval:", load.CdACI[0] < truth && truth < load.CdACI[1])
	// Output: 3 pairs; truth within the 95 % interval: true
}
