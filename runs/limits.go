package runs

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// Limit is one cause of uncertainty in a drag area.
type Limit struct {
	Cause Cause
	SE    float64 // m²: decrease of the standard uncertainty of CdA without it, in quadrature
}

// Cause is the code of what limits a figure.
type Cause = finding.Code

// The causes.
const (
	ByGusts    Cause = "limit.gusts"
	ByWind     Cause = "limit.wind"
	ByReceiver Cause = "limit.receiver"
	ByRoad     Cause = "limit.road"
	BySlope    Cause = "limit.slope"
	ByPosture  Cause = "limit.posture"
	ByMass     Cause = "limit.mass"
	ByAir      Cause = "limit.air"
	ByAssumed  Cause = "limit.assumed" // see RoadLoad.CdAAssumed; mass and air have their own
	ByDays     Cause = "limit.days"
)

// little replaces a noise that is left out: exactly zero would make the
// covariance singular.
const little = 1e-3

// used are the runs that the fit did not leave out.
func used(input []roadload.Run, est *roadload.Estimate) []roadload.Run {
	out := map[int]bool{}
	for _, r := range est.Runs {
		out[r.ID] = !r.Reason.IsZero()
	}
	var kept []roadload.Run
	for _, r := range input {
		if !out[r.ID] {
			kept = append(kept, r)
		}
	}
	return kept
}

// bounds are the bound of a fit as it is, and with one cause after another
// left out.
type bounds struct {
	full    *mat.SymDense
	causes  []Cause
	without []*mat.SymDense
}

func boundsOf(input []roadload.Run, est *roadload.Estimate, opts roadload.Options) (bounds, bool) {
	designs := make([]roadload.Design, len(est.Loads))
	for i, l := range est.Loads {
		designs[i] = roadload.Design{CdA: l.CdA.X, Crr: l.Crr.X}
	}
	opts.Noise = est.Noise
	input = used(input, est)
	full, err := roadload.Bound(input, designs, opts)
	if err != nil {
		return bounds{}, false
	}
	b := bounds{full: full}
	for _, c := range []struct {
		cause  Cause
		remove func(*roadload.Options)
	}{
		{ByGusts, func(o *roadload.Options) { o.Noise.GustSD *= little }},
		{ByWind, func(o *roadload.Options) { o.WindSD *= little }},
		{ByReceiver, func(o *roadload.Options) { o.Noise.WhiteSD *= 0.1; o.Noise.DriftSD *= little }},
		{ByRoad, func(o *roadload.Options) { o.Noise.RoadSD *= little }},
		{BySlope, func(o *roadload.Options) { o.GradeSD *= little }},
		{ByPosture, func(o *roadload.Options) { o.Noise.PostureSD *= little }},
	} {
		without := opts
		c.remove(&without)
		if cov, err := roadload.Bound(input, designs, without); err == nil {
			b.causes, b.without = append(b.causes, c.cause), append(b.without, cov)
		}
	}
	return b, true
}

// limits lists the causes of a figure's uncertainty, from its bound and from
// other known causes, largest first.
func (b bounds) limits(variance func(*mat.SymDense) float64, others ...Limit) []Limit {
	var out []Limit
	for i, cause := range b.causes {
		gain := variance(b.full) - variance(b.without[i])
		out = append(out, Limit{Cause: cause, SE: math.Sqrt(math.Max(0, gain))})
	}
	return mostFirst(append(out, others...))
}

func mostFirst(l []Limit) []Limit {
	sort.SliceStable(l, func(a, b int) bool { return l[a].SE > l[b].SE })
	return l
}

// limits removes one cause after another from the bound of a fit and takes the
// decrease of the variance, setup by setup: it shows what to improve first.
func limits(input []roadload.Run, est *roadload.Estimate, opts roadload.Options) [][]Limit {
	b, ok := boundsOf(input, est, opts)
	if !ok {
		return nil
	}
	out := make([][]Limit, len(est.Loads))
	for i, l := range est.Loads {
		// The drag area is proportional to mass and to the inverse of density.
		out[i] = b.limits(func(cov *mat.SymDense) float64 { return cov.At(2*i, 2*i) },
			Limit{ByMass, l.CdA.X * opts.MassSD}, Limit{ByAir, l.CdA.X * opts.DensitySD}, assumedLimit(est, map[int]float64{i: 1}))
	}
	return out
}

// limitsBetween is the same for the difference between two setups of one fit.
// Errors of mass and density are common to both, so they scale the difference
// only.
func (b bounds) limitsBetween(est *roadload.Estimate, opts roadload.Options, i, j int) []Limit {
	delta := math.Abs(est.Loads[j].CdA.X - est.Loads[i].CdA.X)
	return b.limits(func(cov *mat.SymDense) float64 {
		return cov.At(2*i, 2*i) + cov.At(2*j, 2*j) - 2*cov.At(2*i, 2*j)
	}, Limit{ByMass, delta * opts.MassSD}, Limit{ByAir, delta * opts.DensitySD}, assumedLimit(est, map[int]float64{i: -1, j: 1}))
}

// assumedLimit is the uncertainty from assumptions of a weighted sum of drag
// areas.
func assumedLimit(est *roadload.Estimate, weights map[int]float64) Limit {
	w := make([]float64, 2*len(est.Loads))
	for setup, weight := range weights {
		w[2*setup] = weight
	}
	return Limit{ByAssumed, est.Assumed.SE(w)}
}

// limitsApart is the same for the difference between two independent setups:
// both contribute to each cause.
func limitsApart(a, b RoadLoad) []Limit {
	of := map[Cause]float64{}
	var order []Cause
	for _, l := range append(append([]Limit(nil), a.Limits...), b.Limits...) {
		if _, seen := of[l.Cause]; !seen {
			order = append(order, l.Cause)
		}
		of[l.Cause] = math.Hypot(of[l.Cause], l.SE)
	}
	var out []Limit
	for _, cause := range order {
		out = append(out, Limit{cause, of[cause]})
	}
	return mostFirst(out)
}
