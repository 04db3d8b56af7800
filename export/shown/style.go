package shown

import (
	"strings"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// Language is a BCP 47 tag of a language that people read here.
type Language string

// The languages.
const (
	English Language = "en"
	German  Language = "de"
)

// Languages lists them, English first.
func Languages() []Language { return []Language{English, German} }

// Style is how a person reads: which language, and which units. The zero value
// is metric.
type Style struct {
	System   System
	Language Language
	Power    PowerUnit // "": that of the system
	Fuel     FuelUnit  // "": litres per 100 km
}

// PowerUnit is how power is shown.
type PowerUnit string

// The units of power. A horsepower is that of the language: 550 ft·lbf/s in
// English, 75 kp·m/s in German.
const (
	Kilowatts  PowerUnit = "kW"
	Horsepower PowerUnit = "hp"
)

// in is the quantity in the units of the style.
func (s Style) in(q Quantity) Quantity {
	hp := Unit{"hp", units.Horsepower}
	if s.Language == German {
		hp = Unit{"PS", units.MetricHorsepower}
	}
	switch {
	case q == Power && s.Power == Horsepower:
		return Quantity{hp, hp}
	case q == Power && s.Power == Kilowatts:
		return Quantity{q.Metric, q.Metric}
	case q == Power:
		return Quantity{q.Metric, hp}
	case q == EngineSpeed && s.Language == German:
		return Quantity{Unit{"1/min", 1}, Unit{"1/min", 1}}
	}
	return q
}

// Unit is the unit that the style puts first.
func (s Style) Unit(q Quantity) Unit { return s.System.First(s.in(q)) }

// Fixed is x with the decimals, in the language's way.
func (s Style) Fixed(x float64, decimals int) string { return s.point(Fixed(x, decimals)) }

// Number is x, in SI, with the decimals in each unit of the style.
func (s Style) Number(q Quantity, x float64, decimals int) string {
	return s.point(s.System.Number(s.in(q), x, decimals))
}

// PlusMinus is x ± half, both in SI, in each unit of the style.
func (s Style) PlusMinus(q Quantity, x, half float64) string {
	return s.point(s.System.PlusMinus(s.in(q), x, half))
}

// Plain is x ± half of a number in a unit that no style changes.
func (s Style) Plain(x, half float64) string { return s.point(PlusMinus(x, half)) }

// Parts is the number, its ± and the unit that the style puts first, apart.
func (s Style) Parts(q Quantity, x, half float64) (number, spread, unit string) {
	u := s.Unit(q)
	number, spread = Parts(x/u.SI, half/u.SI)
	return s.point(number), s.point(spread), u.Name
}

// quantityOf is the unit of a finding's number in either system, and the
// decimals in which it is shown where the text asks for none.
func quantityOf(q finding.Quantity) (Quantity, int) {
	one := func(name string, si float64) Quantity { return Quantity{Unit{name, si}, Unit{name, si}} }
	switch q {
	case finding.OfShare:
		return one("%", 0.01), 0
	case finding.OfSpeed:
		return Speed, 0
	case finding.OfWind:
		return Wind, 1
	case finding.OfAcceleration:
		return Accel, 1
	case finding.OfTime, finding.OfMoment:
		return Time, 1
	case finding.OfDistance:
		return Distance, 0
	case finding.OfMass:
		return Mass, 0
	case finding.OfForce:
		return Force, 0
	case finding.OfPower:
		return Power, 1
	case finding.OfArea:
		return Area, 3
	case finding.OfPressure:
		return Pressure, 0
	case finding.OfTemperature:
		return one("°C", 1), 0
	case finding.OfAngle:
		return one("°", units.Degree), 0
	case finding.OfRate:
		return one("Hz", 1), 0
	case finding.OfTurnRate:
		return one("rad/s", 1), 1
	case finding.OfEngineSpeed:
		return EngineSpeed, 0
	case finding.OfSize:
		return one("KiB", 1024), 0
	case finding.OfDensity:
		return one("kg/m³", 1), 3
	}
	return one("", 1), 0
}

// Argument shows the number of an argument; decimals below zero leave the
// digits to its quantity. Without its unit only the first system's number
// stands, as before "to" in "60 to 100 km/h".
func (s Style) Argument(a finding.Arg, decimals int, bare bool) string {
	q, usual := quantityOf(a.Quantity)
	place := func(u Unit) int {
		switch {
		case decimals >= 0:
			return decimals
		case u == Pressure.Imperial: // 0.01 inHg is a third of a hPa
			return usual + 2
		}
		return usual
	}
	switch {
	case a.Quantity == finding.OfTemperature:
		return s.Temperature(a.X, place(q.Metric))
	case bare:
		u := s.Unit(q)
		return s.Fixed(a.X/u.SI, place(u))
	case !finite(a.X):
		return "–"
	}
	return s.point(s.System.in(s.in(q), func(u Unit) string {
		return strings.TrimSuffix(Fixed(a.X/u.SI, place(u))+" "+u.Name, " ")
	}))
}

// Temperature shows a temperature of celsius °C.
func (s Style) Temperature(celsius float64, decimals int) string {
	metric, imperial := s.Fixed(celsius, decimals)+" °C", s.Fixed(celsius*9/5+32, decimals)+" °F"
	switch s.System {
	case Imperial:
		return imperial
	case Both:
		return metric + " (" + imperial + ")"
	}
	return metric
}

// ArgumentBand shows the number of an argument with half of its 95 % interval.
func (s Style) ArgumentBand(a finding.Arg) string {
	q, _ := quantityOf(a.Quantity)
	return strings.TrimSuffix(s.PlusMinus(q, a.X, Normal95*a.SE), " ")
}

// point writes a number's decimal sign as the language does.
func (s Style) point(number string) string {
	if s.Language == German {
		return strings.ReplaceAll(number, ".", ",")
	}
	return number
}
