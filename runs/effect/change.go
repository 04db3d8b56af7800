package effect

import (
	"math"

	"stillair/runs/measure"
)

// Change is the difference of road load between two setups, b − a, as a
// comparison measured it.
type Change struct {
	CdA measure.Value // m²
	Crr measure.Value // dimensionless
	Cov float64       // covariance of the two differences, m²
}

// Power is the additional power (negative: saved) at the steady speed v in m/s,
// in W, with the mass and the air of l.
func (c Change) Power(l Load, v float64) measure.Value {
	d, r := l.perCdA(v)*v, l.perCrr(v)*v
	return measure.Value{X: d*c.CdA.X + r*c.Crr.X, SE: spread(d, r, c.CdA.SE, c.Crr.SE, c.Cov)}
}

// Speed is the speed of setup b minus that of setup a, whose load is l, on the
// power that a needs at v: m/s, to first order.
func (c Change) Speed(l Load, v float64) measure.Value {
	return c.Power(l, v).Times(-1 / l.slope(v))
}

// TimeOver is the time of setup b minus that of a over a distance in m on the
// power that a needs at v in m/s: s, to first order.
func (c Change) TimeOver(l Load, v, distance float64) measure.Value {
	return c.Speed(l, v).Times(-distance / (v * v))
}

// Relative is the change of the force at v as a fraction of l's.
func (c Change) Relative(l Load, v float64) measure.Value {
	return c.Power(l, v).Times(1 / math.Abs(l.Power(v).X))
}
