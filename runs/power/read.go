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
// maximum of many independent noisy points is biased upwards. Here the curve is
// a posterior mean, smoothed the more the less is known, and the maximum of a
// mean never exceeds the mean of the maxima (Jensen's inequality), so no
// correction is made. If it is the first or last point the true peak may lie
// outside the pulls, and atEnd is true.
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
