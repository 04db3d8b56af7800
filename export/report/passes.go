package report

import (
	"fmt"
	"slices"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/sensors/finding"
)

// passTable has a row for each distance of each pass that counts.
func (t *teller) passTable(all []runs.Pass) table {
	out := table{Header: []string{t.text("way"), t.text("mean_both"), t.text("there"), t.text("back"), t.text("half_difference"), t.text("passes_apart")}}
	speed := func(v runs.Value) string { return t.style.PlusMinus(shown.Speed, v.X, half(v)) }
	toward := func(v runs.Value, l pass.Leg) string {
		if h := t.style.Heading(l.BearingDeg); h != "–" {
			return speed(v) + "\n" + h
		}
		return speed(v)
	}
	for _, p := range all {
		if !p.Accepted() {
			continue
		}
		for _, f := range t.shownOver(p) {
			mean := speed(f.Mean)
			if p.Setup != "" {
				mean += "\n" + p.Setup
			}
			out.Rows = append(out.Rows, []string{f.Name, mean, toward(f.There, p.There), toward(f.Back, p.Back), speed(f.Half), fmt.Sprintf("%.0f min", p.Apart()/60)})
		}
	}
	return out
}

// shownOver are the distances of a pass that the page shows.
func (t *teller) shownOver(p runs.Pass) []pass.Figure {
	var names []string
	for _, f := range p.Figures {
		names = append(names, f.Name)
	}
	var out []pass.Figure
	for _, name := range t.style.System.PassOver(names) {
		out = append(out, p.Figures[slices.Index(names, name)])
	}
	return out
}

// otherPasses lists the passes that do not count, with reasons.
func (t *teller) otherPasses(r *runs.Result) []string {
	var out []string
	for _, p := range r.Passes {
		if f := t.shownOver(p); !p.Accepted() && len(f) > 0 {
			out = append(out, t.fill("pass_rejected", finding.Text("at", t.style.Moment(p.There.Start-beginning(r))), finding.Text("over", f[0].Name),
				finding.Speed("speed", f[0].Mean.X))+" "+t.book.Sentences(p.Reasons)[0])
		}
	}
	return out
}
