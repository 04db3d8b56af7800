package results

import (
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// ForSeason is what a season needs of a document: a document itself, of a few
// kilobytes.
func (d *Document) ForSeason() *Document {
	out := &Document{Version: d.Version, Bike: d.Bike, Started: d.Started, Invented: d.Invented, Defaults: []string{},
		Runs: []Run{}, RoadLoad: []RoadLoad{}, Comparisons: []Comparison{}, Power: []Power{}}
	for _, r := range d.Runs {
		if r.Accepted && (r.Kind == string(runs.Launch) || r.Kind == string(runs.RollOn)) {
			r.Reasons, r.Cautions, r.Findings, r.Engine = []string{}, nil, nil, nil
			out.Runs = append(out.Runs, r)
		}
	}
	for _, p := range d.Passes {
		if p.Accepted {
			p.Reasons, p.There, p.Back = []string{}, PassLeg{}, PassLeg{}
			out.Passes = append(out.Passes, p)
		}
	}
	for _, l := range d.RoadLoad {
		l.Notes, l.Findings = nil, nil
		out.RoadLoad = append(out.RoadLoad, l)
	}
	for _, c := range d.Comparisons {
		out.Comparisons = append(out.Comparisons, Comparison{A: c.A, B: c.B, DeltaCdA: c.DeltaCdA, SE: c.SE})
	}
	return out
}

// Load is the road load in the air of its ride, with standard gravity, if the
// document has everything needed for it.
func (l RoadLoad) Load() (effect.Load, bool) {
	if !isFinite(l.CdA, l.CdASE, l.Crr, l.CrrSE, l.Cov, l.Mass, l.AirDensity) {
		return effect.Load{}, false
	}
	opts := roadload.DefaultOptions(1)
	return effect.Load{CdA: measure.Value{X: *l.CdA, SE: *l.CdASE}, Crr: measure.Value{X: *l.Crr, SE: *l.CrrSE}, Cov: *l.Cov, K: opts.Slope.X,
		Mass: *l.Mass, Density: *l.AirDensity, Gravity: opts.Gravity}, *l.CdA > 0
}

// Verdict is the verdict on the part, as on a difference; its MorePairs are
// rides.
func (e SeasonEffect) Verdict() compare.Verdict {
	v := compare.Verdict{Finding: finding.Code(e.Code), MorePairs: e.MoreRides}
	if e.Percent != nil && e.PercentCI != nil {
		v.Percent, v.CIPercent = *e.Percent, *e.PercentCI
	}
	v.Beyond = v.Finding == compare.CannotTell && e.MoreRides == 0
	return v
}
