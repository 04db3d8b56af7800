package view

import (
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// System is a system of units.
type System int

// The systems of units.
const (
	Metric System = iota
	Imperial
)

// Fuel is how consumption is told.
type Fuel int

// The ways to tell consumption.
const (
	LitresPer100Km Fuel = iota
	MilesPerGallonUS
	MilesPerGallonImp
)

// Watts is how power is told.
type Watts int

// The ways to tell power. A horsepower is that of the language: 550 ft·lbf/s in
// English, 75 kp·m/s in German.
const (
	Kilowatts Watts = iota
	Horsepower
)

// FuelFor is what riders of a region use who ride by that system: miles per
// gallon of their own where they sell, or speak of, fuel by it.
func FuelFor(region string, s System) Fuel {
	switch {
	case s == Imperial && region == "US":
		return MilesPerGallonUS
	case s == Imperial && region == "GB":
		return MilesPerGallonImp
	}
	return LitresPer100Km
}

// powerUnit is the unit of power and how many W it has.
func (c Context) powerUnit() (name string, watts float64) {
	if c.PowerUnit == Horsepower {
		return c.Book.Horsepower, c.Book.HorsepowerWatts
	}
	return "kW", units.Kilowatt
}

// powerReading writes a power of p W.
func (c Context) powerReading(p measure.Value, most int) Reading {
	unit, watts := c.powerUnit()
	return c.reading(p.X/watts, half(p)/watts, unit, most)
}

// forceUnit is the unit of force and how many N it has.
func (c Context) forceUnit() (name string, newtons float64) {
	if c.System == Imperial {
		return "lbf", units.PoundForce
	}
	return "N", 1
}

// litrePer100Km in m³ per metre.
const litrePer100Km = units.Litre / 1e5

// FuelQuantity is consumption, kept in l/100 km.
func (c Context) FuelQuantity() Quantity {
	q := Quantity{Unit: "l/100 km", SI: 1, Low: 0.6, High: 29, Decimals: 2}
	if gallon := c.gallon(); gallon > 0 {
		q.Unit, q.Decimals = "mpg", 1
		q.Over = gallon / units.Mile / litrePer100Km
	}
	return q
}

// gallon is the rider's, m³; 0 where consumption is told in litres.
func (c Context) gallon() float64 {
	switch c.FuelUnit {
	case MilesPerGallonUS:
		return units.GallonUS
	case MilesPerGallonImp:
		return units.GallonImp
	}
	return 0
}

// TankQuantity is what a tank holds, kept in litres. Where fuel is sold by the
// litre, as in Britain too, tanks are told in litres.
func (c Context) TankQuantity() Quantity {
	if c.FuelUnit == MilesPerGallonUS {
		return Quantity{Unit: "gal", SI: units.GallonUS / units.Litre, Low: 1, High: 100, Decimals: 2}
	}
	return Quantity{Unit: "l", SI: 1, Low: 1, High: 100, Decimals: 1}
}

// fuelChange is how much consumption changes from before to after, m³ per
// metre, where more is the difference with its uncertainty.
func (c Context) fuelChange(before float64, after, more measure.Value) Reading {
	gallon := c.gallon()
	if gallon == 0 {
		return c.signed(more.Times(1/litrePer100Km), "l/100 km", 2)
	}
	far := func(perMetre float64) float64 { return gallon / units.Mile / perMetre }
	return c.signed(measure.Value{X: far(after.X) - far(before), SE: far(after.X) / after.X * more.SE}, "mpg", 1)
}
