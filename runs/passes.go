package runs

import (
	"math"

	"stillair/fusion"
	"stillair/runs/pass"
	"stillair/sensors"
)

// Pass is one road ridden in both directions at a steady speed, with the mean of both.
type Pass = pass.Pass

// findPasses finds the flying passes of a ride.
func (result *Result) findPasses(log *sensors.Log, scaleSE float64) {
	of := map[Kind][]fusion.Span{}
	for _, r := range result.Runs {
		if r.Accepted() {
			of[r.Kind] = append(of[r.Kind], fusion.Span{From: r.Start, To: r.End})
		}
	}
	result.Passes = pass.Find(pass.Ride{Track: result.Track, Errors: result.Track, Stops: of[Stop], Coasts: of[CoastDown], ScaleSE: scaleSE,
		Fixes: func(from, to float64) []sensors.Fix { return fixesWithin(log, result.Track, from, to) },
		Setup: func(t float64) string { return log.Ride.SetupAt(t).Name }, Fade: result.fade})
}

// fade is the shortest distance over which a bike at full throttle approaches
// its top speed by a factor of e, m.
func (result *Result) fade(setup string) float64 {
	const far = 2 // standard deviations
	for _, l := range result.RoadLoads {
		if l.Setup == setup {
			return pass.Fade(l.Mass, l.CdA.X+far*l.CdA.SE, l.Density)
		}
	}
	mass := result.Ride.Mass
	for _, s := range result.Ride.Setups {
		if s.Name == setup {
			mass = s.Mass
		}
	}
	return pass.Fade(mass-far*result.Ride.MassSD, math.NaN(), result.Air.Density().X)
}
