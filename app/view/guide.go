package view

import (
	"math"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/sensors/units"
)

// exactRoll is the textbook coast-down in still air on a level road: with
// dv/dt = −(a + c·v²), v = √(a/c)·tan(atan(v₀·√(c/a)) − t·√(a·c)).
func exactRoll(v0, a, c, t float64) float64 {
	return max(0, math.Sqrt(a/c)*math.Tan(math.Atan(v0*math.Sqrt(c/a))-t*math.Sqrt(a*c)))
}

// The invented bike of the guide's pictures, in m/s² and 1/m.
const (
	guideRoll = 0.18
	guideAir  = 0.00115
)

func (c Context) guidePlot(curves ...Line) Plot {
	v0 := c.reference()
	p := Plot{Spoken: c.Book.Guide.What, Lines: curves}
	p.X = c.axisOf(c.Book.Run.TimeAxis, 0, 50, 5)
	p.Y = c.axisOf(c.axisName(axisSpeed, c.SpeedUnit()), 0, c.Speed(v0), 5)
	return p
}

func (c Context) rollLine(slope float64) Line {
	var l Line
	v0 := 100 * units.KMH
	if c.System == shown.Imperial {
		v0 = c.reference()
	}
	for t := 0.0; t <= 50; t += 0.5 {
		v := exactRoll(v0, guideRoll+slope, guideAir, t)
		if v < 3 {
			break
		}
		l.X, l.Y = append(l.X, t), append(l.Y, c.Speed(v))
	}
	return l
}

// GuideCurve is the picture of a coast-down: where air drag dominates, and where the
// tyres do.
func (c Context) GuideCurve() Plot {
	l := c.rollLine(0)
	p := c.guidePlot(l)
	mark := func(t float64, text string) {
		if y, ok := at(l.X, l.Y, t); ok {
			p.Marks = append(p.Marks, PlotMark{X: t, Y: y, Text: text, Above: true})
		}
	}
	mark(5, c.Book.Guide.PictureAir)
	mark(36, c.Book.Guide.PictureRoll)
	return p
}

// GuideBothWays is the picture of coast-downs both ways on a road with half a
// per cent of slope.
func (c Context) GuideBothWays() Plot {
	const slope = 0.005 * units.StandardGravity
	there, back := c.rollLine(-slope), c.rollLine(slope)
	there.Name, back.Name, back.Tone, back.Dash = c.Book.Guide.PictureThere, c.Book.Guide.PictureBack, 1, plot.Dashed
	return c.guidePlot(there, back)
}
