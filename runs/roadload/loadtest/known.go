package loadtest

import (
	"stillair/runs/measure"
	"stillair/runs/roadload"
)

// Known returns options with the true growth of rolling resistance, for tests
// that are about wind, receiver and road.
func Known(windSD float64) roadload.Options {
	o := roadload.DefaultOptions(windSD)
	o.Slope = measure.Value{X: growth}
	return o
}

// KnownSmooth is Known for a smooth road, without a profile to fit.
func KnownSmooth(windSD float64) roadload.Options {
	o := Known(windSD)
	o.Noise.RoadSD = 0
	return o
}
