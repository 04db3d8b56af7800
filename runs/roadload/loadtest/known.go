package loadtest

import (
	"stillair/runs/measure"
	"stillair/runs/roadload"
)

// Known is what a fit knows beforehand: the right growth of rolling resistance,
// for tests that are about wind, receiver and road.
func Known(windSD float64) roadload.Options {
	o := roadload.DefaultOptions(windSD)
	o.Slope = measure.Value{X: growth}
	return o
}

// KnownSmooth is Known, and in addition that the road is smooth: there is no
// profile to look for.
func KnownSmooth(windSD float64) roadload.Options {
	o := Known(windSD)
	o.Noise.RoadSD = 0
	return o
}
