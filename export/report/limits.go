package report

import (
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// limit is one cause of uncertainty in a drag area, as a bar.
type limit struct {
	Name, Text string
	Width      float64 // percent of the longest
}

// slight is the share of the longest bar below which a cause is left out.
const slight = 0.04

// limits draws the causes of a drag area's uncertainty, largest first.
func (t *teller) limits(l runs.RoadLoad) []limit {
	if len(l.Limits) == 0 || !(l.Limits[0].SE > 0) || !(l.CdA.X > 0) {
		return nil
	}
	var out []limit
	for _, x := range l.Limits {
		share := x.SE / l.Limits[0].SE
		if share < slight {
			continue
		}
		out = append(out, limit{Name: t.book.Name(x.Cause), Width: 100 * share,
			Text: "± " + t.style.Fixed(100*shown.Normal95*x.SE/l.CdA.X, 1) + " %"})
	}
	return out
}

// advice is what to improve first.
func (t *teller) advice(l runs.RoadLoad) string {
	if len(t.limits(l)) == 0 {
		return ""
	}
	cause := l.Limits[0].Cause
	return t.fill("improve", finding.Of("cause", finding.New(cause)), finding.Of("help", finding.New(words.HelpAgainst(cause))))
}
