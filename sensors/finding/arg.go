package finding

import (
	"math"
	"strconv"
)

// Quantity is the physical quantity of a number. It decides the unit and the
// digits in which the number is shown; the number itself is in SI.
type Quantity string

// The quantities.
const (
	OfNumber       Quantity = "number"       // dimensionless
	OfCount        Quantity = "count"        // how many
	OfShare        Quantity = "share"        // part of a whole; 1 is 100 %
	OfSpeed        Quantity = "speed"        // of the bike, m/s
	OfWind         Quantity = "wind"         // of the air, m/s
	OfAcceleration Quantity = "acceleration" // m/s²
	OfTime         Quantity = "time"         // s
	OfMoment       Quantity = "moment"       // s on the log's clock
	OfDistance     Quantity = "distance"     // m
	OfMass         Quantity = "mass"         // kg
	OfForce        Quantity = "force"        // N
	OfPower        Quantity = "power"        // W
	OfArea         Quantity = "area"         // m²
	OfPressure     Quantity = "pressure"     // of the air, Pa
	OfTemperature  Quantity = "temperature"  // °C
	OfAngle        Quantity = "angle"        // rad
	OfRate         Quantity = "rate"         // 1/s
	OfTurnRate     Quantity = "turn rate"    // rad/s
	OfEngineSpeed  Quantity = "engine speed" // revolutions a minute
	OfSize         Quantity = "size"         // bytes
	OfDensity      Quantity = "density"      // of the air, kg/m³
	OfText         Quantity = "text"         // a name, a column, a value as in the file
	OfFinding      Quantity = "finding"      // another finding
)

// Arg is one argument of a finding.
type Arg struct {
	Name     string
	Quantity Quantity
	X        float64 // SI, if the quantity is numeric
	SE       float64 // standard uncertainty; 0: none given
	Text     string
	Finding  *Finding
}

// With adds the standard uncertainty of the number.
func (a Arg) With(se float64) Arg {
	a.SE = se
	return a
}

func (a Arg) String() string {
	switch a.Quantity {
	case OfText:
		return a.Name + "=" + strconv.Quote(a.Text)
	case OfFinding:
		return a.Name + "=(" + a.Finding.String() + ")"
	}
	s := a.Name + "=" + number(a.X)
	if a.SE > 0 {
		s += "±" + number(a.SE)
	}
	return s
}

// Equal reports whether two arguments are equal; two unknown numbers are.
func (a Arg) Equal(b Arg) bool {
	same := a.X == b.X || math.IsNaN(a.X) && math.IsNaN(b.X)
	nested := a.Finding == b.Finding || a.Finding != nil && b.Finding != nil && a.Finding.String() == b.Finding.String()
	return a.Name == b.Name && a.Quantity == b.Quantity && same && a.Text == b.Text && nested
}

// Num, Count and the rest make an argument of the quantity that they name.
func Num(name string, x float64) Arg { return Arg{Name: name, Quantity: OfNumber, X: x} }

// Count is how many.
func Count(name string, n int) Arg { return Arg{Name: name, Quantity: OfCount, X: float64(n)} }

// Share is a fraction: 1 is 100 %.
func Share(name string, x float64) Arg { return Arg{Name: name, Quantity: OfShare, X: x} }

// Speed is of the bike, in m/s.
func Speed(name string, x float64) Arg { return Arg{Name: name, Quantity: OfSpeed, X: x} }

// Wind is a speed of the air, in m/s.
func Wind(name string, x float64) Arg { return Arg{Name: name, Quantity: OfWind, X: x} }

// Acceleration is in m/s².
func Acceleration(name string, x float64) Arg {
	return Arg{Name: name, Quantity: OfAcceleration, X: x}
}

// Time is a length of time in s.
func Time(name string, x float64) Arg { return Arg{Name: name, Quantity: OfTime, X: x} }

// Moment is a time on the log's clock in s.
func Moment(name string, x float64) Arg { return Arg{Name: name, Quantity: OfMoment, X: x} }

// Distance is in m.
func Distance(name string, x float64) Arg { return Arg{Name: name, Quantity: OfDistance, X: x} }

// Mass is in kg.
func Mass(name string, x float64) Arg { return Arg{Name: name, Quantity: OfMass, X: x} }

// Force is in N.
func Force(name string, x float64) Arg { return Arg{Name: name, Quantity: OfForce, X: x} }

// Power is in W.
func Power(name string, x float64) Arg { return Arg{Name: name, Quantity: OfPower, X: x} }

// Area is in m².
func Area(name string, x float64) Arg { return Arg{Name: name, Quantity: OfArea, X: x} }

// Pressure is of the air, in Pa.
func Pressure(name string, x float64) Arg { return Arg{Name: name, Quantity: OfPressure, X: x} }

// Temperature is in °C.
func Temperature(name string, x float64) Arg { return Arg{Name: name, Quantity: OfTemperature, X: x} }

// Angle is in rad.
func Angle(name string, x float64) Arg { return Arg{Name: name, Quantity: OfAngle, X: x} }

// Rate is in 1/s.
func Rate(name string, x float64) Arg { return Arg{Name: name, Quantity: OfRate, X: x} }

// TurnRate is in rad/s.
func TurnRate(name string, x float64) Arg { return Arg{Name: name, Quantity: OfTurnRate, X: x} }

// EngineSpeed is in revolutions a minute.
func EngineSpeed(name string, x float64) Arg {
	return Arg{Name: name, Quantity: OfEngineSpeed, X: x}
}

// Size is in bytes.
func Size(name string, x float64) Arg { return Arg{Name: name, Quantity: OfSize, X: x} }

// Text is a name, a column, or a value as in the file; it is shown unchanged in
// every language.
func Text(name, s string) Arg { return Arg{Name: name, Quantity: OfText, Text: s} }

// Of is another finding, shown within this one.
func Of(name string, f Finding) Arg { return Arg{Name: name, Quantity: OfFinding, Finding: &f} }
