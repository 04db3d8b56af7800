package figure

import (
	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs/effect"
	"stillair/sensors/finding"
)

// Force draws the force that a setup needs at a steady speed on a level road
// without wind, and which parts are rolling resistance and air drag.
func Force(l effect.Load, setup string, fastest float64, b *words.Book) Figure {
	return shares(l, shown.Force, func(v float64) float64 { return 1 }, "figure.force", setup, fastest, b)
}

// Power draws the same as power at the tyre.
func Power(l effect.Load, setup string, fastest float64, b *words.Book) Figure {
	return shares(l, shown.Power, func(v float64) float64 { return v }, "figure.needed", setup, fastest, b)
}

// shares draws the stacked parts of force × per(v), with the 95 % band of the whole.
func shares(l effect.Load, q shown.Quantity, per func(v float64) float64, what finding.Code, setup string, fastest float64, b *words.Book) Figure {
	if l.Check() != nil || !(fastest > 0) {
		return Figure{}
	}
	speed, unit := b.Style.Unit(shown.Speed), b.Style.Unit(q)
	const steps = 60
	n := steps + 1
	x, zero, tyres, whole, low, high := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range n {
		v := fastest * float64(i) / steps
		k := per(v) / unit.SI
		f := l.Force(v)
		x[i], tyres[i], whole[i] = v/speed.SI, f.X*(1-l.AirShare(v))*k, f.X*k
		low[i], high[i] = (f.X-shown.Normal95*f.SE)*k, (f.X+shown.Normal95*f.SE)*k
	}
	mid := steps * 19 / 20
	p := &plot.Plot{X: plot.Axis{Label: labelOf(b, "figure.steady_speed", speed.Name)}, Y: plot.Axis{Label: labelOf(b, what+"_axis", unit.Name), Max: high[steps]},
		Bands: []plot.Band{{X: x, Low: zero, High: tyres, Tone: 3, Full: true}, {X: x, Low: tyres, High: whole, Tone: 0, Full: true}},
		Lines: []plot.Line{{X: x, Y: tyres, Tone: plot.Ink, Dash: plot.Thin}, {X: x, Y: low, Tone: plot.Ink, Dash: plot.Helper},
			{X: x, Y: high, Tone: plot.Ink, Dash: plot.Helper}, {X: x, Y: whole, Tone: plot.Ink}},
		Marks: []plot.Mark{{X: x[mid], Y: (tyres[mid] + whole[mid]) / 2, Words: true, Text: b.Name("figure.air")}, {X: x[mid], Y: tyres[mid] / 2, Words: true, Text: b.Name("figure.tyres")}}}
	return DrawIn(b.Style, p, Narrow.width, 250, b.Say(finding.New(what, finding.Text("setup", setup))), b.Name(what+"_caption"))
}
