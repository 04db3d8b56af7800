package runs

import (
	"errors"
	"fmt"
	"math"

	"stillair/fusion"
	"stillair/runs/air"
	"stillair/runs/pairing"
	"stillair/runs/roadload"
	"stillair/sensors"
	"stillair/sensors/units"
)

// fitRoadLoad pairs the coast-downs of a result, fits the road load of every
// setup at once and notes in each run how it took part.
func fitRoadLoad(result *Result, log *sensors.Log, known conditions) {
	coasts, where := coastDowns(result, log)
	if len(coasts) == 0 {
		return
	}
	density := known.air.Density()
	names, input := roadRuns(result, coasts, pairUp(result, coasts, where), where, known.ride, density.X)
	if len(input) == 0 {
		result.Warnings = append(result.Warnings, "no two coast-downs belong together as a pair of opposite runs, so there is no road load: "+
			"ride the same stretch in both directions, one soon after the other")
		return
	}
	opts := roadload.DefaultOptions(known.ride.WindSD)
	opts.MassSD = known.ride.MassSD / known.ride.Mass
	opts.DensitySD = density.SE / density.X
	opts.Gravity = gravityAt(log)
	for i := range input {
		input[i].Height = roadload.Heights(input[i].T, log.Pressure, density.X, opts.Gravity)
	}
	est, err := roadload.Fit(input, opts)
	if err != nil {
		if !errors.Is(err, roadload.ErrNoRuns) {
			result.Warnings = append(result.Warnings, "no road load: "+err.Error())
		}
		return
	}
	result.Estimate = est
	tellRuns(result, est)
	causes := limits(input, est, opts)
	for i, name := range names {
		load := newRoadLoad(result, name, i, est, known.ride, density.X, opts.Gravity)
		if causes != nil {
			load.Limits = causes[i]
		}
		result.RoadLoads = append(result.RoadLoads, load)
	}
}

// coastDowns are the coast-downs with the fixes within them, rejected ones
// too, and where each is in the result.
func coastDowns(result *Result, log *sensors.Log) (coasts []pairing.Coast, where []int) {
	for i, r := range result.Runs {
		if r.Kind != CoastDown {
			continue
		}
		coasts = append(coasts, pairing.Coast{ID: r.ID, Setup: r.Setup, Start: r.Start, End: r.End,
			Fixes: fixesWithin(log, result.Track, r.Start+settling(result.Track.Receiver), r.End)})
		where = append(where, i)
	}
	return coasts, where
}

// pairUp pairs the accepted coast-downs. A rejected one first takes its
// counterpart with it, since the two were ridden as a pair in the same wind;
// those that it leaves alone may then find another.
func pairUp(result *Result, coasts []pairing.Coast, where []int) []pairing.Placed {
	placed := pairing.Pair(coasts)
	last, spoilt := 0, map[int]bool{}
	for i, p := range placed {
		last = max(last, p.Pair)
		if !result.Runs[where[i]].Accepted() {
			spoilt[p.Pair] = true
		}
	}
	var again []pairing.Coast
	var index []int
	for i := range placed {
		if spoilt[placed[i].Pair] {
			placed[i].Pair, placed[i].Why = 0, "the run the other way was rejected"
		}
		if placed[i].Pair == 0 && result.Runs[where[i]].Accepted() {
			again, index = append(again, coasts[i]), append(index, i)
		}
	}
	for k, p := range pairing.Pair(again) {
		if p.Pair > 0 {
			placed[index[k]].Pair = last + p.Pair
		}
	}
	return placed
}

// settling is how long a receiver that smooths its speed remembers what was
// before the clutch was pulled, s; none where smoothing was not seen.
func settling(r fusion.Receiver) float64 {
	const memory = 4 // time constants, after which 2 % is left
	if !(r.Smoothing > 2*r.SmoothingSE) {
		return 0
	}
	return memory * r.Smoothing
}

// roadRuns turns the coast-downs that have a counterpart into what the fit
// needs, with the names of their setups in order; the others are told why not.
func roadRuns(result *Result, coasts []pairing.Coast, placed []pairing.Placed, where []int,
	ride sensors.Ride, density float64) (names []string, input []roadload.Run) {
	number := map[string]int{}
	for i, c := range coasts {
		run := &result.Runs[where[i]]
		if !run.Accepted() {
			continue
		}
		if placed[i].Pair == 0 {
			run.Cautions = append(run.Cautions, "not used for the road load: "+placed[i].Why)
			continue
		}
		run.Pair = placed[i].Pair
		if _, seen := number[c.Setup]; !seen {
			number[c.Setup] = len(names)
			names = append(names, c.Setup)
		}
		mass := massAt(ride, c.MiddleTime())
		r := roadload.Run{ID: c.ID, Setup: number[c.Setup], Pair: placed[i].Pair, Dir: placed[i].Dir, Pos: placed[i].Pos,
			Mass: mass, Inertia: mass + ride.RotatingMass, Density: density}
		for _, f := range c.Fixes {
			r.T = append(r.T, f.T-result.Track.Lag.Seconds)
			r.V = append(r.V, f.Speed)
		}
		input = append(input, r)
	}
	return names, input
}

// massAt is the mass as ridden at a time, kg.
func massAt(ride sensors.Ride, t float64) float64 {
	if m := ride.SetupAt(t).Mass; !math.IsNaN(m) {
		return m
	}
	return ride.Mass
}

// tellRuns notes in each run what the fit made of it.
func tellRuns(result *Result, est *roadload.Estimate) {
	byID := map[int]*Run{}
	for i := range result.Runs {
		byID[result.Runs[i].ID] = &result.Runs[i]
	}
	for _, f := range est.Runs {
		run := byID[f.ID]
		if f.Reason != "" {
			run.Reasons = append(run.Reasons, f.Reason)
			continue
		}
		run.Curve = &Curve{T: f.T, V: f.V, Fit: f.Fit}
		for _, c := range f.Cuts {
			run.Cautions = append(run.Cautions, fmt.Sprintf("%.1f s were left out at %.0f km/h: %s",
				c.To-c.From, speedAt(result.Track, (c.From+c.To)/2)/units.KMH, c.Reason))
		}
	}
}

// newRoadLoad puts together what is said of one setup. The force coefficients
// hold at the density of the reference conditions, and for the mass as ridden.
func newRoadLoad(result *Result, name string, setup int, est *roadload.Estimate, ride sensors.Ride, density, gravity float64) RoadLoad {
	load := est.Loads[setup]
	out := RoadLoad{
		Setup: name, Pairs: load.Pairs, Mass: ride.Mass, CdA: load.CdA, Crr: load.Crr, Cov: load.Cov,
		DoF: load.DoF, CdACI: load.CdACI, CrrCI: load.CrrCI, Density: density, Notes: est.Notes,
	}
	for _, f := range est.Runs {
		run := result.Runs[f.ID-1]
		if f.Reason == "" && run.Setup == name {
			out.Runs = append(out.Runs, f.ID)
			out.Mass = massAt(ride, run.Start)
		}
	}
	out.A = load.Crr.Times(out.Mass * gravity)
	out.C = load.CdA.Times(air.ReferenceDensity() / 2)
	return out
}
