package runs

import (
	"math"

	"stillair/runs/pairing"
	"stillair/runs/roadload"
)

// coastData is the input of a ride's road-load fit. places and runs are
// parallel.
type coastData struct {
	places []pairing.Coast
	runs   []roadload.Run
	opts   roadload.Options
}

// ridesApart separates the clocks of different rides, s, so that no runs of
// different rides are paired.
const ridesApart = 1e7

// gustsAlike is the largest ratio between the gusts of rides that are fitted
// with one strength.
const gustsAlike = 1.6

// common is a joint fit of several rides with its input.
type common struct {
	est    *roadload.Estimate
	opts   roadload.Options
	bounds bounds // empty if not known
}

// together fits the coast-downs of all rides at once, so that a common road is
// learned from all of them and cancels in their differences. The setups are
// numbered ride by ride. It returns nil without positions, for days of
// different wind, or if the fit fails.
func together(rides []Named) *common {
	if !alikeDays(rides) {
		return nil
	}
	var places []pairing.Coast
	var input []roadload.Run
	setups := 0
	opts := rides[0].Result.coasts.opts
	opts.LoadSD = nil
	for k, ride := range rides {
		d := ride.Result.coasts
		opts.WindSD = math.Max(opts.WindSD, d.opts.WindSD)
		opts.CrossRMS = math.Max(opts.CrossRMS, d.opts.CrossRMS)
		opts.LoadSD = append(opts.LoadSD, d.opts.LoadSD...)
		for _, r := range used(d.runs, ride.Result.Estimate) {
			c := d.placeOf(r.ID)
			c.ID, c.Start, c.End = len(places)+1, c.Start+ridesApart*float64(k), c.End+ridesApart*float64(k)
			r.ID, r.Setup, r.Pair = c.ID, r.Setup+setups, r.Pair+1000*k
			r.T = shifted(r.T, ridesApart*float64(k))
			places, input = append(places, c), append(input, r)
		}
		setups += len(ride.Result.RoadLoads)
	}
	for i, p := range pairing.Pair(places) {
		if p.Dir == 0 || len(p.Pos) != len(input[i].T) {
			return nil
		}
		input[i].Dir, input[i].Pos = p.Dir, p.Pos
	}
	est, err := roadload.Fit(input, opts)
	if err != nil || len(est.Loads) != setups {
		return nil
	}
	b, _ := boundsOf(input, est, opts)
	return &common{est: est, opts: opts, bounds: b}
}

// alikeDays reports whether every ride has a fit, and gusts of similar
// strength.
func alikeDays(rides []Named) bool {
	low, high := math.Inf(1), 0.0
	for _, ride := range rides {
		if ride.Result.coasts == nil || ride.Result.Estimate == nil {
			return false
		}
		g := ride.Result.Estimate.Noise.GustSD
		low, high = math.Min(low, g), math.Max(high, g)
	}
	return high <= gustsAlike*low
}

func (d *coastData) placeOf(id int) pairing.Coast {
	for i, r := range d.runs {
		if r.ID == id {
			return d.places[i]
		}
	}
	return pairing.Coast{}
}

func shifted(t []float64, by float64) []float64 {
	out := make([]float64, len(t))
	for i, x := range t {
		out[i] = x + by
	}
	return out
}
