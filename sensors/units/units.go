// Package units holds the factors between SI units, in which everything is
// computed, and the units of riders and files. A quantity in SI is divided by
// its unit to be shown in it: v/units.KMH is v in km/h.
//
// Values: NIST Special Publication 811 (2008), appendix B, where the inch, the
// mile, the pound and gₙ are exact; derived units are computed from them.
package units

import "math"

// Speed, in m/s.
const (
	KMH = 1 / 3.6
	MPH = Mile / 3600
)

// Length, in m.
const (
	Inch = 0.0254
	Foot = 12 * Inch
	Mile = 5280 * Foot
)

// Mass in kg and force in N.
const (
	Pound      = 0.45359237
	PoundForce = Pound * StandardGravity
	Kilopond   = StandardGravity
)

// StandardGravity is the conventional gₙ, m/s². For the gravity at a latitude
// see air.Gravity.
const StandardGravity = 9.80665

// Power, in W.
const (
	Kilowatt         = 1000
	Horsepower       = 550 * Foot * PoundForce // 550 ft·lbf/s
	MetricHorsepower = 75 * Kilopond           // 75 kp·m/s
)

// Pressure, in Pa.
const (
	Hectopascal = 100
	Kilopascal  = 1000
	Bar         = 1e5
	Atmosphere  = 101325
	MercuryMM   = 133.322387415 // conventional millimetre of mercury
	MercuryInch = 3386.389      // conventional inch of mercury
	PSI         = PoundForce / (Inch * Inch)
)

// Angle, in rad, and turning speed, in rad/s.
const (
	Degree = math.Pi / 180
	RPM    = 2 * math.Pi / 60
)

// Volume, in m³.
const (
	Litre       = 1e-3
	GallonUS    = 231 * Inch * Inch * Inch
	GallonImp   = 4.54609e-3
	CubicInch   = Inch * Inch * Inch
	CubicCentim = 1e-6
)

// ZeroCelsius is 0 °C in K.
const ZeroCelsius = 273.15
