package figure

import (
	"fmt"
	"image/color"
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/shown"
	"stillair/runs"
)

// most is how many dots of one coast-down are drawn.
const most = 60

// CoastDowns draws all coast-downs of a setup over their fitted curves, and
// below what the fit leaves over.
func CoastDowns(r *runs.Result, setup string, units shown.System) Figure {
	unit := units.First(shown.Speed)
	top := newPlot("", "speed, "+unit.Name)
	left := newPlot("seconds since the clutch was pulled", "residual, "+unit.Name)
	count := 0
	reach, longest := 0.0, 0.0
	for _, run := range r.Runs {
		if run.Kind != runs.CoastDown || run.Setup != setup || !run.Accepted() || run.Curve == nil || len(run.Curve.T) < 2 {
			continue
		}
		count++
		dots, fit, over := curvePoints(run.Curve, 1/unit.SI)
		style := direction(r.Runs, run)
		top.Add(line(fit, draw.LineStyle{Color: faint(soft, 0.8), Width: 0.9}), &plotter.Scatter{XYs: dots, GlyphStyle: style})
		left.Add(&plotter.Scatter{XYs: over, GlyphStyle: style})
		for _, o := range over {
			reach, longest = math.Max(reach, math.Abs(o.Y)), math.Max(longest, o.X)
		}
	}
	if count == 0 {
		return Figure{}
	}
	zero := plotter.XYs{{X: 0, Y: 0}, {X: longest, Y: 0}}
	left.Add(line(zero, draw.LineStyle{Color: ink, Width: 0.8}))
	for _, p := range []*plot.Plot{top, left} {
		p.X.Min, p.X.Max = 0, longest
	}
	top.Y.Min = 0
	left.Y.Min, left.Y.Max = -1.1*reach, 1.1*reach
	withoutX(top)
	caption := fmt.Sprintf("%d coast-downs, measured (dots one way, triangles the other) over what the fitted drag and rolling resistance give (lines). Below: what is left over, measured less fitted.", count)
	return render([]row{{top, 5}, {left, 2.6}}, vg.Length(Narrow.width), 440, "Coast-downs, "+setup, caption)
}

// direction returns dots for runs that go the way of the setup's first, and
// triangles for those that come back.
func direction(all []runs.Run, run runs.Run) draw.GlyphStyle {
	first := math.NaN()
	for _, r := range all {
		if r.Kind == runs.CoastDown && finite(r.BearingDeg) {
			first = r.BearingDeg
			break
		}
	}
	if math.Cos((run.BearingDeg-first)*math.Pi/180) < 0 {
		return draw.GlyphStyle{Color: faint(vermillion, 0.75), Radius: 2, Shape: draw.PyramidGlyph{}}
	}
	return draw.GlyphStyle{Color: faint(blue, 0.75), Radius: 1.7, Shape: draw.CircleGlyph{}}
}

// curvePoints returns measured and fitted speeds and their difference over the
// time since the run's beginning.
func curvePoints(c *runs.Curve, scale float64) (dots, fit, over plotter.XYs) {
	n := min(len(c.T), len(c.V), len(c.Fit))
	step := 1 + (n-1)/most
	for i := 0; i < n; i += step {
		t := c.T[i] - c.T[0]
		if !finite(c.V[i]) || !finite(c.Fit[i]) {
			continue
		}
		dots = append(dots, plotter.XY{X: t, Y: c.V[i] * scale})
		fit = append(fit, plotter.XY{X: t, Y: c.Fit[i] * scale})
		over = append(over, plotter.XY{X: t, Y: (c.V[i] - c.Fit[i]) * scale})
	}
	return dots, fit, over
}

// area is a filled stretch between two lines over the same x.
func area(low, high plotter.XYs, c color.Color) *plotter.Polygon {
	ring := append(plotter.XYs{}, high...)
	for i := len(low) - 1; i >= 0; i-- {
		ring = append(ring, low[i])
	}
	return &plotter.Polygon{XYs: []plotter.XYs{ring}, Color: c}
}
