package roadload

import "math"

// vector is a state of the error model: δv, the effect of gusts on the speed
// (m/s); g, the gust (m/s); d, the receiver's slow error (m/s); e, the slow
// error of the height (m).
type vector [4]float64

// stepModel is the transition of the error model over one step between fixes.
// With damping a and gust response b constant over a step h,
//
//	dδv/dt = −a·δv − b·g,  dg/dt = −g/τ + √(2σ²/τ)·white noise
//
// has the solution below (a linear system with constant coefficients, by its
// matrix exponential); d is another such process, e a random walk.
type stepModel struct {
	fv, fvg, fg, fd     float64 // transition: δv by δv, δv by g, g by g, d by d
	qv, qvg, qg, qd, qe float64 // covariance added by the step
}

// fade holds the decay factors over a step: of an error of the speed, of a
// gust, of the receiver's slow error.
type fade struct{ speed, gust, drift float64 }

func newStepModel(n Noise, h, a, b, walk float64, left fade) stepModel {
	lambda := 1 / n.GustTime
	ea, el, ed := left.speed, left.gust, left.drift
	if math.Abs(a-lambda) < 1e-6 {
		lambda += 2e-6
		el = math.Exp(-lambda * h)
	}
	r := -b / (a - lambda)
	q := 2 * lambda * n.GustSD * n.GustSD
	ll := (1 - el*el) / (2 * lambda)
	al := (1 - ea*el) / (a + lambda)
	aa := (1 - ea*ea) / (2 * a)
	return stepModel{
		fv: ea, fvg: r * (el - ea), fg: el, fd: ed,
		qv: max(q*r*r*(ll-2*al+aa), 0), qvg: q * r * (ll - al), qg: q * ll,
		qd: n.DriftSD * n.DriftSD * (1 - ed*ed),
		qe: walk * walk * h,
	}
}

// forward applies the transition.
func (m *stepModel) forward(x vector) vector {
	return vector{m.fv*x[0] + m.fvg*x[1], m.fg * x[1], m.fd * x[2], x[3]}
}

// backward applies the transposed transition.
func (m *stepModel) backward(x vector) vector {
	return vector{m.fv * x[0], m.fvg*x[0] + m.fg*x[1], m.fd * x[2], x[3]}
}

// covariance of the state; symmetric.
type covariance [4]vector

// initial is the covariance at the start of a run: gust and receiver error are
// stationary; the speed itself and the zero of the heights are unknowns of the
// run.
func (n Noise) initial() covariance {
	var p covariance
	p[1][1] = n.GustSD * n.GustSD
	p[2][2] = n.DriftSD * n.DriftSD
	return p
}

// through applies a linear map to rows and columns: f·p·fᵀ.
func (p covariance) through(f func(vector) vector) covariance {
	for i := range p {
		p[i] = f(p[i])
	}
	p = p.transposed()
	for i := range p {
		p[i] = f(p[i])
	}
	return p
}

func (p covariance) transposed() covariance {
	for i := range p {
		for j := range i {
			p[i][j], p[j][i] = p[j][i], p[i][j]
		}
	}
	return p
}

// step propagates the covariance: through(m.forward) plus process noise,
// written out because half of a fit's time is spent here.
func (p *covariance) step(m *stepModel) {
	v, g := p[0], p[1]
	for j := range v {
		v[j] = m.fv*v[j] + m.fvg*g[j]
		g[j] *= m.fg
	}
	vg, vd := m.fg*v[1]+m.qvg, m.fd*v[2]
	gd, de := m.fd*g[2], m.fd*p[2][3]
	p[0] = vector{m.fv*v[0] + m.fvg*v[1] + m.qv, vg, vd, v[3]}
	p[1] = vector{vg, m.fg*g[1] + m.qg, gd, g[3]}
	p[2] = vector{vd, gd, m.fd*m.fd*p[2][2] + m.qd, de}
	p[3] = vector{v[3], g[3], de, p[3][3] + m.qe}
}

// update is the Kalman update with a measurement of seen·state with variance r.
// It fills in the observation's gain and innovation variance.
func (p *covariance) update(s *observation, r float64) {
	var ph vector
	for i := range p {
		ph[i] = p[i].dot(&s.seen)
	}
	s.variance = ph.dot(&s.seen) + r
	for i := range p {
		s.gain[i] = ph[i] / s.variance
		for j := range p {
			p[i][j] -= s.gain[i] * ph[j]
		}
	}
}

func (x *vector) dot(y *vector) float64 {
	return x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3]
}

// spread fills extra with the variance of the air speed from gusts: of the
// gust, of the effect of earlier gusts on the speed, and of their covariance.
// Drag grows with the square of the air speed, so its mean is larger by this.
func (c *coast) spread(n Noise) {
	p := n.initial()
	for i := range c.t {
		c.extra[i] = p[0][0] + 2*p[0][1] + p[1][1]
		if i < len(c.t)-1 {
			m := c.stepAt(n, i)
			p.step(&m)
		}
	}
}

// stepAt is the error model from fix i to the next.
func (c *coast) stepAt(n Noise, i int) stepModel {
	h := c.t[i+1] - c.t[i]
	return newStepModel(n, h, c.decay[i]/h, c.push[i], c.heights.walk(n), c.fades.at(c.t, n)[i])
}

// fades caches the exponentials of every step, which most evaluations of a fit
// have in common.
type fades struct {
	steps               []fade
	gustTime, driftTime float64
}

// at returns them for a noise, at the fixes' times t.
func (f *fades) at(t []float64, n Noise) []fade {
	if f.gustTime != n.GustTime {
		f.gustTime = n.GustTime
		for i := range f.steps {
			f.steps[i].gust = math.Exp(-(t[i+1] - t[i]) / n.GustTime)
		}
	}
	if f.driftTime != n.DriftTime {
		f.driftTime = n.DriftTime
		for i := range f.steps {
			f.steps[i].drift = math.Exp(-(t[i+1] - t[i]) / n.DriftTime)
		}
	}
	return f.steps
}
