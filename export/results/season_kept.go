package results

import (
	"stillair/runs"
	"stillair/runs/compare"
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
	for _, l := range d.RoadLoad {
		l.Notes, l.Findings = nil, nil
		out.RoadLoad = append(out.RoadLoad, l)
	}
	for _, c := range d.Comparisons {
		out.Comparisons = append(out.Comparisons, Comparison{A: c.A, B: c.B, DeltaCdA: c.DeltaCdA, SE: c.SE})
	}
	return out
}

// Verdict is what was found of the part, as of a difference; its MorePairs are
// rides.
func (e SeasonEffect) Verdict() compare.Verdict {
	v := compare.Verdict{Finding: finding.Code(e.Code), MorePairs: e.MoreRides}
	if e.Percent != nil && e.PercentCI != nil {
		v.Percent, v.CIPercent = *e.Percent, *e.PercentCI
	}
	v.Beyond = v.Finding == compare.CannotTell && e.MoreRides == 0
	return v
}
