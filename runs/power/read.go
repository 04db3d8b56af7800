package power

import "stillair/runs/measure"

// Force is the force at the road at each speed of the curve, N.
func (c *Curve) Force() []measure.Value {
	f := make([]measure.Value, len(c.Power))
	for k, p := range c.Power {
		f[k] = p.Times(1 / c.Speed[k])
	}
	return f
}

// Peak is the highest point of the curve: its speed, m/s, and power, W. The
// highest of many uncertain points is too high where each errs by itself. Here
// the curve is the mean of all that the pulls leave open, smoothed the more the
// less is known, and the highest point of a mean is never above the mean of the
// highest points (Jensen's inequality); so nothing is taken off. Where it is the
// first or last point the true peak may lie outside the pulls, and atEnd says
// so.
func (c *Curve) Peak() (speed float64, p measure.Value, atEnd bool) {
	best := 0
	for k := range c.Power {
		if c.Power[k].X > c.Power[best].X {
			best = k
		}
	}
	return c.Speed[best], c.Power[best], best == 0 || best == len(c.Power)-1
}

// RPM is the engine speed, 1/min, at each speed of the curve for a gear of
// rpmPerMPS revolutions a minute for each m/s.
func (c *Curve) RPM(rpmPerMPS float64) []float64 {
	r := make([]float64, len(c.Speed))
	for k, v := range c.Speed {
		r[k] = v * rpmPerMPS
	}
	return r
}
