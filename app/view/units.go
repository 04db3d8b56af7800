package view

import (
	"stillair/export/shown"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// litrePer100Km in m³ per metre.
const litrePer100Km = units.Litre / 1e5

// FuelQuantity is consumption, stored in l/100 km.
func (c Context) FuelQuantity() Quantity {
	q := Quantity{Unit: "l/100 km", SI: 1, Low: 0.6, High: 29, Decimals: 2}
	if gallon := c.FuelUnit.Gallon(); gallon > 0 {
		q.Unit, q.Decimals = "mpg", 1
		q.Over = gallon / units.Mile / litrePer100Km
	}
	return q
}

// TankQuantity is the capacity of a tank, stored in litres. It is shown in
// litres wherever fuel is sold by the litre, including Britain.
func (c Context) TankQuantity() Quantity {
	if c.FuelUnit == shown.MilesPerGallonUS {
		return Quantity{Unit: "gal", SI: units.GallonUS / units.Litre, Low: 1, High: 100, Decimals: 2}
	}
	return Quantity{Unit: "l", SI: 1, Low: 1, High: 100, Decimals: 1}
}

// PressureQuantity is the pressure of the air in hPa or inHg, stored in hPa.
func (c Context) PressureQuantity() Quantity {
	if c.System == shown.Imperial {
		return Quantity{Unit: "inHg", SI: units.MercuryInch / units.Hectopascal, Low: 500, High: 1100, Decimals: 2}
	}
	return Quantity{Unit: "hPa", SI: 1, Low: 500, High: 1100, Decimals: 1}
}

// airPressure writes a pressure of the air with its unit.
func (c Context) airPressure(pascal float64) string {
	if c.System == shown.Imperial {
		return c.style().Number(shown.Pressure, pascal, 2)
	}
	return c.style().Number(shown.Pressure, pascal, 0)
}

// WindQuantity is a wind speed in m/s or mph, stored in m/s.
func (c Context) WindQuantity() Quantity {
	u := c.style().Unit(shown.Wind)
	return Quantity{Unit: u.Name, SI: u.SI, Low: 0.1, High: 10, Decimals: 1}
}

// StationQuantity is the wind speed at a weather station, CompassQuantity its
// direction.
func (c Context) StationQuantity() Quantity {
	q := c.WindQuantity()
	q.Low, q.High = 0, 60
	return q
}

// CompassQuantity is a direction in degrees clockwise from north.
func (c Context) CompassQuantity() Quantity { return Quantity{Unit: "°", SI: 1, High: 360} }

// windText writes a wind with its unit.
func (c Context) windText(v float64) string { return c.style().Number(shown.Wind, v, 1) }

// fuelChange is the change of consumption from before to after, m³ per metre;
// more is the difference with its uncertainty.
func (c Context) fuelChange(before float64, after, more measure.Value) Reading {
	gallon := c.FuelUnit.Gallon()
	if gallon == 0 {
		litres := shown.Unit{Name: "l/100 km", SI: litrePer100Km}
		return c.signed(shown.Quantity{Metric: litres, Imperial: litres}, more)
	}
	far := func(perMetre float64) float64 { return gallon / units.Mile / perMetre }
	miles := shown.Unit{Name: "mpg", SI: 1}
	return c.signed(shown.Quantity{Metric: miles, Imperial: miles},
		measure.Value{X: far(after.X) - far(before), SE: far(after.X) / after.X * more.SE})
}
