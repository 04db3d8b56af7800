package figure

import (
	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/runs/worth"
)

// Force draws the force that a setup needs at a steady speed on a level road
// without wind, and which part the tyres and the air take.
func Force(l worth.Load, setup string, fastest float64, units shown.System) Figure {
	return shares(l, shown.Force, func(v float64) float64 { return 1 }, "force", setup, fastest, units)
}

// Power draws the same as power at the tyre.
func Power(l worth.Load, setup string, fastest float64, units shown.System) Figure {
	return shares(l, shown.Power, func(v float64) float64 { return v }, "power", setup, fastest, units)
}

// shares draws the stacked parts of force × per(v), with the 95 % band of the whole.
func shares(l worth.Load, q shown.Quantity, per func(v float64) float64, what, setup string, fastest float64, units shown.System) Figure {
	if l.Check() != nil || !(fastest > 0) {
		return Figure{}
	}
	speed, unit := units.First(shown.Speed), units.First(q)
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
	p := &plot.Plot{X: plot.Axis{Label: "steady speed, " + speed.Name}, Y: plot.Axis{Label: what + ", " + unit.Name, Max: high[steps]},
		Bands: []plot.Band{{X: x, Low: zero, High: tyres, Tone: 3, Full: true}, {X: x, Low: tyres, High: whole, Tone: 0, Full: true}},
		Lines: []plot.Line{{X: x, Y: tyres, Tone: plot.Ink, Dash: plot.Thin}, {X: x, Y: low, Tone: plot.Ink, Dash: plot.Helper},
			{X: x, Y: high, Tone: plot.Ink, Dash: plot.Helper}, {X: x, Y: whole, Tone: plot.Ink}},
		Marks: []plot.Mark{{X: x[mid], Y: (tyres[mid] + whole[mid]) / 2, Words: true, Text: "air"}, {X: x[mid], Y: tyres[mid] / 2, Words: true, Text: "tyres"}}}
	caption := "Steady " + what + " on a level road without wind: what the tyres take and what the air takes on top. Dashed: the 95 % band of the whole."
	return Draw(p, Narrow.width, 250, what+", "+setup, caption)
}
