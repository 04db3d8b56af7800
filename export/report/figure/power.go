package figure

import (
	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors/finding"
)

// dashes distinguish curves in addition to their tones.
var dashes = [...]plot.Dash{plot.Solid, plot.Dashed, plot.Dotted, plot.Helper, plot.Thin}

// PowerName names a power curve: its setup and gear.
func PowerName(b *words.Book, p runs.PowerCurve) string {
	name := p.Setup
	if p.Gear != "" {
		if name != "" {
			name += ", "
		}
		name += b.Say(finding.New("report.gear", finding.Text("gear", p.Gear)))
	}
	if name == "" {
		return b.Name("report.as_ridden")
	}
	return name
}

// Powers draws the power at the road over speed with its 95 % band, one curve
// for each setup and gear.
func Powers(all []runs.PowerCurve, b *words.Book) Figure {
	speed, unit := b.Style.Unit(shown.Speed), b.Style.Unit(shown.Power)
	p := &plot.Plot{X: plot.Axis{Label: labelOf(b, "figure.speed", speed.Name)}, Y: plot.Axis{Label: labelOf(b, "figure.power", unit.Name)}}
	top := 0.0
	for _, c := range all {
		if c.Curve == nil || len(p.Lines) == len(dashes) {
			continue
		}
		var x, middle, low, high []float64
		for i, v := range c.Curve.Speed {
			w := c.Curve.Power[i]
			if !finite(w.X) || !finite(w.SE) {
				continue
			}
			h := shown.Normal95 * w.SE
			x, middle = append(x, v/speed.SI), append(middle, w.X/unit.SI)
			low, high = append(low, (w.X-h)/unit.SI), append(high, (w.X+h)/unit.SI)
			top = max(top, (w.X+h)/unit.SI)
		}
		if len(middle) < 2 {
			continue
		}
		tone := plot.Tone(len(p.Lines))
		p.Bands = append(p.Bands, plot.Band{X: x, Low: low, High: high, Tone: tone})
		p.Lines = append(p.Lines, plot.Line{X: x, Y: middle, Tone: tone, Dash: dashes[tone]})
		at := len(middle) * 2 / 5
		name := plot.Mark{X: x[at], Y: low[at], Text: PowerName(b, c)}
		if highest(all, c) {
			name.Y, name.Left, name.Above = high[at], true, true
		}
		p.Marks = append(p.Marks, name)
	}
	if len(p.Lines) == 0 {
		return Figure{}
	}
	p.Y.Max = 1.05 * top
	return DrawIn(b.Style, p, Narrow.width, 250, b.Name("report.powers"), b.Name("figure.power_caption"))
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
