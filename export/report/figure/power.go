package figure

import (
	"image/color"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"stillair/export/shown"
	"stillair/runs"
)

// strokes tell curves apart by colour and dashes.
var strokes = []struct {
	colour color.NRGBA
	dashes []vg.Length
}{
	{blue, nil}, {vermillion, []vg.Length{6, 2}}, {green, []vg.Length{2, 2}}, {purple, []vg.Length{8, 2, 2, 2}}, {orange, []vg.Length{4, 4}}, {ink, []vg.Length{1, 2}},
}

// PowerName names a power curve: its setup and gear.
func PowerName(p runs.PowerCurve) string {
	name := p.Setup
	if p.Gear != "" {
		if name != "" {
			name += ", "
		}
		name += "gear " + p.Gear
	}
	if name == "" {
		return "as ridden"
	}
	return name
}

// Powers draws the power at the road over speed with its 95 % band, one curve
// for each setup and gear.
func Powers(all []runs.PowerCurve, units shown.System) Figure {
	speed, unit := units.First(shown.Speed), units.First(shown.Power)
	p := newPlot("speed, "+speed.Name, "power at the road, "+unit.Name)
	drawn := 0
	for _, c := range all {
		if c.Curve == nil || len(c.Curve.Speed) < 2 || drawn == len(strokes) {
			continue
		}
		var middle, low, high plotter.XYs
		for i, v := range c.Curve.Speed {
			w := c.Curve.Power[i]
			if !finite(w.X) || !finite(w.SE) {
				continue
			}
			x, h := v/speed.SI, shown.Normal95*w.SE
			middle = append(middle, plotter.XY{X: x, Y: w.X / unit.SI})
			low = append(low, plotter.XY{X: x, Y: (w.X - h) / unit.SI})
			high = append(high, plotter.XY{X: x, Y: (w.X + h) / unit.SI})
		}
		if len(middle) < 2 {
			continue
		}
		s := strokes[drawn]
		drawn++
		p.Add(area(low, high, faint(s.colour, 0.2)), line(middle, draw.LineStyle{Color: s.colour, Width: 1.6, Dashes: s.dashes}))
		style := textStyle(p, 9)
		at := len(middle) * 2 / 5
		name := words{x: middle[at].X, y: low[at].Y, text: PowerName(c), style: style, dx: 5, dy: -1}
		name.style.YAlign = text.YTop
		if highest(all, c) {
			name.y, name.dx, name.dy = high[at].Y, -5, 1
			name.style.XAlign, name.style.YAlign = text.XRight, text.YBottom
		}
		p.Add(name)
	}
	if drawn == 0 {
		return Figure{}
	}
	p.Y.Min = 0
	caption := "Power at the road in still air on the level, as measured on full throttle, with its 95 % band. At the crank it is more by what gearbox, chain and tyre take."
	return render([]row{{p, 1}}, vg.Length(Narrow.width), 250, "Power at the road", caption)
}

// highest reports whether no other curve is above c where c is in its middle.
func highest(all []runs.PowerCurve, c runs.PowerCurve) bool {
	i := len(c.Curve.Speed) / 2
	for _, o := range all {
		if o.Curve == nil || o.Curve == c.Curve {
			continue
		}
		for k, v := range o.Curve.Speed {
			if v >= c.Curve.Speed[i] {
				if o.Curve.Power[k].X > c.Curve.Power[i].X {
					return false
				}
				break
			}
		}
	}
	return true
}
