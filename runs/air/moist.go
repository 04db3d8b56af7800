// Package air gives what the air and the earth do to a ride: the density of
// moist air, the standard atmosphere, the correction of power to standard
// conditions, and gravity.
package air

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/units"
)

// State is air as measured.
type State struct {
	Temperature measure.Value // °C
	Pressure    measure.Value // at the place itself, not reduced to sea level, Pa
	Humidity    measure.Value // relative, 0 to 1
}

// formulaSD is the relative standard uncertainty of the CIPM-2007 equation
// itself (Picard et al., section 3).
const formulaSD = 22e-6

// Density returns the density of the air, kg/m³, with what the uncertainty of
// temperature, pressure and humidity leave (GUM, section 5.1: first order,
// independent inputs).
func (s State) Density() measure.Value {
	at := func(dt, dp, dh float64) float64 {
		return MoistDensity(s.Temperature.X+dt, s.Pressure.X+dp, s.Humidity.X+dh)
	}
	half := func(dt, dp, dh float64) float64 { return (at(dt, dp, dh) - at(-dt, -dp, -dh)) / 2 }
	rho := at(0, 0, 0)
	return measure.Value{X: rho, SE: math.Hypot(
		math.Hypot(half(s.Temperature.SE, 0, 0), half(0, s.Pressure.SE, 0)),
		math.Hypot(half(0, 0, s.Humidity.SE), rho*formulaSD))}
}

// MoistDensity returns the density of air, kg/m³, of temperature t in °C,
// pressure p in Pa and relative humidity h from 0 to 1, with 400 µmol/mol of
// carbon dioxide: the CIPM-2007 equation, Picard, Davis, Gläser and Fujii,
// Metrologia 45 (2008) 149. It holds from 15 to 27 °C and 600 to 1100 hPa to
// 22 parts in a million; outside these temperatures it still agrees with
// handbook tables to three decimals.
func MoistDensity(t, p, h float64) float64 {
	return densityOf(t, p, vapourShare(t, p, h))
}

// DewPointDensity is MoistDensity with the humidity given by the dew point
// td, °C.
func DewPointDensity(t, p, td float64) float64 {
	return densityOf(t, p, vapourShare(td, p, 1))
}

func densityOf(t, p, xv float64) float64 {
	tk := t + units.ZeroCelsius
	return 3.483740e-3 * p / (compressibility(t, p, xv) * tk) * (1 - 0.3780*xv)
}

// SaturationPressure returns the pressure of saturated water vapour over water
// at t in °C, in Pa (CIPM-2007, equation A1.1).
func SaturationPressure(t float64) float64 {
	tk := t + units.ZeroCelsius
	return math.Exp(1.2378847e-5*tk*tk - 1.9121316e-2*tk + 33.93711047 - 6.3431645e3/tk)
}

// VapourPressure returns the partial pressure of water vapour, Pa, in air of
// temperature t (°C), pressure p (Pa) and relative humidity h.
func VapourPressure(t, p, h float64) float64 { return p * vapourShare(t, p, h) }

// vapourShare is the mole fraction of water vapour, x_v.
func vapourShare(t, p, h float64) float64 {
	enhancement := 1.00062 + 3.14e-8*p + 5.6e-7*t*t
	return h * enhancement * SaturationPressure(t) / p
}

// compressibility is Z of equation A1.4.
func compressibility(t, p, xv float64) float64 {
	tk := t + units.ZeroCelsius
	a := 1.58123e-6 - 2.9331e-8*t + 1.1043e-10*t*t
	b := 5.707e-6 - 2.051e-8*t
	c := 1.9898e-4 - 2.376e-6*t
	return 1 - p/tk*(a+b*xv+c*xv*xv) + p*p/(tk*tk)*(1.83e-11-0.765e-8*xv*xv)
}
