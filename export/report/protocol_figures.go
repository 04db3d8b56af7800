package report

import (
	"stillair/export/plot"
	"stillair/export/report/figure"
	"stillair/export/results"
	"stillair/export/shown"
)

// Size of the protocol's figures, in points.
const protocolWidth, protocolHeight = 400.0, 210.0

// road draws the road's profile, and lists it knot by knot.
func (t *teller) road(d *results.ProtocolRide) (figure.Figure, []string) {
	const percent = 0.01
	var x, y, low, high []float64
	var knots []string
	long := t.style.Unit(shown.Distance)
	for _, k := range d.Road {
		if !finite(k.At, k.Slope.X, k.Slope.SE) {
			continue
		}
		at, slope, half := *k.At/long.SI, *k.Slope.X/percent, shown.Normal95**k.Slope.SE/percent
		x, y, low, high = append(x, at), append(y, slope), append(low, slope-half), append(high, slope+half)
		knots = append(knots, t.style.Fixed(at, 0)+" "+long.Name+": "+t.style.Plain(slope, half)+" %")
	}
	if len(x) < 2 {
		return figure.Figure{}, nil
	}
	p := &plot.Plot{X: plot.Axis{Label: t.say("along")}, Y: plot.Axis{Label: t.say("slope")},
		Bands: []plot.Band{{X: x, Low: low, High: high, Tone: 0}}, Lines: []plot.Line{{X: x, Y: y, Tone: 0}}}
	return figure.DrawIn(t.style, p, protocolWidth, protocolHeight, t.say("road"), t.say("road.figure")), knots
}

// residuals draws what is left by speed and direction, and has it as a table.
func (t *teller) residuals(d *results.ProtocolRide) (figure.Figure, table) {
	speed, wind := t.style.Unit(shown.Speed), t.style.Unit(shown.Wind)
	out := table{Header: []string{t.say("speed"), t.say("pairs"), t.say("there"), t.say("back"), t.say("opposite"), t.say("alike")}}
	var x, there, back []float64
	for _, b := range d.Residuals.Bins {
		if !finite(b.From, b.To, b.Out, b.Back) {
			continue
		}
		x = append(x, (*b.From+*b.To)/2/speed.SI)
		there, back = append(there, *b.Out/wind.SI), append(back, *b.Back/wind.SI)
		out.Rows = append(out.Rows, []string{t.number(b.From, speed.SI, 0) + "–" + t.number(b.To, speed.SI, 0) + " " + speed.Name, t.style.Fixed(float64(b.Pairs), 0),
			t.signed(b.Out, wind.SI, 2), t.signed(b.Back, wind.SI, 2), t.band(b.Opposite, wind.SI), t.band(b.Alike, wind.SI) + " " + wind.Name})
	}
	if len(x) < 2 {
		return figure.Figure{}, out
	}
	p := &plot.Plot{X: plot.Axis{Label: t.say("speed") + ", " + speed.Name}, Y: plot.Axis{Label: t.say("residual") + ", " + wind.Name},
		Lines: []plot.Line{{Name: t.say("there"), X: x, Y: there, Tone: 0}, {Name: t.say("back"), X: x, Y: back, Tone: 1}},
		Dots:  []plot.Dots{{X: x, Y: there, Tone: 0}, {X: x, Y: back, Tone: 1, Triangle: true}}}
	return figure.DrawIn(t.style, p, protocolWidth, protocolHeight, t.say("residuals"), t.say("left.figure")), out
}
