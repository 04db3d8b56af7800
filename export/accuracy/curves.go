package accuracy

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat/distuv"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/report/figure"
)

// sizes draws, for each case, which share of the errors stays under a size.
func sizes(all []*Summary, what string, u Unit) figure.Figure {
	p := figure.New("size of the error, "+u.Name, "share of the errors that stay under it, %")
	shown := 0
	for _, s := range all {
		t, ok := s.Values[what]
		if !ok || t.n < 8 {
			continue
		}
		sorted := slices.Clone(t.size)
		slices.Sort(sorted)
		pts := plotter.XYs{{X: 0, Y: 0}}
		for i, x := range sorted {
			pts = append(pts, plotter.XY{X: x * u.Factor, Y: 100 * float64(i+1) / t.n})
		}
		style := draw.LineStyle{Color: colour(shown), Width: 1.2}
		if shown >= len(figure.Colours()) {
			style.Dashes = plotter.DefaultLineStyle.Dashes
			style.Width = 0.8
		}
		line := &plotter.Line{XYs: pts, LineStyle: style}
		p.Add(line)
		p.Legend.Add(s.Case, line)
		shown++
	}
	if shown == 0 {
		return figure.Figure{}
	}
	p.Y.Min, p.Y.Max = 0, 100
	p.X.Min, p.X.Max = 0, math.Min(p.X.Max, 300)
	p.Legend.Top = false
	p.Add(&plotter.Line{XYs: plotter.XYs{{X: 0, Y: 95}, {X: p.X.Max, Y: 95}}, LineStyle: figure.Helper()})
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
	p := figure.New("error over the standard error that was told", "density")
	var steps, normal plotter.XYs
	for k, c := range count {
		x := -reach + float64(k)*width
		steps = append(steps, plotter.XY{X: x, Y: c / total / width}, plotter.XY{X: x + width, Y: c / total / width})
	}
	for x := -reach; x <= reach; x += 0.05 {
		normal = append(normal, plotter.XY{X: x, Y: distuv.UnitNormal.Prob(x)})
	}
	p.Add(&plotter.Line{XYs: steps, LineStyle: draw.LineStyle{Color: colour(0), Width: 1.2}},
		&plotter.Line{XYs: normal, LineStyle: draw.LineStyle{Color: colour(1), Width: 1.2}})
	p.Y.Min = 0
	return figure.Draw(p, 560, 220, "Errors over standard errors",
		"All errors of the study over their standard errors, as steps, and the normal density that true standard errors would give. What lies beyond 4 is counted in the last step.")
}
