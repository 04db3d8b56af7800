package accuracy

import (
	"math"

	"stillair/export/plot"
	"stillair/export/report/figure"
)

// dots is a chart with a line for each case and a dot for each of its figures,
// with its Monte Carlo interval.
type dots struct {
	of       Figure
	axis     string
	factor   float64 // shown = factor × figure
	what     []string
	reaching []float64 // values that the axis must include
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
	p := &plot.Plot{X: plot.Axis{Label: d.axis}, Y: plot.Axis{Min: -0.6, Max: float64(len(all)) - 0.4}}
	series := make([]plot.Dots, len(d.what))
	for k, what := range d.what {
		series[k] = plot.Dots{Tone: tone(k)}
		if len(d.what) > 1 {
			series[k].Name = what
		}
	}
	shown := 0
	for i, s := range all {
		y := float64(len(all) - 1 - i)
		p.Y.Ticks = append(p.Y.Ticks, plot.Tick{At: y, Text: s.Case})
		for k, what := range d.what {
			x, ok := d.read(s, what)
			if !ok {
				continue
			}
			shown++
			at := y + 0.12*(float64(len(d.what)-1)/2-float64(k))
			series[k].X, series[k].Y = append(series[k].X, x.x), append(series[k].Y, at)
			p.Lines = append(p.Lines, plot.Line{X: []float64{x.low, x.high}, Y: []float64{at, at}, Tone: tone(k), Dash: plot.Thin})
		}
	}
	if shown == 0 {
		return figure.Figure{}
	}
	p.Dots = series
	if len(d.what) > 1 {
		p.Y.Max += 0.28 * float64(len(d.what))
	}
	for _, x := range d.reaching {
		p.Lines = append(p.Lines, plot.Line{X: []float64{x, x}, Y: []float64{p.Y.Min, p.Y.Max}, Tone: plot.Soft, Dash: plot.Thin})
	}
	height := float64(60 + 24*len(all) + 12*len(d.what))
	return figure.Draw(p, 560, height, title, title+". Dots are measured, bars the 95 % interval that the number of rides leaves.")
}

func tone(k int) plot.Tone { return plot.Tone(k % plot.Tones) }
