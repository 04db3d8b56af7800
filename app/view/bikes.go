package view

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"stillair/app/store"
	"stillair/export/shown"
	"stillair/sensors/units"
)

// BikeRow is one bike in the list.
type BikeRow struct {
	ID, Name, Detail string
	Chosen           bool
	Setups           []SetupRow
}

// SetupRow is one setup of a bike in the list.
type SetupRow struct {
	Name, Detail string
	Chosen       bool
}

// Bikes makes the list of bikes.
func (c Context) Bikes(bikes []store.Bike, chosen, setup string) []BikeRow {
	var rows []BikeRow
	for _, b := range bikes {
		row := BikeRow{ID: b.ID, Name: b.Name, Chosen: b.ID == chosen, Detail: c.Book.Bikes.NoMass}
		if b.Mass != nil {
			row.Detail = fmt.Sprintf(c.Book.Ready.Mass, c.Mass(*b.Mass))
		}
		for _, s := range b.Setups {
			if s.Retired {
				continue
			}
			row.Setups = append(row.Setups, SetupRow{Name: s.Name, Detail: c.setupDetail(s), Chosen: row.Chosen && s.Name == setup})
		}
		rows = append(rows, row)
	}
	return rows
}

func (c Context) setupDetail(s store.Setup) string {
	mass := ""
	if s.Mass != nil {
		mass = c.Mass(*s.Mass)
	}
	return join(" · ", s.Changed, mass)
}

// A Quantity is the kind of value that a field of a form takes: its unit as
// shown, and the size of that unit in SI. Limits are in SI.
type Quantity struct {
	Unit      string
	SI        float64
	Over      float64 // if not 0, the field shows Over divided by the stored value, as for miles per gallon
	Low, High float64
	Decimals  int
}

// MassQuantity is a mass in kg or lb.
func (c Context) MassQuantity(low, high float64) Quantity {
	if c.System == shown.Imperial {
		return Quantity{Unit: "lb", SI: units.Pound, Low: low, High: high, Decimals: 1}
	}
	return Quantity{Unit: "kg", SI: 1, Low: low, High: high, Decimals: 1}
}

// TyreQuantity is a gauge pressure in bar or psi, kept in kPa.
func (c Context) TyreQuantity() Quantity {
	if c.System == shown.Imperial {
		return Quantity{Unit: "psi", SI: units.PSI / units.Kilopascal, High: 600, Decimals: 1}
	}
	return Quantity{Unit: "bar", SI: units.Bar / units.Kilopascal, High: 600, Decimals: 2}
}

// GearQuantity is engine speed at the reference speed, stored per m/s.
func (c Context) GearQuantity() Quantity {
	return Quantity{SI: 1 / c.reference(), Low: 20, High: 2000}
}

// LimitQuantity is the highest speed of an engine.
func (c Context) LimitQuantity() Quantity {
	return Quantity{Unit: c.Book.Parts.RPM, SI: 1, Low: 1000, High: 25000}
}

// GearLabel says at which road speed to enter the engine speed.
func (c Context) GearLabel() string {
	return fmt.Sprintf(c.Book.Bikes.GearSpeed, c.SpeedText(c.reference()), c.SpeedUnit())
}

// TemperatureQuantity is in °C or °F; Fahrenheit has an offset that Read and
// Write know.
func (c Context) TemperatureQuantity() Quantity {
	if c.System == shown.Imperial {
		return Quantity{Unit: "°F", SI: 5.0 / 9, Low: -40, High: 55, Decimals: 0}
	}
	return Quantity{Unit: "°C", SI: 1, Low: -40, High: 55, Decimals: 1}
}

func (q Quantity) offset() float64 {
	if q.Unit == "°F" {
		return 32
	}
	return 0
}

// shown converts a stored value for the screen.
func (q Quantity) shown(x float64) float64 {
	if q.Over > 0 {
		return q.Over / x
	}
	return x/q.SI + q.offset()
}

// kept converts a value on the screen for storage.
func (q Quantity) kept(y float64) float64 {
	if q.Over > 0 {
		return q.Over / y
	}
	return (y - q.offset()) * q.SI
}

// Write is the text of a stored value; empty if there is none.
func (c Context) Write(p *float64, q Quantity) string {
	if p == nil {
		return ""
	}
	s := strconv.FormatFloat(q.shown(*p), 'f', q.Decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return strings.Replace(s, ".", c.Number(0.5, 1)[1:2], 1)
}

// ErrNotNumber and ErrOutOfRange are the errors of Read.
var (
	ErrNotNumber  = errors.New("not a number")
	ErrOutOfRange = errors.New("out of range")
)

// Read parses what was typed; nil if that is empty. Both decimal signs are accepted.
func (c Context) Read(typed string, q Quantity) (*float64, error) {
	s := strings.Replace(strings.TrimSpace(typed), ",", ".", 1)
	if s == "" {
		return nil, nil
	}
	x, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return nil, ErrNotNumber
	}
	x = q.kept(x)
	if x < q.Low || x > q.High {
		return nil, ErrOutOfRange
	}
	return &x, nil
}

// Fault says what is wrong with what was typed.
func (c Context) Fault(err error, q Quantity) string {
	switch {
	case errors.Is(err, ErrOutOfRange):
		low, high := q.shown(q.Low), q.shown(q.High)
		unit := q.Unit
		if unit != "" {
			unit = " " + unit
		}
		return fmt.Sprintf(c.Book.Bikes.OutOfRange, c.Number(min(low, high), 0), c.Number(max(low, high), 0)+unit)
	case err != nil:
		return c.Book.Bikes.NotNumber
	}
	return ""
}
