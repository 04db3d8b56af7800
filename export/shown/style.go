package shown

import (
	"fmt"
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

// Style is how a person reads: which units, which language.
type Style struct {
	System   System
	Language Language
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
		return Quantity{Unit{"m/s", 1}, Unit{"mph", units.MPH}}, 1
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
		return Quantity{Unit{"hPa", units.Hectopascal}, Unit{"inHg", units.MercuryInch}}, 0
	case finding.OfTemperature:
		return one("°C", 1), 0
	case finding.OfAngle:
		return one("°", units.Degree), 0
	case finding.OfRate:
		return one("Hz", 1), 0
	case finding.OfTurnRate:
		return one("rad/s", 1), 1
	case finding.OfEngineSpeed:
		return one("rpm", 1), 0
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
	if decimals < 0 {
		decimals = usual
	}
	if a.Quantity == finding.OfTemperature && s.System != Metric {
		f := fmt.Sprintf("%s °F", Fixed(a.X*9/5+32, decimals))
		if s.System == Both {
			f = fmt.Sprintf("%s °C (%s)", Fixed(a.X, decimals), f)
		}
		return s.point(f)
	}
	if bare {
		return s.point(Fixed(a.X/s.System.First(q).SI, decimals))
	}
	return s.point(strings.TrimSuffix(s.System.Number(q, a.X, decimals), " "))
}

// ArgumentBand shows the number of an argument with half of its 95 % interval.
func (s Style) ArgumentBand(a finding.Arg) string {
	q, _ := quantityOf(a.Quantity)
	return s.point(strings.TrimSuffix(s.System.PlusMinus(q, a.X, Normal95*a.SE), " "))
}

// point writes a number's decimal sign as the language does.
func (s Style) point(number string) string {
	if s.Language == German {
		return strings.ReplaceAll(number, ".", ",")
	}
	return number
}
