package main

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"stillair/export/results"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
)

// bike prints the season of one bike.
func (p *page) bike(b results.SeasonBike) {
	name := b.Bike
	if name == "" {
		name = "A bike without a name"
	}
	p.title("%s: %s", name, counted(len(b.Rides), "ride"))
	if b.Budget != nil {
		p.partsVerdict(b.Budget)
	}
	for _, r := range b.Rides {
		p.seasonRide(r)
	}
	p.figures(b.Figures)
	p.twoWays(b.TwoWay)
	p.seasonPasses(b.Passes)
	switch {
	case b.Budget != nil:
		p.dragBudget(b.Budget)
	case b.Without != nil:
		p.wrapped(2, shown.Sentence(b.Without.Text))
	}
}

func (p *page) seasonRide(r results.SeasonRide) {
	when := "          "
	if r.Started != nil {
		when = r.Started.Format("2006-01-02")
	}
	line := fmt.Sprintf("  %s  %s", when, r.Ride)
	if r.DensityAltitude != nil {
		line += fmt.Sprintf("  (density altitude %s)", p.units.Number(shown.Distance, 10*math.Round(*r.DensityAltitude/10), 0))
	}
	p.line("%s", line)
	for _, l := range r.Loads {
		p.line("              %-28s CdA %s m²   Crr %s", named(l.Setup), measuredBand(l.CdA), measuredBand(l.Crr))
	}
}

// measuredBand shows a value of a document with its 95 % band.
func measuredBand(m results.Measured) string {
	if m.X == nil || m.SE == nil {
		return "–"
	}
	return shown.PlusMinus(*m.X, shown.Normal95**m.SE)
}

// banded shows a value of a document with a band of its own.
func banded(m results.Measured, ci *[2]float64) string {
	if m.X == nil || ci == nil {
		return measuredBand(m)
	}
	return shown.PlusMinus(*m.X, (ci[1]-ci[0])/2)
}

func (p *page) figures(all []results.SeasonFigure) {
	if len(all) == 0 {
		return
	}
	p.title("From ride to ride")
	for _, f := range all {
		if !p.listed(f.Kind, f.Figure) {
			continue
		}
		name := named(f.Setup) + ", " + f.Figure
		if f.Rollout {
			name += " after 1 ft"
		}
		if f.Gear != "" {
			name += ", gear " + f.Gear
		}
		text := fmt.Sprintf("%s: mean %s of %d, best %s, typical %s", name, banded(f.Mean, f.MeanCI), f.N, digitsOf(*f.Best, f), digitsOf(*f.Typical, f))
		if f.Spread != nil {
			text += fmt.Sprintf("; spread %s (1 sd), expected %s", digitsOf(*f.Spread, f), digitsOf(*f.Own, f))
		}
		if f.TrendP != nil && f.Trend.X != nil {
			if *f.TrendP < 0.05 {
				text += fmt.Sprintf("; changes by %s in 30 days (p %s)", banded(f.Trend, f.TrendCI), shown.Fixed(*f.TrendP, 3))
			} else {
				text += "; no trend shown"
			}
		}
		p.wrapped(2, text)
	}
}

// listed leaves the many marks of a launch to the JSON, except for those that a
// summary has.
func (p *page) listed(kind, mark string) bool {
	return kind != string(runs.Launch) || slices.Contains(p.headline(), mark)
}

// digitsOf shows a number in the digits of its figure.
func digitsOf(x float64, f results.SeasonFigure) string {
	switch f.Figure {
	case "CdA":
		return shown.Fixed(x, 3)
	case "Crr":
		return shown.Fixed(x, 4)
	}
	return shown.Fixed(x, 2)
}

func (p *page) twoWays(all []results.SeasonTwoWay) {
	if len(all) == 0 {
		return
	}
	p.title("Both ways, mean of two")
	for _, t := range all {
		if !p.listed(t.Kind, t.Mark) {
			continue
		}
		gear := ""
		if t.Gear != "" {
			gear = ", gear " + t.Gear
		}
		if t.Rollout {
			gear += " after 1 ft"
		}
		p.line("  %-12s %s s   %s%s, runs %d and %d of %s, %.0f min apart", t.Mark, measuredBand(t.Mean), named(t.Setup), gear, t.Runs[0], t.Runs[1], t.Ride, *t.Apart/60)
	}
}

// partsVerdict prints the effects of the parts first, the largest first.
func (p *page) partsVerdict(b *results.SeasonBudget) {
	effects := slices.Clone(b.Effects)
	slices.SortStableFunc(effects, func(a, b results.SeasonEffect) int {
		return cmp.Compare(math.Abs(b.Verdict().Percent), math.Abs(a.Verdict().Percent))
	})
	var unclear []string
	for _, e := range effects {
		switch v := e.Verdict(); v.Finding {
		case compare.CannotTell:
			unclear = append(unclear, partName(e))
		default:
			p.wrapped(2, shown.Sentence(words.New(shown.Style{System: p.units}).Say(words.Verdict(partName(e), words.Drag(), v))))
		}
	}
	if len(unclear) > 0 {
		p.wrapped(2, "Not clear yet: "+strings.Join(unclear, "; ")+".")
	}
}

// partName is a part, with the one that it replaces.
func partName(e results.SeasonEffect) string {
	if e.Instead != "" {
		return e.Part + " instead of " + e.Instead
	}
	return e.Part
}

func (p *page) dragBudget(b *results.SeasonBudget) {
	p.title("Drag of each part, compared with %s (CdA %s m²); the bands hold for all parts together", named(b.Base), measuredBand(b.BaseCdA))
	for _, e := range b.Effects {
		v, area, share := e.Verdict(), "–", "–"
		if b.BaseCdA.X != nil && e.CdA.X != nil {
			half := (v.CIPercent[1] - v.CIPercent[0]) / 2
			area, share = shown.PlusMinus(*e.CdA.X, half/100**b.BaseCdA.X), shown.PlusMinus(v.Percent, half)+" %"
		}
		p.line("  %-40s %s m²   %s   in %s", partName(e), area, share, counted(e.Rides, "ride"))
	}
	for _, n := range b.Notes {
		p.wrapped(2, shown.Sentence(n.Text))
	}
}

// electric prints the energy that every setup needs from the battery.
func (p *page) electric(rides []ridden, v, battery float64, drive measure.Value) {
	const kWh = 3.6e6 // J
	p.title("From the battery at a steady %s, on the level in still air", p.units.Number(shown.Speed, v, 0))
	var order []string
	latest := map[string]effect.Load{} // by setup
	for _, r := range rides {
		for _, l := range r.doc.RoadLoad {
			if load, ok := l.Load(); ok {
				if _, seen := latest[l.Setup]; !seen {
					order = append(order, l.Setup)
				}
				latest[l.Setup] = load
			}
		}
	}
	for _, setup := range order {
		e := latest[setup].Electric(v, drive)
		reach := effect.Range(battery*kWh, e)
		const whPerKm = 3.6 // J/m
		p.line("  %-28s %s Wh/km, %s km from %g kWh", named(setup), shown.PlusMinus(e.X/whPerKm, shown.Normal95*e.SE/whPerKm), shown.PlusMinus(reach.X/1e3, shown.Normal95*reach.SE/1e3), battery)
	}
	p.wrapped(2, fmt.Sprintf("Assuming that %.0f ± %.0f %% of the battery's energy reaches the road; lights and heated grips are not included.", 100*drive.X, 100*shown.Normal95*drive.SE))
}

// counted is a number of things in words.
func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
