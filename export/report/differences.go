package report

import (
	"math"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/sensors/finding"
)

// differenceTable has every judged difference in a row: what a spreadsheet or a
// careful reader wants beside the bands.
func (t *teller) differenceTable(r *runs.Result) table {
	out := table{Header: []string{t.text("difference"), t.text("change"), t.text("interval"), "p", t.text("answer")}}
	add := func(name string, v *compare.Verdict) {
		if v == nil {
			return
		}
		out.Rows = append(out.Rows, []string{name, t.percentChange(v.Percent), t.percentChange(v.CIPercent[0]) + " " + t.text("to") + " " + t.percentChange(v.CIPercent[1]), t.chance(v.P), t.book.Name(v.Finding)})
	}
	for _, c := range r.Compared {
		pair := t.against(c) + ": "
		add(pair+t.book.Say(words.Drag()), c.CdA)
		add(pair+t.book.Say(words.Rolling()), c.Crr)
		add(pair+t.book.Say(words.Power()), c.Power)
		for i := range c.Times {
			add(pair+c.Times[i].Mark, &c.Times[i].Verdict)
		}
	}
	return out
}

// against names a comparison.
func (t *teller) against(c runs.Comparison) string {
	return t.fill("against", finding.Text("b", t.setup(c.B)), finding.Text("a", t.setup(c.A)))
}

// percentChange is a change in percent with its sign.
func (t *teller) percentChange(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	text := t.style.Fixed(x, 1) + " %"
	if x > 0 {
		return "+" + text
	}
	return text
}

// chance is a p-value, which needs few digits.
func (t *teller) chance(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "–"
	case p < 0.001:
		return "<\u00a0" + t.style.Fixed(0.001, 3)
	}
	return t.style.Fixed(p, 3)
}
