package figure

import (
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

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
	p := newPlot("steady speed, "+speed.Name, what+", "+unit.Name)
	const steps = 60
	var zero, tyres, whole, low, high plotter.XYs
	for i := range steps + 1 {
		v := fastest * float64(i) / steps
		k := per(v) / unit.SI
		f := l.Force(v)
		roll := f.X * (1 - l.AirShare(v))
		x := v / speed.SI
		zero = append(zero, plotter.XY{X: x})
		tyres = append(tyres, plotter.XY{X: x, Y: roll * k})
		whole = append(whole, plotter.XY{X: x, Y: f.X * k})
		low = append(low, plotter.XY{X: x, Y: (f.X - shown.Normal95*f.SE) * k})
		high = append(high, plotter.XY{X: x, Y: (f.X + shown.Normal95*f.SE) * k})
	}
	p.Add(area(zero, tyres, faint(orange, 0.55)), area(tyres, whole, faint(blue, 0.35)))
	dashed := draw.LineStyle{Color: ink, Width: 0.8, Dashes: []vg.Length{3, 2}}
	p.Add(line(tyres, draw.LineStyle{Color: ink, Width: 0.6}), line(low, dashed), line(high, dashed),
		line(whole, draw.LineStyle{Color: ink, Width: 1.4}))
	p.X.Min, p.X.Max, p.Y.Min = 0, fastest/speed.SI, 0
	style := textStyle(p, 11)
	style.Font = face(11, bold)
	style.XAlign = -1
	mid := steps * 19 / 20
	style.YAlign = -0.5
	p.Add(words{x: whole[mid].X, y: (tyres[mid].Y + whole[mid].Y) / 2, text: "air", style: style},
		words{x: tyres[mid].X, y: tyres[mid].Y / 2, text: "tyres", style: style})
	caption := "Steady " + what + " on a level road without wind: what the tyres take and what the air takes on top. Dashed: the 95 % band of the whole."
	return render([]row{{p, 1}}, vg.Length(Narrow.width), 250, what+", "+setup, caption)
}
