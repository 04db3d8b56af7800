package accuracy

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"

	"stillair/export/plot"
	"stillair/export/report/figure"
)

// sizes draws the cumulative distribution of the size of the errors of each
// case.
func sizes(all []*Summary, what string, u Unit) figure.Figure {
	p := &plot.Plot{X: plot.Axis{Label: "size of the error, " + u.Name}, Y: plot.Axis{Label: "share of the errors that stay under it, %", Max: 100}, Low: true}
	shown, longest := 0, 0.0
	for _, s := range all {
		t, ok := s.Values[what]
		if !ok || t.n < 8 {
			continue
		}
		sorted := slices.Clone(t.size)
		slices.Sort(sorted)
		x, y := []float64{0}, []float64{0}
		for i, e := range sorted {
			x, y = append(x, e*u.Factor), append(y, 100*float64(i+1)/t.n)
			longest = math.Max(longest, e*u.Factor)
		}
		dash := plot.Solid
		if shown >= plot.Tones {
			dash = plot.Dashed
		}
		p.Lines = append(p.Lines, plot.Line{Name: s.Case, X: x, Y: y, Tone: tone(shown), Dash: dash})
		shown++
	}
	if shown == 0 {
		return figure.Figure{}
	}
	p.X.Max = math.Min(longest, 300)
	p.Lines = append(p.Lines, plot.Line{X: []float64{0, p.X.Max}, Y: []float64{95, 95}, Tone: plot.Soft, Dash: plot.Thin})
	return figure.Draw(p, 560, 300, what, what+": the share of errors under each size. The line stands at 95 %.")
}

// standardised draws a histogram of all errors over their standard errors
// beside the normal density that true standard errors would give.
func standardised(all []*Summary) figure.Figure {
	const reach, width = 4.0, 0.4
	n := int(2 * reach / width)
	count, total := make([]float64, n), 0.0
	for _, s := range all {
		for _, t := range s.Values {
			for _, z := range t.z {
				k := int(math.Floor((math.Max(-reach, math.Min(z, reach-1e-9)) + reach) / width))
				count[k]++
				total++
			}
		}
	}
	if total < 50 {
		return figure.Figure{}
	}
	var steps, normal plot.Line
	normal.Tone, normal.Dash, normal.Name, steps.Name = 1, plot.Dashed, "normal", "measured"
	top := 0.0
	for k, c := range count {
		x := -reach + float64(k)*width
		steps.X, steps.Y = append(steps.X, x, x+width), append(steps.Y, c/total/width, c/total/width)
		top = math.Max(top, c/total/width)
	}
	for x := -reach; x <= reach; x += 0.05 {
		normal.X, normal.Y = append(normal.X, x), append(normal.Y, distuv.UnitNormal.Prob(x))
	}
	p := &plot.Plot{X: plot.Axis{Label: "error over its standard error"}, Y: plot.Axis{Label: "density", Max: 1.05 * math.Max(top, 0.4)},
		Lines: []plot.Line{steps, normal}}
	return figure.Draw(p, 560, 220, "Errors over standard errors",
		"All errors of the study over their standard errors, as steps, and the normal density that true standard errors would give. What lies beyond 4 is counted in the last step.")
}
