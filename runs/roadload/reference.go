package roadload

import (
	"math"

	"stillair/runs/measure"
)

// Reference is the state at which force coefficients are quoted.
type Reference struct {
	Mass     measure.Value // kg
	Density  float64       // kg/m³; air.ReferenceDensity for 20 °C and 98.21 kPa
	Gravity  float64       // m/s²
	Slope    float64       // k, s/m
	From, To float64       // range of speeds of the coefficients, m/s
}

// Coefficients are those of F = A + C·v² on level ground in still air, as in
// 40 CFR 86.529.
type Coefficients struct {
	A measure.Value // N
	C measure.Value // N/(m/s)²
}

// At returns the force coefficients of a road load. The small part of rolling
// resistance that grows with v is split between A and C by least squares of the
// force over the reference's speeds.
func (l Load) At(r Reference) Coefficients {
	constant, square := linearAs(r.From, r.To)
	weight := r.Mass.X * r.Gravity
	aCrr, cCrr := weight*(1+r.Slope*constant), weight*r.Slope*square
	cCdA := r.Density / 2
	a := aCrr * l.Crr.X
	c := cCdA*l.CdA.X + cCrr*l.Crr.X
	variance := cCdA*cCdA*l.CdA.SE*l.CdA.SE + cCrr*cCrr*l.Crr.SE*l.Crr.SE + 2*cCdA*cCrr*l.Cov
	return Coefficients{
		A: measure.Value{X: a, SE: math.Hypot(aCrr*l.Crr.SE, a*r.Mass.SE/r.Mass.X)},
		C: measure.Value{X: c, SE: math.Sqrt(math.Max(variance, 0))},
	}
}

// linearAs writes v as constant + square·v² with the least mean square error
// between two speeds.
func linearAs(from, to float64) (constant, square float64) {
	moment := func(n float64) float64 {
		return (math.Pow(to, n+1) - math.Pow(from, n+1)) / ((n + 1) * (to - from))
	}
	m1, m2, m3, m4 := moment(1), moment(2), moment(3), moment(4)
	square = (m3 - m1*m2) / (m4 - m2*m2)
	return m1 - square*m2, square
}
