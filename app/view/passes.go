package view

import (
	"fmt"
	"slices"

	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/pass"
)

// PassRow is one distance of a flying pass.
type PassRow struct {
	EffectLine
	Reason string // why it does not count
}

// passes lists the flying passes of a ride, those that count first.
func (c Context) passes(all []runs.Pass) []PassRow {
	var counting, others []PassRow
	for _, p := range all {
		for _, f := range c.shownOver(p) {
			row := PassRow{EffectLine: EffectLine{Name: join(" · ", c.markName(f.Name), p.Setup), Reading: c.of(shown.Speed, f.Mean)}}
			row.Words = c.passWords(f.There, f.Back, f.Half, p.Apart())
			if p.Accepted() {
				counting = append(counting, row)
				continue
			}
			row.Reason = c.sentence(p.Reasons[0])
			others = append(others, row)
		}
	}
	return append(counting, others...)
}

// shownOver are the distances of a pass that are shown to the rider.
func (c Context) shownOver(p runs.Pass) []pass.Figure {
	var names []string
	for _, f := range p.Figures {
		names = append(names, f.Name)
	}
	var out []pass.Figure
	for _, name := range c.System.PassOver(names) {
		out = append(out, p.Figures[slices.Index(names, name)])
	}
	return out
}

// passWords states both directions, their difference and the time between them.
func (c Context) passWords(there, back, half runs.Value, apart float64) string {
	t := c.Book.Passes
	speed := func(v runs.Value) string { return c.style().Number(shown.Speed, v.X, 1) }
	return join(" · ", fmt.Sprintf(t.Legs, speed(there), speed(back)), c.say().Name(nameHalf)+" "+c.of(shown.Speed, half).Spoken(), fmt.Sprintf(t.Apart, c.Duration(apart)))
}

// seasonPasses returns the fastest mean of both directions for each distance
// and setup, and the number of passes.
func (c Context) seasonPasses(all []results.SeasonPass, called map[string]RideRow) []PassRow {
	best, count, over := map[string]results.SeasonPass{}, map[string]int{}, map[string][]string{}
	var order []string
	for _, p := range all {
		if p.Mean.X == nil || p.Mean.SE == nil || p.There.X == nil || p.Back.X == nil || p.Half.X == nil || p.Half.SE == nil || p.Apart == nil {
			continue
		}
		over[p.Setup] = append(over[p.Setup], p.Over)
		name := join(" · ", c.markName(p.Over), c.setupName(p.Setup))
		had, there := best[name]
		if !there {
			order = append(order, name)
		}
		if count[name]++; !there || *p.Mean.X > *had.Mean.X {
			best[name] = p
		}
	}
	var out []PassRow
	for _, name := range order {
		p, of := best[name], ""
		if !slices.Contains(c.System.PassOver(over[p.Setup]), p.Over) {
			continue
		}
		if count[name] > 1 {
			of = fmt.Sprintf(c.Book.Passes.Best, count[name])
		}
		mean, half := runs.Value{X: *p.Mean.X, SE: *p.Mean.SE}, runs.Value{X: *p.Half.X, SE: *p.Half.SE}
		out = append(out, PassRow{EffectLine: EffectLine{Name: name, Reading: c.of(shown.Speed, mean),
			Words: join(" · ", of, c.passWords(runs.Value{X: *p.There.X}, runs.Value{X: *p.Back.X}, half, *p.Apart), called[p.Ride].Title)}})
	}
	return out
}
