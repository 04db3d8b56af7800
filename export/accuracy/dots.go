package accuracy

import (
	"image/color"
	"math"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/report/figure"
)

// dots is a chart with a line for each case and a dot for each of its figures,
// with the interval that chance leaves.
type dots struct {
	of       Figure
	axis     string
	factor   float64 // shown = factor × figure
	what     []string
	reaching []float64 // values that the axis must show
}

// dot is one figure with its interval.
type dot struct{ x, low, high float64 }

// read takes the dot of one figure from a summary.
func (d dots) read(s *Summary, what string) (dot, bool) {
	t, ok := s.Values[what]
	if !ok || t.n < 2 {
		return dot{}, false
	}
	f := t.Figure(d.of)
	if math.IsNaN(f) {
		return dot{}, false
	}
	if d.of == Coverage {
		low, high := wilson(f, t.clusters())
		return dot{f * d.factor, low * d.factor, high * d.factor}, true
	}
	half := 1.96 * t.doubt(d.of)
	return dot{f * d.factor, (f - half) * d.factor, (f + half) * d.factor}, true
}

// wilson is the 95 % interval of a share (Wilson, J. Am. Stat. Assoc. 22 (1927)
// 209).
func wilson(p, n float64) (low, high float64) {
	const z = 1.96
	middle := (p + z*z/(2*n)) / (1 + z*z/n)
	half := z / (1 + z*z/n) * math.Sqrt(p*(1-p)/n+z*z/(4*n*n))
	return middle - half, middle + half
}

// draw draws the chart; an empty figure where there is nothing to show.
func (d dots) draw(all []*Summary, title string) figure.Figure {
	p := figure.New(d.axis, "")
	lines := make([]plot.Tick, len(all))
	shown := 0
	for i, s := range all {
		y := float64(len(all) - 1 - i)
		lines[i] = plot.Tick{Value: y, Label: s.Case + strings.Repeat("\u00a0", 2+len(s.Case)/10)} // the page's letters are wider than those measured
		for k, what := range d.what {
			if x, ok := d.read(s, what); ok {
				shown++
				p.Add(mark{dot: x, y: y + 0.12*(float64(len(d.what)-1)/2-float64(k)), colour: colour(k)})
			}
		}
	}
	if shown == 0 {
		return figure.Figure{}
	}
	p.Y.Tick.Marker = plot.ConstantTicks(lines)
	p.Y.Min, p.Y.Max = -0.6, float64(len(all))-0.4
	for _, x := range d.reaching {
		p.X.Min, p.X.Max = math.Min(p.X.Min, x), math.Max(p.X.Max, x)
		p.Add(&plotter.Line{XYs: plotter.XYs{{X: x, Y: p.Y.Min}, {X: x, Y: p.Y.Max}}, LineStyle: figure.Helper()})
	}
	if len(d.what) > 1 {
		for k, what := range d.what {
			p.Legend.Add(what, mark{colour: colour(k)})
		}
		p.Y.Max += 0.28 * float64(len(d.what))
	}
	height := vg.Length(60 + 24*len(all) + 12*len(d.what))
	return figure.Draw(p, 560, height, title, title+". Dots are measured, bars the 95 % interval that the number of rides leaves.")
}

func colour(k int) color.NRGBA {
	all := figure.Colours()
	return all[k%len(all)]
}

// mark draws one dot with its interval, and its sample in a legend.
type mark struct {
	dot
	y      float64
	colour color.NRGBA
}

// Plot draws the dot.
func (m mark) Plot(c draw.Canvas, p *plot.Plot) {
	tx, ty := p.Transforms(&c)
	low, high := math.Max(m.low, p.X.Min), math.Min(m.high, p.X.Max)
	c.StrokeLine2(draw.LineStyle{Color: m.colour, Width: 1.2}, tx(low), ty(m.y), tx(high), ty(m.y))
	c.DrawGlyph(draw.GlyphStyle{Color: m.colour, Radius: 2.6, Shape: draw.CircleGlyph{}}, vg.Point{X: tx(m.x), Y: ty(m.y)})
}

// DataRange tells how far the dot reaches.
func (m mark) DataRange() (xmin, xmax, ymin, ymax float64) { return m.low, m.high, m.y, m.y }

// Thumbnail draws the legend's sample.
func (m mark) Thumbnail(c *draw.Canvas) {
	c.DrawGlyph(draw.GlyphStyle{Color: m.colour, Radius: 2.6, Shape: draw.CircleGlyph{}}, c.Center())
}
