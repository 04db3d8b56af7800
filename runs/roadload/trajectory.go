package roadload

import "math"

// state holds the current value of every common unknown and the fixed
// parameters.
type state struct {
	beta    []float64 // in the order of the layout
	slope   float64   // prior mean of k; beta holds the difference from it
	gravity float64
}

// forces are the terms of the equation of motion of one run at one instant,
// divided by the inertia: decelerations in m/s².
type forces struct {
	drag    float64 // by 1 m² of drag area
	posture float64 // by a drag area of this run alone that is twice as large
	roll    float64 // by a Crr of 1
	grade   float64 // by a slope of 1 in direction +1
	gust    float64 // by an additional air speed of 1 m/s, 1/s
	slope   float64 // by k greater by 1 s/m
	warm    float64 // by a growth of Crr of 1 in an hour
	total   float64
	damping float64 // derivative of total by v, 1/s
}

// motion holds the parameters of a run that stay fixed during an integration.
type motion struct {
	cda, crr, k    float64 // drag area of this run
	posture        float64 // this over that of the setup
	wind           float64 // against the run, m/s
	air            float64 // ½ρ/M
	weight         float64 // m·g/M
	warm           float64 // factor on crr
	hours          float64
	dir, meanSlope float64
}

func (c *coast) motion(l layout, s *state) motion {
	m := motion{
		cda: s.beta[cdaAt(c.setup)], crr: s.beta[crrAt(c.setup)], k: s.slope,
		wind: c.dir * c.meanWind(l, s),
		air:  c.rho / (2 * c.inertia), weight: c.mass * s.gravity / c.inertia,
		posture: 1, warm: 1, hours: c.hours, dir: c.dir, meanSlope: s.beta[l.grade+c.pairIndex],
	}
	if l.slope >= 0 {
		m.k += s.beta[l.slope]
	}
	if l.posture >= 0 {
		m.posture += s.beta[l.posture+c.postureIndex]
		m.cda *= m.posture
	}
	if l.warm >= 0 {
		m.warm += s.beta[l.warm] * c.hours
	}
	return m
}

// meanWind is the mean wind of the run against direction +1, m/s.
func (c *coast) meanWind(l layout, s *state) float64 {
	w := s.beta[l.wind+c.pairIndex]
	if at := l.shift[c.pairIndex]; at >= 0 {
		w += c.part * s.beta[at]
	}
	return w
}

// at evaluates the equation of motion at speed v, on a slope (in direction +1,
// about the mean), with a variance extra of the air speed from gusts.
func (m *motion) at(v, slope, extra float64) forces {
	u := v + m.wind
	absU := math.Abs(u)
	dynamic := m.air * (u*absU + math.Copysign(extra, u))
	f := forces{
		drag:    dynamic * m.posture,
		posture: dynamic * m.cda / m.posture,
		roll:    m.weight * m.warm * (1 + m.k*v),
		grade:   m.weight * m.dir,
		gust:    2 * m.air * m.cda * absU,
		slope:   m.weight * m.warm * m.crr * v,
		warm:    m.weight * m.crr * (1 + m.k*v) * m.hours,
	}
	f.total = m.cda*dynamic + m.crr*f.roll + f.grade*(m.meanSlope+slope)
	f.damping = f.gust + m.weight*m.warm*m.crr*m.k
	return f
}

// maxStep bounds the integration step, s. The classical Runge-Kutta method of
// fourth order is exact to 1e-7 m/s with it over a coast-down.
const maxStep = 0.5

// integrate computes the fitted speed of a run and, column by column, its
// derivative by every unknown. The derivatives obey
//
//	d(δv)/dt = −damping·δv + forcing
//
// and are integrated by Simpson's rule with the integrating factor.
func (c *coast) integrate(l layout, s *state) {
	m := c.motion(l, s)
	clear(c.jac)
	c.v[0] = c.start
	c.jac[0] = 1
	for i := range len(c.t) - 1 {
		next := c.rowOf(c.jac, i+1, 0)
		copy(next, c.rowOf(c.jac, i, 0))
		c.advance(l, s, &m, i, next)
		for j, cut := range c.cuts {
			if cut.to == i+1 {
				c.v[i+1] += c.steps[j]
				next[1+j] = 1
			}
		}
	}
	c.measured(l, s, &m)
}

