package view

import "math"

// Plot is a drawing of curves over two axes, in the units that its labels say.
type Plot struct {
	X, Y   Axis
	Lines  []Line
	Bands  []Band
	Marks  []PlotMark
	Spoken string // what a screen reader says in its place
}

// Axis is one axis: its range and what stands beside it.
type Axis struct {
	Label    string
	Min, Max float64
	Ticks    []Tick
}

// Tick is one number on an axis.
type Tick struct {
	At   float64
	Text string
}

// Dash says how a line is drawn, so that lines differ in more than colour.
type Dash int

// The ways to draw a line.
const (
	Solid Dash = iota
	Dashed
	Dotted
	Thin
)

// Line is one curve. X and Y are parallel.
type Line struct {
	Name string // for the legend; empty: not in it
	X, Y []float64
	Tone int
	Dash Dash
}

// Band is the area between two curves.
type Band struct {
	X, Low, High []float64
	Tone         int
}

// PlotMark is a point worth reading off.
type PlotMark struct {
	X, Y  float64
	Above bool // the words stand above the point, not below
	Text  string
}

// axisOf makes an axis from lo to hi with about n round ticks; the range is
// widened to whole ticks.
func (c Context) axisOf(label string, lo, hi float64, n int) Axis {
	if !(hi > lo) {
		lo, hi = lo-1, lo+1
	}
	step := roundStep((hi - lo) / float64(n))
	a := Axis{Label: label, Min: math.Floor(lo/step+1e-9) * step, Max: math.Ceil(hi/step-1e-9) * step}
	decimals := max(0, int(math.Ceil(-math.Log10(step)-1e-9)))
	for i := 0; ; i++ {
		at := a.Min + float64(i)*step
		if at > a.Max+step/2 {
			return a
		}
		a.Ticks = append(a.Ticks, Tick{At: at, Text: c.Number(at, decimals)})
	}
}

// roundStep is the next of 1, 2, 5, 10… times a power of ten.
func roundStep(x float64) float64 {
	p := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if x <= m*p*1.0001 {
			return m * p
		}
	}
	return 10 * p
}

// thin keeps at most n points of two parallel slices, evenly, with both ends.
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
