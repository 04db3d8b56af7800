// Package plot is the one model of a plot: axes, lines, bands, dots, bars and
// words, in the units that the labels say. It has two pens: SVG, here, for
// reports, and the raster of the phone's screens, in app/screens/kit. A plot
// that both draw is made once.
//
// Tones are by number so that each pen has its own colours for them. The SVG
// takes those of Okabe and Ito, Color Universal Design (2002, revised 2008,
// jfly.uni-koeln.de/color), which people of every kind of colour vision tell
// apart, as CSS variables: one picture serves light and dark pages and paper.
// Nothing is shown by colour alone; dashes, shapes, places or words say the same.
package plot

import "math"

// Plot is a drawing over two axes.
type Plot struct {
	X, Y   Axis
	Lines  []Line
	Bands  []Band
	Dots   []Dots
	Bars   []Bar
	Marks  []Mark
	Low    bool   // the legend is at the bottom, because the top is occupied
	Spoken string // read by a screen reader instead
}

// Axis is one axis: its range and its labels.
type Axis struct {
	Label    string
	Min, Max float64
	Ticks    []Tick
}

// Tick is one number on an axis. Without text it is a line alone.
type Tick struct {
	At   float64
	Text string
}

// Tone is a colour by number: those from 0 on distinguish series.
type Tone int

// Tones that are not for telling apart.
const (
	Ink  Tone = -1 - iota // as text
	Soft                  // for secondary text
)

// Tones is how many there are for telling apart.
const Tones = 5

// Dash is the style of a line, so that lines differ in more than colour.
type Dash int

// The ways to draw a line.
const (
	Solid Dash = iota
	Dashed
	Dotted
	Thin
	Helper // thin and dashed
)

// Line is one curve. X and Y are parallel.
type Line struct {
	Name string // for the legend; empty: not in it
	X, Y []float64
	Tone Tone
	Dash Dash
}

// Band is the area between two curves. The slices are parallel.
type Band struct {
	X, Low, High []float64
	Tone         Tone
	Full         bool // a quantity of its own, not the uncertainty of a line
}

// Dots are points of one kind. X and Y are parallel.
type Dots struct {
	Name     string // for the legend; empty: not in it
	X, Y     []float64
	Tone     Tone
	Triangle bool
	Large    bool
}

// Bar is a stretch along x at a height, of a fixed thickness.
type Bar struct {
	From, To, Y float64
	Tone        Tone
	Hollow      bool
}

// Mark is a labelled point.
type Mark struct {
	X, Y  float64
	Above bool // the label is above the point, not below
	Left  bool // the label ends at the point rather than beginning there
	Words bool // a label without a point, centred at the place, in bold
	Text  string
}

// Number writes a number with so many decimals, as a language does.
type Number func(x float64, decimals int) string

// Ticks are round numbers from low to high, about n of them, at 1, 2 or 5
// times a power of ten; text writes one with so many decimals.
func Ticks(low, high float64, n int, text Number) []Tick {
	span := high - low
	if !(span > 0) || math.IsInf(span, 0) {
		return nil
	}
	step := RoundStep(span / float64(n))
	decimals := max(0, -int(math.Floor(math.Log10(step)+1e-9)))
	var out []Tick
	for k := math.Ceil(low/step - 1e-9); k*step <= high+1e-9*span; k++ {
		out = append(out, Tick{At: k * step, Text: text(k*step, decimals)})
	}
	return out
}

// RoundStep is the least of 1, 2, 5, 10… times a power of ten that is not less
// than x.
func RoundStep(x float64) float64 {
	unit := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if m*unit >= x*(1-1e-4) {
			return m * unit
		}
	}
	return 10 * unit
}

// Reach widens the axes that have no range yet to what is drawn.
func (p *Plot) Reach() {
	x, y := empty(), empty()
	for _, l := range p.Lines {
		x.hold(l.X)
		y.hold(l.Y)
	}
	for _, b := range p.Bands {
		x.hold(b.X)
		y.hold(b.Low)
		y.hold(b.High)
	}
	for _, d := range p.Dots {
		x.hold(d.X)
		y.hold(d.Y)
	}
	x.give(&p.X)
	y.give(&p.Y)
}

type extent struct{ low, high float64 }

func empty() extent { return extent{math.Inf(1), math.Inf(-1)} }

func (e *extent) hold(values []float64) {
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			e.low, e.high = math.Min(e.low, v), math.Max(e.high, v)
		}
	}
}

func (e extent) give(a *Axis) {
	switch {
	case a.Max > a.Min || e.low > e.high:
	case e.low == e.high:
		a.Min, a.Max = e.low-1, e.high+1
	default:
		a.Min, a.Max = e.low, e.high
	}
}
