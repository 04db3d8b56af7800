package runs

import (
	"math"
	"sort"

	"stillair/runs/roadload"
)

// Limit is one cause of uncertainty in a drag area.
type Limit struct {
	Cause Cause
	SE    float64 // m²: what the standard uncertainty of CdA would lose without it, in quadrature
}

// Cause names what limits a figure.
type Cause string

// The causes.
const (
	ByGusts    Cause = "gusts"
	ByWind     Cause = "wind from pair to pair"
	ByReceiver Cause = "satellite receiver"
	ByRoad     Cause = "unevenness of the road"
	BySlope    Cause = "slope of the road"
	ByMass     Cause = "mass of bike and rider"
	ByAir      Cause = "density of the air"
)

// little is what takes the place of a noise that is thought away: exactly zero
// would leave nothing to whiten by.
const little = 1e-3

// used are the runs that the fit did not leave out.
func used(input []roadload.Run, est *roadload.Estimate) []roadload.Run {
	out := map[int]bool{}
	for _, r := range est.Runs {
		out[r.ID] = r.Reason != ""
	}
	var kept []roadload.Run
	for _, r := range input {
		if !out[r.ID] {
			kept = append(kept, r)
		}
	}
	return kept
}

// limits takes one cause after another out of the bound of a fit and sees how
// much certainty that gains, setup by setup: the rider learns what to
// improve first.
func limits(input []roadload.Run, est *roadload.Estimate, opts roadload.Options) [][]Limit {
	designs := make([]roadload.Design, len(est.Loads))
	for i, l := range est.Loads {
		designs[i] = roadload.Design{CdA: l.CdA.X, Crr: l.Crr.X}
	}
	opts.Noise = est.Noise
	input = used(input, est)
	full, err := roadload.Bound(input, designs, opts)
	if err != nil {
		return nil
	}
	causes := []struct {
		cause Cause
		less  func(*roadload.Options)
	}{
		{ByGusts, func(o *roadload.Options) { o.Noise.GustSD *= little }},
		{ByWind, func(o *roadload.Options) { o.WindSD *= little }},
		{ByReceiver, func(o *roadload.Options) { o.Noise.WhiteSD *= 0.1; o.Noise.DriftSD *= little }},
		{ByRoad, func(o *roadload.Options) { o.Noise.RoadSD *= little }},
		{BySlope, func(o *roadload.Options) { o.GradeSD *= little }},
	}
	out := make([][]Limit, len(designs))
	for _, c := range causes {
		without := opts
		c.less(&without)
		cov, err := roadload.Bound(input, designs, without)
		if err != nil {
			continue
		}
		for i := range out {
			gain := full.At(2*i, 2*i) - cov.At(2*i, 2*i)
			out[i] = append(out[i], Limit{Cause: c.cause, SE: math.Sqrt(math.Max(0, gain))})
		}
	}
	for i, l := range out {
		cda := est.Loads[i].CdA.X // follows mass, and the inverse of density, in proportion
		l = append(l, Limit{ByMass, cda * opts.MassSD}, Limit{ByAir, cda * opts.DensitySD})
		out[i] = l
		sort.SliceStable(l, func(a, b int) bool { return l[a].SE > l[b].SE })
	}
	return out
}
