package effect

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Load is the road load of one setup in one air.
type Load struct {
	CdA     measure.Value // drag area, m²
	Crr     measure.Value // rolling resistance at standstill, dimensionless
	Cov     float64       // covariance of CdA and Crr, m²
	K       float64       // growth of rolling resistance with speed, s/m
	Mass    float64       // bike, rider and luggage, kg
	Density float64       // of the air, kg/m³
	Gravity float64       // m/s²
}

// Check returns an error if a value that the load needs is missing.
func (l Load) Check() error {
	switch {
	case !(l.Mass > 0):
		return finding.Fail("worth.no_mass")
	case !(l.Density > 0):
		return finding.Fail("worth.no_density")
	case !(l.Gravity > 0):
		return finding.Fail("worth.no_gravity")
	case !(l.CdA.X > 0):
		return finding.Fail("worth.bad_cda", finding.Area("cda", l.CdA.X))
	}
	return nil
}

// perCdA and perCrr are the derivatives of the force at v with respect to CdA
// and Crr.
func (l Load) perCdA(v float64) float64 { return 0.5 * l.Density * v * v }
func (l Load) perCrr(v float64) float64 { return l.Mass * l.Gravity * (1 + l.K*v) }

// Force is the force at the steady speed v in m/s, in N.
func (l Load) Force(v float64) measure.Value {
	d, r := l.perCdA(v), l.perCrr(v)
	return measure.Value{X: d*l.CdA.X + r*l.Crr.X, SE: spread(d, r, l.CdA.SE, l.Crr.SE, l.Cov)}
}

// Power is the power at the tyre at the steady speed v in m/s, in W.
func (l Load) Power(v float64) measure.Value { return l.Force(v).Times(v) }

// slope is the derivative of Power's X by v, in N.
func (l Load) slope(v float64) float64 {
	return 1.5*l.Density*l.CdA.X*v*v + l.Mass*l.Gravity*l.Crr.X*(1+2*l.K*v)
}

// AirShare is the fraction of the force at v that is air drag, 0 to 1.
func (l Load) AirShare(v float64) float64 { return l.perCdA(v) * l.CdA.X / l.Force(v).X }

// SpeedAt is the steady speed, m/s, for the power p in W at the tyre. It is
// zero for no power.
func (l Load) SpeedAt(p measure.Value) measure.Value {
	if !(p.X > 0) {
		return measure.Value{}
	}
	hi := 1.0
	for l.Power(hi).X < p.X {
		hi *= 2
	}
	v := bisect(0, hi, func(v float64) float64 { return l.Power(v).X - p.X })
	return measure.Value{X: v, SE: math.Hypot(l.Power(v).SE, p.SE) / l.slope(v)}
}

// spread is the standard uncertainty of a·X + b·Y.
func spread(a, b, sx, sy, cov float64) float64 {
	return math.Sqrt(math.Max(0, a*a*sx*sx+b*b*sy*sy+2*a*b*cov))
}

// bisect returns where f, of opposite signs at lo and hi, crosses zero.
func bisect(lo, hi float64, f func(float64) float64) float64 {
	below := f(lo) < 0
	for range 200 {
		mid := lo + (hi-lo)/2
		if mid <= lo || mid >= hi {
			break
		}
		if (f(mid) < 0) == below {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2
}