// advance integrates speed and derivatives from t[i] to t[i+1].
func (c *coast) advance(l layout, s *state, m *motion, i int, d []float64) {
	span := c.t[i+1] - c.t[i]
	n := max(1, int(math.Ceil(span/maxStep-1e-9)))
	h := span / float64(n)
	v := c.v[i]
	decay := 0.0
	c.push[i] = 0
	for j := range n {
		from, to := float64(j)/float64(n), float64(j+1)/float64(n)
		var at [3]place
		for q, share := range [3]float64{from, (from + to) / 2, to} {
			at[q] = c.placeAt(l, s, i, share)
		}
		f0 := m.at(v, at[0].slope, at[0].extra)
		k2 := m.at(v-h/2*f0.total, at[1].slope, at[1].extra).total
		k3 := m.at(v-h/2*k2, at[1].slope, at[1].extra).total
		k4 := m.at(v-h*k3, at[2].slope, at[2].extra).total
		next := v - h/6*(f0.total+2*k2+2*k3+k4)
		f1 := m.at(next, at[2].slope, at[2].extra)
		fm := m.at((v+next)/2-h/8*(f0.total-f1.total), at[1].slope, at[1].extra)
		st := step{h: h, f: [3]forces{f0, fm, f1}, at: at}
		st.carry(c, l, d)
		decay += st.decay()
		c.push[i] += (f0.gust + 4*fm.gust + f1.gust) / 6 / float64(n)
		v = next
	}
	c.damp(i, decay)
	c.v[i+1] = v
}

// leastDamping keeps the error model's formulas from dividing by zero, 1/s. It
// is below a five-hundredth of what rolling resistance alone leaves,
// g·0.018·0.004.
const leastDamping = 1e-6

// damp stores the integrated damping of the step from fix i to the next.
func (c *coast) damp(i int, decay float64) {
	c.decay[i] = max(decay, leastDamping*(c.t[i+1]-c.t[i]))
	c.fades.steps[i].speed = math.Exp(-c.decay[i])
}

// place is the run's position on the road at an instant of the integration.
type place struct {
	slope float64 // of the road's profile about the mean
	extra float64 // variance of the air speed, m²/s²
	knot  int     // index of the knot before it, counted from the run's first
	share float64 // of the way to the next knot
}

func (c *coast) placeAt(l layout, s *state, i int, share float64) place {
	p := place{extra: c.extra[i] + share*(c.extra[i+1]-c.extra[i])}
	if l.knots == 0 {
		return p
	}
	k, f := c.stretch.locate(c.x[i] + share*(c.x[i+1]-c.x[i]))
	knots := s.beta[l.knot:]
	p.knot, p.share = k-c.span[0], f
	p.slope = knots[k] + f*(knots[k+1]-knots[k])
	return p
}

// step is one step of the integration: forces and places at its start, middle
// and end.
type step struct {
	h  float64
	f  [3]forces
	at [3]place
}

// decay is the integral of the damping over the step.
func (s *step) decay() float64 {
	return s.h / 6 * (s.f[0].damping + 4*s.f[1].damping + s.f[2].damping)
}

// carry integrates the derivatives d over the step.
func (s *step) carry(c *coast, l layout, d []float64) {
	whole := math.Exp(-s.decay())
	half := math.Exp(-s.h / 24 * (5*s.f[2].damping + 8*s.f[1].damping - s.f[0].damping))
	weight := [3]float64{s.h / 6 * whole, s.h / 6 * 4 * half, s.h / 6}
	for j := range d {
		d[j] *= whole
	}
	common := d[c.own:]
	for q := range s.f {
		f, g := &s.f[q], weight[q]
		common[0] -= g * f.drag
		common[1] -= g * f.roll
		common[2] -= g * f.gust * c.dir
		common[3] -= g * f.grade
		if c.at.slope >= 0 {
			common[c.at.slope] -= g * f.slope
		}
		if c.at.shift >= 0 {
			common[c.at.shift] -= g * f.gust * c.dir * c.part
		}
		if c.at.posture >= 0 {
			common[c.at.posture] -= g * f.posture
		}
		if c.at.warm >= 0 {
			common[c.at.warm] -= g * f.warm
		}
		if l.knots > 0 {
			p := &s.at[q]
			common[c.at.knots+p.knot] -= g * f.grade * (1 - p.share)
			common[c.at.knots+p.knot+1] -= g * f.grade * p.share
		}
	}
}
