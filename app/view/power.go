package view

import (
	"fmt"
	"math"
	"slices"

	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Standard is the standard whose reference air power is stated for.
type Standard int

// The standards.
const (
	AsRidden Standard = iota
	SAEJ1349
	ISO1585
)

// Power is the screen of the power at the road of every setup, in one plot.
type Power struct {
	Plot  Plot
	Peaks []PowerPeak
	Notes []string
	Gears bool // engine speed is known, so that it can be the x axis
}

// PowerPeak is the highest point of one curve.
type PowerPeak struct {
	Name    string
	Reading Reading
	Where   string
	AtEnd   string // empty: the peak is inside the pulls
	Notes   []string
}

// Power makes the screen of power at the road.
func (c Context) Power(res *runs.Result, std Standard, overRPM bool) Power {
	v := Power{Gears: allGeared(res.Powers)}
	factor, words := c.correction(res, std)
	v.Plot = c.powerPlot(res.Powers, factor, overRPM && v.Gears)
	for _, p := range res.Powers {
		v.Peaks = append(v.Peaks, c.powerPeak(p, factor))
	}
	v.Notes = words
	if !v.Gears {
		v.Notes = append(v.Notes, c.Book.Power.NoRPM)
	}
	return v
}

func allGeared(all []runs.PowerCurve) bool {
	for _, p := range all {
		if !(p.RPMPerMPS > 0) {
			return false
		}
	}
	return len(all) > 0
}

// correction is the factor of a standard in the air of the ride, and the note
// that goes with it.
func (c Context) correction(res *runs.Result, std Standard) (float64, []string) {
	t := c.Book.Power
	a := res.Ride.Air
	dry := a.Pressure - air.VapourPressure(a.Temperature, a.Pressure, a.Humidity)
	factor := 1.0
	switch std {
	case SAEJ1349:
		factor = air.SAEJ1349(dry, a.Temperature)
	case ISO1585:
		factor = air.ISO1585(dry, a.Temperature)
	}
	if std == AsRidden || !(factor > 0) {
		return 1, []string{t.NoFactor}
	}
	words := []string{fmt.Sprintf(t.Factor, c.Number(factor, 3))}
	if !air.Vouched(factor, a.Temperature) {
		words = append(words, c.sentence(finding.New(nameFar)))
	}
	if slices.Contains(res.Defaults, "air.temperature_c") || slices.Contains(res.Defaults, "air.pressure_hpa") {
		words = append(words, t.AirAssumed)
	}
	return factor, words
}

func (c Context) powerPlot(all []runs.PowerCurve, factor float64, overRPM bool) Plot {
	t := c.Book.Power
	p := Plot{Spoken: t.Spoken}
	left, right, top := math.Inf(1), 0.0, 1.0
	for i, curve := range all {
		x := make([]float64, len(curve.Curve.Speed))
		y, low, high := make([]float64, len(x)), make([]float64, len(x)), make([]float64, len(x))
		for j, s := range curve.Curve.Speed {
			x[j] = c.Speed(s)
			if overRPM {
				x[j] = s * curve.RPMPerMPS
			}
			y[j], low[j], high[j] = c.powerPoint(curve.Curve.Power[j], factor)
			left, right, top = min(left, x[j]), max(right, x[j]), max(top, high[j])
		}
		p.Bands = append(p.Bands, Band{X: x, Low: low, High: high, Tone: plot.Tone(i)})
		line := Line{Name: c.powerName(curve), X: x, Y: y, Tone: plot.Tone(i)}
		line.Dash = [...]plot.Dash{plot.Solid, plot.Dashed, plot.Dotted}[i%3]
		p.Lines = append(p.Lines, line)
		p.Spoken += ". " + line.Name + ", " + c.powerPeak(curve, factor).Reading.Spoken()
	}
	if len(all) == 1 {
		p.Lines[0].Name = ""
	}
	label := c.axisName(axisSpeed, c.SpeedUnit())
	if overRPM {
		label = t.RPMAxis
	}
	p.X, p.Y = c.axisOf(label, left, right, 4), c.axisOf(c.axisName(axisPower, c.style().Unit(shown.Power).Name), 0, top, 5)
	return p
}

// powerPoint is a point of a curve with its 95 % band, in the rider's unit.
func (c Context) powerPoint(v measure.Value, factor float64) (y, low, high float64) {
	watts := c.style().Unit(shown.Power).SI
	y, h := factor*v.X/watts, factor*half(v)/watts
	return y, max(0, y-h), y + h
}

func (c Context) powerName(p runs.PowerCurve) string {
	t := c.Book.Power
	name, gear := p.Setup, t.GearUnknown
	if name == "" {
		name = c.say().Name(nameAsRidden)
	}
	if p.Gear != "" {
		gear = c.gear(p.Gear)
	}
	return join(", ", name, gear)
}

func (c Context) powerPeak(p runs.PowerCurve, factor float64) PowerPeak {
	t := c.Book.Power
	speed, value, atEnd := p.Curve.Peak()
	v := PowerPeak{Name: c.powerName(p), Reading: c.of(shown.Power, value.Times(factor))}
	v.Where = fmt.Sprintf(t.Peak, c.SpeedText(speed), c.SpeedUnit())
	if p.RPMPerMPS > 0 {
		rpm := math.Round(p.RPMPerMPS*speed/50) * 50
		v.Where = fmt.Sprintf(t.PeakRPM, c.SpeedText(speed), c.SpeedUnit(), c.Number(rpm, 0))
	}
	if atEnd {
		v.AtEnd = t.AtEnd
	}
	from := t.PullsOne
	if n := len(p.Curve.Pulls); n != 1 {
		from = fmt.Sprintf(t.Pulls, n)
	}
	v.Where = join(", ", v.Where, from, c.revsFrom(p.RevsFrom))
	for _, n := range p.Notes {
		v.Notes = append(v.Notes, c.sentence(n))
	}
	if p.Curve.Bandwidth > 0 {
		v.Notes = append(v.Notes, fmt.Sprintf(t.Bandwidth, c.Number(p.Curve.Bandwidth, 1)))
	}
	return v
}

// pullPower is the curve that a pull is part of; false if it has none.
func (c Context) pullPower(res *runs.Result, id int) (Plot, bool) {
	for _, p := range res.Powers {
		if p.Curve != nil && slices.Contains(p.Curve.Pulls, id) {
			return c.powerPlot([]runs.PowerCurve{p}, 1, false), true
		}
	}
	return Plot{}, false
}

// revsFrom names the source of the engine speed, if the rider did not enter it.
func (c Context) revsFrom(from runs.RevsFrom) string {
	switch from {
	case runs.FromVibration, runs.FromSound, runs.FromBoth:
		return fmt.Sprintf(c.Book.Power.RevsFrom, c.say().Name(from))
	}
	return ""
}
