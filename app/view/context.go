// Package view turns the app's data into the content of its screens: words,
// numbers with units, symbols by name, plots. It draws nothing and uses no
// device, so that every screen's content can be checked as plain values.
package view

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"time"

	"stillair/app/platform"
	"stillair/app/text"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Context is what every view needs: the language and the units.
type Context struct {
	Book      *text.Book
	System    shown.System
	FuelUnit  shown.FuelUnit
	PowerUnit shown.PowerUnit
	Machine   platform.Machine // whose settings the rider is sent to
	findings  func() *words.Book
}

// Prepared returns the context with the book of findings made once for
// everything that is shown, when the first of them is. Without it, each finding
// makes its own book.
func (c Context) Prepared() Context {
	style := c.style()
	c.findings = sync.OnceValue(func() *words.Book { return words.New(style) })
	return c
}

// say is the book that renders findings.
func (c Context) say() *words.Book {
	if c.findings != nil {
		return c.findings()
	}
	return words.New(c.style())
}

// style is the language and units of the reader.
func (c Context) style() shown.Style {
	return shown.Style{System: c.System, Language: shown.Language(c.Book.Tag), Power: c.PowerUnit, Fuel: c.FuelUnit}
}

// Number writes x with so many decimals, as the language does.
func (c Context) Number(x float64, decimals int) string { return c.style().Fixed(x, decimals) }

// perSpeed is the unit of speed in m/s.
func (c Context) perSpeed() float64 { return c.style().Unit(shown.Speed).SI }

// SpeedUnit is "km/h" or "mph".
func (c Context) SpeedUnit() string { return c.style().Unit(shown.Speed).Name }

// Speed gives a speed of v m/s in the unit of SpeedUnit.
func (c Context) Speed(v float64) float64 { return v / c.perSpeed() }

// SpeedText is a speed without its unit.
func (c Context) SpeedText(v float64) string { return c.Number(c.Speed(v), 0) }

// Mass is a mass with its unit.
func (c Context) Mass(kg float64) string {
	if math.IsNaN(kg) {
		return c.Book.Common.Unknown
	}
	return c.style().Number(shown.Mass, kg, 0)
}

// Length is a length given in metres with a fitting unit.
func (c Context) Length(m float64) string {
	if c.System == shown.Imperial && m >= 0.2*units.Mile || c.System != shown.Imperial && m >= 300 {
		return c.style().Number(shown.Journey, m, 1)
	}
	return c.style().Number(shown.Distance, m, 0)
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

// Date is a date with the time of day, as the language writes it.
func (c Context) Date(t time.Time) string {
	layout := strings.NewReplacer("Mon", "\x01", "Jan", "\x02").Replace(c.Book.DateTime)
	return strings.NewReplacer("\x01", c.Book.Days[t.Weekday()], "\x02", c.Book.Months[t.Month()-1]).Replace(t.Format(layout))
}

// half is half the width of the 95 % interval of a value with a normal error.
func half(v measure.Value) float64 { return shown.Normal95 * v.SE }

// reading writes a value given in SI with its half width, to the digits that
// the half width supports.
func (c Context) reading(q shown.Quantity, x, halfWidth float64) Reading {
	number, spread, unit := c.style().Parts(q, x, halfWidth)
	return Reading{Number: number, Spread: spread, Unit: unit}
}

// of is the reading of a value with a normal error.
func (c Context) of(q shown.Quantity, v measure.Value) Reading { return c.reading(q, v.X, half(v)) }
