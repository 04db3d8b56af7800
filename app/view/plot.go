package view

import (
	"math"

	"stillair/export/plot"
)

// The model of a plot, which the report draws as well.
type (
	// Plot is a drawing of curves over two axes.
	Plot = plot.Plot
	// Axis is one axis.
	Axis = plot.Axis
	// Line is one curve.
	Line = plot.Line
	// Band is the area between two curves.
	Band = plot.Band
	// PlotMark is a labelled point.
	PlotMark = plot.Mark
)

// axisOf makes an axis from lo to hi with about n round ticks; the range is
// widened to whole ticks.
func (c Context) axisOf(label string, lo, hi float64, n int) Axis {
	if !(hi > lo) {
		lo, hi = lo-1, lo+1
	}
	step := plot.RoundStep((hi - lo) / float64(n))
	a := Axis{Label: label, Min: math.Floor(lo/step+1e-9) * step, Max: math.Ceil(hi/step-1e-9) * step}
	decimals := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	for i := 0; ; i++ {
		at := a.Min + float64(i)*step
		if at > a.Max+step/2 {
			return a
		}
		a.Ticks = append(a.Ticks, plot.Tick{At: at, Text: c.Number(at, decimals)})
	}
}

// thin keeps at most n evenly spaced points of two parallel slices, with both ends.
func thin(x, y []float64, n int) (tx, ty []float64) {
	if len(x) <= n {
		return x, y
	}
	for i := range n {
		j := i * (len(x) - 1) / (n - 1)
		tx, ty = append(tx, x[j]), append(ty, y[j])
	}
	return tx, ty
}
