package report

import (
	"math"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/compare"
)

// differenceTable has every judged difference in a row: what a spreadsheet or a
// careful reader wants beside the bands.
func differenceTable(r *runs.Result) table {
	t := table{Header: []string{"difference", "change", "95 % band", "p", "answer"}}
	add := func(name string, v *compare.Verdict) {
		if v == nil {
			return
		}
		t.Rows = append(t.Rows, []string{name, signed(v.Percent), signed(v.CIPercent[0]) + " to " + signed(v.CIPercent[1]), chanceWords(v.P), words.ForMachines().Name(v.Finding)})
	}
	for _, c := range r.Compared {
		pair := setupWords(c.B) + " against " + setupWords(c.A) + ": "
		add(pair+"drag", c.CdA)
		add(pair+"rolling resistance", c.Crr)
		add(pair+"power", c.Power)
		for i := range c.Times {
			add(pair+c.Times[i].Mark, &c.Times[i].Verdict)
		}
	}
	return t
}

// signed is a change in percent with its sign.
func signed(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	text := shown.Fixed(x, 1) + " %"
	if x > 0 {
		return "+" + text
	}
	return text
}

// chanceWords is a p-value, which is nothing to give many digits of.
func chanceWords(p float64) string {
	switch {
	case !(p >= 0 && p <= 1):
		return "–"
	case p < 0.001:
		return "<\u00a00.001"
	}
	return shown.Fixed(p, 3)
}
