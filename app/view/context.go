// Package view turns what the app knows into what its screens show: words,
// numbers with units, symbols by name, plots. It draws nothing and touches no
// device, so that every screen's content can be checked as plain values.
package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"stillair/app/text"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Context is what every view needs: the language and the units.
type Context struct {
	Book      *text.Book
	System    System
	FuelUnit  Fuel
	PowerUnit Watts
}

// Number writes x with so many decimals, in the language's way.
func (c Context) Number(x float64, decimals int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	s = strings.Replace(s, ".", c.Book.Decimal, 1)
	return strings.Replace(s, "-", "−", 1)
}

// perSpeed is how many m/s one unit of speed has.
func (c Context) perSpeed() float64 {
	if c.System == Imperial {
		return units.MPH
	}
	return units.KMH
}

// SpeedUnit is "km/h" or "mph".
func (c Context) SpeedUnit() string {
	if c.System == Imperial {
		return "mph"
	}
	return "km/h"
}

// Speed gives a speed of v m/s in the unit of SpeedUnit.
func (c Context) Speed(v float64) float64 { return v / c.perSpeed() }

// SpeedText is a speed without its unit.
func (c Context) SpeedText(v float64) string { return c.Number(c.Speed(v), 0) }

// Mass is a mass with its unit.
func (c Context) Mass(kg float64) string {
	if math.IsNaN(kg) {
		return c.Book.Common.Unknown
	}
	if c.System == Imperial {
		return c.Number(kg/units.Pound, 0) + " lb"
	}
	return c.Number(kg, 0) + " kg"
}

// Length is a length of metres with a fitting unit.
func (c Context) Length(m float64) string {
	switch {
	case c.System == Imperial && m < 0.2*units.Mile:
		return c.Number(m/units.Foot, 0) + " ft"
	case c.System == Imperial:
		return c.Number(m/units.Mile, 1) + " mi"
	case m < 300:
		return c.Number(m, 0) + " m"
	}
	return c.Number(m/1000, 1) + " km"
}

// Duration is a time in minutes, or hours and minutes.
func (c Context) Duration(seconds float64) string {
	minutes := int(math.Round(seconds / 60))
	switch {
	case math.IsNaN(seconds):
		return c.Book.Common.Unknown
	case seconds < 90:
		return fmt.Sprintf(c.Book.Common.Seconds, c.Number(seconds, 0))
	case minutes < 120:
		return fmt.Sprintf(c.Book.Common.Minutes, minutes)
	}
	return fmt.Sprintf(c.Book.Common.Hours, minutes/60, minutes%60)
}

// Date is a date with the time of day, in the language's way.
func (c Context) Date(t time.Time) string {
	layout := strings.NewReplacer("Mon", "\x01", "Jan", "\x02").Replace(c.Book.DateTime)
	return strings.NewReplacer("\x01", c.Book.Days[t.Weekday()], "\x02", c.Book.Months[t.Month()-1]).Replace(t.Format(layout))
}

// half is half the width of the 95 % interval of a value with a normal error.
func half(v measure.Value) float64 { return measure.Quantile(0.95, math.Inf(1)) * v.SE }

// reading writes a value with its half width, to the digits that the half
// width allows: two of its own where it begins with a one or two, else one
// (after JCGM 100:2008, 7.2.6).
func (c Context) reading(x, halfWidth float64, unit string, most int) Reading {
	d := most
	if halfWidth > 0 && !math.IsInf(halfWidth, 0) {
		e := math.Floor(math.Log10(halfWidth))
		d = int(-e)
		if halfWidth/math.Pow(10, e) < 2.95 {
			d++
		}
		d = min(max(d, 0), most)
	}
	r := Reading{Number: c.Number(x, d), Unit: unit}
	if halfWidth > 0 {
		up := math.Ceil(halfWidth*math.Pow(10, float64(d))-1e-9) / math.Pow(10, float64(d))
		r.Spread = c.Number(up, d)
	}
	return r
}
