package main

import (
	"fmt"
	"math"
	"slices"

	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/roadload"
)

// bike says the season of one bike.
func (p *page) bike(b results.SeasonBike) {
	name := b.Bike
	if name == "" {
		name = "A bike without a name"
	}
	p.title("%s: %s", name, counted(len(b.Rides), "ride"))
	for _, r := range b.Rides {
		p.seasonRide(r)
	}
	p.figures(b.Figures)
	p.twoWays(b.TwoWay)
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

func (p *page) figures(all []results.SeasonFigure) {
	if len(all) == 0 {
		return
	}
	p.title("From ride to ride")
	for _, f := range all {
		if !p.worthSaying(f.Kind, f.Figure) {
			continue
		}
		name := named(f.Setup) + ", " + f.Figure
		if f.Gear != "" {
			name += ", gear " + f.Gear
		}
		text := fmt.Sprintf("%s: mean %s of %d, best %s, typical %s", name, measuredBand(f.Mean), f.N, digitsOf(*f.Best, f), digitsOf(*f.Typical, f))
		if f.Spread != nil {
			text += fmt.Sprintf("; spreads by %s (1 sd), of which noise explains %s", digitsOf(*f.Spread, f), digitsOf(*f.Own, f))
		}
		if f.TrendP != nil && f.Trend.X != nil {
			if *f.TrendP < 0.05 {
				text += fmt.Sprintf("; changes by %s in 30 days (p %s)", measuredBand(f.Trend), shown.Fixed(*f.TrendP, 3))
			} else {
				text += "; no trend shown"
			}
		}
		p.wrapped(2, text)
	}
}

// worthSaying leaves the many marks of a launch to the JSON, but for those that a
// summary has.
func (p *page) worthSaying(kind, mark string) bool {
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
		if !p.worthSaying(t.Kind, t.Mark) {
			continue
		}
		gear := ""
		if t.Gear != "" {
			gear = ", gear " + t.Gear
		}
		p.line("  %-12s %s s   %s%s, runs %d and %d of %s, %.0f min apart", t.Mark, measuredBand(t.Mean), named(t.Setup), gear, t.Runs[0], t.Runs[1], t.Ride, *t.Apart/60)
	}
}

func (p *page) dragBudget(b *results.SeasonBudget) {
	p.title("What each part costs, counted from %s (CdA %s m²)", named(b.Base), measuredBand(b.BaseCdA))
	for _, e := range b.Effects {
		name := e.Part
		if e.Instead != "" {
			name += " instead of " + e.Instead
		}
		share := "–"
		if b.BaseCdA.X != nil {
			share = shown.PlusMinus(100**e.CdA.X / *b.BaseCdA.X, 100*shown.Normal95**e.CdA.SE / *b.BaseCdA.X) + " %"
		}
		p.line("  %-40s %s m²   %s   in %s", name, measuredBand(e.CdA), share, counted(e.Rides, "ride"))
	}
	for _, n := range b.Notes {
		p.wrapped(2, shown.Sentence(n.Text))
	}
}

// electric says what every setup needs out of the battery.
func (p *page) electric(docs []*results.Document, v, battery float64, drive measure.Value) {
	const kWh = 3.6e6 // J
	p.title("Out of the battery at a steady %s, on the level in still air", p.units.Number(shown.Speed, v, 0))
	var order []string
	latest := map[string]effect.Load{} // by setup
	for _, d := range docs {
		if d == nil {
			continue
		}
		for _, l := range d.RoadLoad {
			if load, ok := loadFrom(l); ok {
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
	p.wrapped(2, fmt.Sprintf("Taking %.0f ± %.0f %% of the battery's energy to reach the road; lights and heated grips are not in it.", 100*drive.X, 100*shown.Normal95*drive.SE))
}

// counted is a number of things in words.
func counted(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// loadFrom is the road load of a document, where it says all that it takes.
func loadFrom(l results.RoadLoad) (effect.Load, bool) {
	for _, x := range []*float64{l.CdA, l.CdASE, l.Crr, l.CrrSE, l.Cov, l.Mass, l.AirDensity} {
		if x == nil {
			return effect.Load{}, false
		}
	}
	opts := roadload.DefaultOptions(1)
	return effect.Load{CdA: measure.Value{X: *l.CdA, SE: *l.CdASE}, Crr: measure.Value{X: *l.Crr, SE: *l.CrrSE}, Cov: *l.Cov, K: opts.Slope.X,
		Mass: *l.Mass, Density: *l.AirDensity, Gravity: opts.Gravity}, *l.CdA > 0
}
