package air

import "math"

// Standard returns temperature (°C), pressure (Pa) and density (kg/m³) of the
// standard atmosphere z metres above the sea, up to 11 km: ISO 2533. Its gas constant is that of dry
// air; its layers are in geopotential height, which is a little less than z.
func Standard(z float64) (t, p, rho float64) {
	const (
		radius = 6356766.0 // m, nominal
		t0     = 288.15    // K
		p0     = 101325.0  // Pa
		lapse  = 0.0065    // K/m
		g      = 9.80665   // m/s²
		r      = 287.05287 // J/(kg·K)
	)
	tk := t0 - lapse*radius*z/(radius+z)
	p = p0 * math.Pow(tk/t0, g/(lapse*r))
	return tk - 273.15, p, p / (r * tk)
}

// ReferenceDensity is the density at which road-load coefficients are quoted:
// dry air of 20 °C and 98.21 kPa (reference conditions of SAE J2263), kg/m³.
func ReferenceDensity() float64 { return MoistDensity(20, 98210, 0) }

// SAEJ1349 returns the factor that takes the power of a spark-ignition engine
// to 25 °C and 99 kPa of dry air (SAE J1349, June 1990), from the pressure of
// the dry air in Pa and its temperature in °C.
func SAEJ1349(dry, t float64) float64 {
	return 1.180*(99000/dry)*math.Sqrt((t+273)/298) - 0.18
}

// Vouched reports whether the standards vouch for a factor in air of t °C: they
// are meant for days within 7 % of standard air (both, from memory) and for 283.2
// to 318.2 K (Regulation (EU) 134/2014, appendix 2.2).
func Vouched(factor, t float64) bool {
	kelvin := t + 273.15
	return math.Abs(factor-1) <= 0.07 && kelvin >= 283.2 && kelvin <= 318.2
}

// ISO1585 is the same for ISO 1585, for naturally aspirated spark-ignition
// engines: (99/p)^1.2·(T/298)^0.6 (from memory).
func ISO1585(dry, t float64) float64 {
	return math.Pow(99000/dry, 1.2) * math.Pow((t+273)/298, 0.6)
}

// DensityAltitude is the height in the standard atmosphere, m, at which the air
// has the density rho, kg/m³: what engines and drag make of a hot or a low day.
func DensityAltitude(rho float64) float64 {
	low, high := -3000.0, 11000.0
	for range 60 {
		middle := (low + high) / 2
		if _, _, at := Standard(middle); at > rho {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}
