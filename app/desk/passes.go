package main

import (
	"fmt"
	"slices"

	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/sensors/finding"
)

// closedOnly stands wherever speeds of flying passes do.
func (p *page) closedOnly() string { return p.book().Sentence(finding.New("caution.top_speed")) }

// speedBand is a speed with its 95 % band.
func (p *page) speedBand(v runs.Value) string {
	return p.units.PlusMinus(shown.Speed, v.X, shown.Normal95*v.SE)
}

// passes prints the speed of each road ridden in both directions.
func (p *page) passes(r *runs.Result) {
	begun := false
	for _, one := range r.Passes {
		if !one.Accepted() {
			continue
		}
		if !begun {
			p.title("Flying passes, mean of both directions")
			begun = true
		}
		p.onePass(one)
	}
	if begun {
		p.wrapped(2, p.book().Name("report.passes_note")+" "+p.closedOnly())
	}
}

func (p *page) onePass(one runs.Pass) {
	var names []string
	for _, f := range one.Figures {
		names = append(names, f.Name)
	}
	for _, name := range p.units.PassOver(names) {
		f := one.Figures[slices.IndexFunc(one.Figures, func(f pass.Figure) bool { return f.Name == name })]
		p.line("  %-8s %s   %s", f.Name, p.speedBand(f.Mean), named(one.Setup))
		p.wrapped(11, fmt.Sprintf("%s %s, %s %s; half the difference %s; %.0f min apart", shown.Heading(one.There.BearingDeg), p.units.Number(shown.Speed, f.There.X, 1),
			shown.Heading(one.Back.BearingDeg), p.units.Number(shown.Speed, f.Back.X, 1), p.speedBand(f.Half), one.Apart()/60))
	}
}

// rejectedPasses prints the reasons of the passes that do not count.
func (p *page) rejectedPasses(r *runs.Result) {
	for _, one := range r.Passes {
		if !one.Accepted() {
			f := one.Figures[0]
			p.wrapped(2, fmt.Sprintf("flying pass at %s, %s over %s: %s", p.since(r, one.There.Start), p.units.Number(shown.Speed, f.Mean.X, 0), f.Name, p.book().Join(one.Reasons)))
		}
	}
}

// seasonPasses lists the means of both directions of all rides.
func (p *page) seasonPasses(all []results.SeasonPass) {
	if len(all) == 0 {
		return
	}
	p.title("Flying passes, mean of both directions")
	for i := 0; i < len(all); {
		var names []string
		same := all[i:]
		for k, s := range same { // the distances of one pass come one after another, the longest first
			if k > 0 && (s.Ride != same[0].Ride || s.Setup != same[0].Setup || *s.Distance >= *same[k-1].Distance) {
				break
			}
			names = append(names, s.Over)
		}
		for _, s := range same[:len(names)] {
			if slices.Contains(p.units.PassOver(names), s.Over) {
				p.line("  %-12s %s   %s, %s, %.0f min apart", s.Over, p.speedBand(runs.Value{X: *s.Mean.X, SE: *s.Mean.SE}), named(s.Setup), s.Ride, *s.Apart/60)
			}
		}
		i += len(names)
	}
	p.wrapped(2, p.closedOnly())
}
