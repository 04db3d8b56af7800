package runs

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/pairing"
	"stillair/runs/roadload"
	"stillair/runs/usual"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits of plausible road loads. Published drag areas reach from 0.18 m², a
// rider lying behind a full fairing, to 0.7 m² (Cossalter, Motorcycle
// Dynamics); luggage, a passenger and a wrong mass extend that range. Rolling
// resistance on asphalt lies near 0.02 (Cossalter) and about 0.05 on earth
// (textbooks of vehicle dynamics); chain and gearbox add a few thousandths in a
// coast-down. Engine braking adds 0.05 and more in top gear: 12 Nm at 15 rad/m
// on 290 kg are 0.065; a free-running one adds less. Car tyres on tar macadam
// have 0.025, 0.05 on unpaved road (Wong, Theory of Ground Vehicles, from
// memory): a value significantly above the middle of the two is implausible on
// a road where coast-downs are ridden. The limits are from these sources and
// not tuned on rides.
const (
	leastCdA, mostCdA = 0.1, 1.3   // m²
	leastCrr, mostCrr = 0.0, 0.045 // 1
	mostPaved         = 0.035      // exceeded by more than its own uncertainty
)

// possible reports whether a road load is plausible for a motorcycle. Negative
// rolling resistance is rejected only if it is significantly below zero.
func possible(l roadload.Load) bool {
	const reach = 2 // standard errors
	return l.CdA.X >= leastCdA && l.CdA.X <= mostCdA && l.Crr.X+reach*l.Crr.SE >= leastCrr && l.Crr.X <= mostCrr &&
		l.Crr.X-l.Crr.SE <= mostPaved && gearIn(l.Crr) < 0.5
}

// Priors for a rolling resistance that is higher than that of most motorcycles. None
// of the sources of usual.Crr is more than 0.005 above it, but for car tyres on tar
// macadam (above). Motoring an engine takes 1.2 to 1.5 bar of mean pressure (Heywood,
// Internal Combustion Engine Fundamentals, from memory); with displacement and gearing
// (common practice) that is, of the weight, 0.016 in the top gear of a 125, 0.043 of a
// 650 single, 0.053 of a 1000, and half as much again two gears below it.
const (
	crrAboveSD          = 0.005
	heldMedian, heldLog = 0.0445, 0.5 // lognormal
	habitOfGear         = 0.13        // prior odds that a gear was in throughout, as in package detect
	gearMentioned       = 0.01        // probability from which there is a note
)

// gearIn is the probability that a gear was left in or a brake dragged in all
// coast-downs whose fit has this rolling resistance.
func gearIn(crr Value) float64 {
	more := crr.X - usual.Crr
	if more <= 0 {
		return 0
	}
	spread := math.Hypot(crrAboveSD, crr.SE)
	free := distuv.Normal{Mu: usual.Crr, Sigma: spread}.Prob(crr.X)
	held := distuv.LogNormal{Mu: math.Log(heldMedian), Sigma: heldLog}.Prob(more)
	return habitOfGear * held / (habitOfGear*held + free)
}

// fitted is the input of the road-load fit, with names by setup. runs and
// places are parallel.
type fitted struct {
	names  []string
	runs   []roadload.Run
	places []pairing.Coast
}

// without leaves out a setup and moves up those behind it.
func (f fitted) without(setup int) fitted {
	var out fitted
	for i, name := range f.names {
		if i != setup {
			out.names = append(out.names, name)
		}
	}
	for i, r := range f.runs {
		if r.Setup == setup {
			continue
		}
		if r.Setup > setup {
			r.Setup--
		}
		out.runs, out.places = append(out.runs, r), append(out.places, f.places[i])
	}
	return out
}

// fitPossible fits the road load of every setup. If one is implausible, or its runs
// depart from it together, they are rejected with a warning and the other setups
// are fitted without them.
func fitPossible(result *Result, f fitted, opts roadload.Options) (*roadload.Estimate, fitted, error) {
	est, err := roadload.Fit(f.runs, opts)
	if err != nil {
		return nil, f, err
	}
	for i, l := range est.Loads {
		left, at := commonResidual(est, i)
		switch {
		case !possible(l):
			result.reject(f, i, codeImpossibleRun, finding.New(codeImpossible, finding.Text("setup", f.names[i]),
				finding.Area("cda", l.CdA.X).With(l.CdA.SE), finding.Num("crr", l.Crr.X).With(l.Crr.SE)))
		case left > mostInCommon:
			result.reject(f, i, codeLetGoRun, finding.New(codeLetGo, finding.Text("setup", f.names[i]), finding.Speed("at", at)))
		default:
			continue
		}
		if rest := f.without(i); len(rest.runs) > 0 {
			opts.LoadSD = slices.Delete(slices.Clone(opts.LoadSD), i, i+1)
			return fitPossible(result, rest, opts)
		}
		return nil, f, roadload.ErrNoRuns
	}
	return est, f, nil
}

// reject warns that a setup has no road load, and rejects its coast-downs for a
// reason: those without a counterpart too, for which still less speaks.
func (result *Result) reject(f fitted, setup int, reason finding.Code, warning finding.Finding) {
	result.Warnings = append(result.Warnings, warning.OfSetup(f.names[setup]))
	for i := range result.Runs {
		if run := &result.Runs[i]; run.Kind == CoastDown && run.Setup == f.names[setup] && run.Accepted() {
			run.Reasons = append(run.Reasons, finding.New(reason).OfRun(run.ID))
			run.Pair = 0
		}
	}
}

// noRoadLoad adds the reason why there is none, unless there is one already.
func (result *Result) noRoadLoad(err error) {
	if !errors.Is(err, roadload.ErrNoRuns) {
		result.Warnings = append(result.Warnings, finding.New(codeNoRoadLoad, sensors.Cause(err)))
	}
}
