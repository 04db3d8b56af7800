package figure

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/shown"
)

const textSize = 10 // points

func face(size float64, weight font.Font) font.Font {
	weight.Typeface, weight.Variant, weight.Size = "Liberation", "Sans", vg.Points(size)
	return weight
}

// newPlot returns a plot in the style of the report: no box, faint grid, words
// in soft ink.
func newPlot(x, y string) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = nil
	p.X.Label.Text, p.Y.Label.Text = x, y
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.LineStyle = draw.LineStyle{Color: soft, Width: 0.6}
		a.Tick.LineStyle = draw.LineStyle{Color: soft, Width: 0.6}
		a.Tick.Length = 3
		a.Tick.Label.Font, a.Tick.Label.Color = face(textSize, font.Font{}), soft
		a.Label.TextStyle.Font, a.Label.TextStyle.Color = face(textSize, font.Font{}), ink
		a.Label.Padding = 2
		a.Padding = 0
		a.Tick.Marker = ticks{}
	}
	grid := plotter.NewGrid()
	grid.Vertical = draw.LineStyle{Color: rule, Width: 0.5}
	grid.Horizontal = grid.Vertical
	p.Add(grid)
	return p
}

// withoutX takes labels and line off the x axis, for a plot above another.
func withoutX(p *plot.Plot) {
	p.X.Label.Text = ""
	p.X.Tick.Label.Color = faint(soft, 0)
	p.X.Tick.Marker = bare{p.X.Tick.Marker}
}

// bare ticks have no label.
type bare struct{ plot.Ticker }

func (b bare) Ticks(low, high float64) []plot.Tick {
	all := b.Ticker.Ticks(low, high)
	for i := range all {
		if all[i].Label != "" {
			all[i].Label = " " // a major tick still
		}
	}
	return all
}

// ticks stand at 1, 2 or 5 times a power of ten, about six of them, with a
// proper minus sign.
type ticks struct{}

func (ticks) Ticks(low, high float64) []plot.Tick {
	span := high - low
	if !(span > 0) || math.IsInf(span, 0) {
		return nil
	}
	step := niceStep(span / 6)
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	var out []plot.Tick
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9*span; k++ {
		out = append(out, plot.Tick{Value: k * step, Label: shown.Fixed(k*step, decimals)})
	}
	return out
}

func niceStep(least float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(least)))
	for _, m := range []float64{1, 2, 5} {
		if m*unit >= least*(1-1e-9) {
			return m * unit
		}
	}
	return 10 * unit
}

// minutes are ticks of an axis in seconds, shown in minutes.
type minutes struct{}

func (minutes) Ticks(low, high float64) []plot.Tick {
	steps := []float64{10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200}
	step := steps[len(steps)-1]
	for _, s := range steps {
		if (high-low)/s <= 8 {
			step = s
			break
		}
	}
	var out []plot.Tick
	for k := math.Ceil(low / step); k*step <= high; k++ {
		decimals := 0
		if step < 60 {
			decimals = 1
		}
		label := shown.Fixed(k*step/60, decimals)
		out = append(out, plot.Tick{Value: k * step, Label: label})
	}
	return out
}

// line returns a plotter for a line through the points.
func line(pts plotter.XYs, style draw.LineStyle) *plotter.Line {
	return &plotter.Line{XYs: pts, LineStyle: style}
}

// words is a label at a point of the plot.
type words struct {
	x, y   float64
	text   string
	style  draw.TextStyle
	dx, dy vg.Length
}

// Plot draws the label.
func (w words) Plot(c draw.Canvas, p *plot.Plot) {
	tx, ty := p.Transforms(&c)
	c.FillText(w.style, vg.Point{X: tx(w.x) + w.dx, Y: ty(w.y) + w.dy}, w.text)
}

// textStyle returns a style for words inside a plot.
func textStyle(p *plot.Plot, size float64) draw.TextStyle {
	return draw.TextStyle{Color: ink, Font: face(size, font.Font{}), Handler: p.TextHandler}
}
