package roadload

import "math"

// stepModel carries the error of a measured speed over one step between fixes.
// Its state is (δv, g, d): what gusts have done to the speed, the gust, and the
// receiver's slow error. With damping a and push b constant over a step h,
//
//	dδv/dt = −a·δv − b·g,  dg/dt = −g/τ + √(2σ²/τ)·white noise
//
// has the solution below (a linear system with constant coefficients, solved
// by its exponentials).
type stepModel struct {
	fv, fvg, fg, fd float64 // transition: δv by δv, δv by g, g by g, d by d
	qv, qvg, qg, qd float64 // covariance of what the step adds
}

func newStepModel(n Noise, h, a, b float64) stepModel {
	lambda := 1 / n.GustTime
	a = max(a, 1e-6)
	if math.Abs(a-lambda) < 1e-6 {
		lambda += 2e-6
	}
	ea, el, ed := math.Exp(-a*h), math.Exp(-lambda*h), math.Exp(-h/n.DriftTime)
	r := -b / (a - lambda)
	q := 2 * lambda * n.GustSD * n.GustSD
	ll := (1 - el*el) / (2 * lambda)
	al := (1 - ea*el) / (a + lambda)
	aa := (1 - ea*ea) / (2 * a)
	return stepModel{
		fv: ea, fvg: r * (el - ea), fg: el, fd: ed,
		qv: max(q*r*r*(ll-2*al+aa), 0), qvg: q * r * (ll - al), qg: q * ll,
		qd: n.DriftSD * n.DriftSD * (1 - ed*ed),
	}
}

// covariance of the state (δv, g, d); d stays independent of the others only
// until the first fix.
type covariance struct{ vv, vg, vd, gg, gd, dd float64 }

// initial is the covariance at the start of a run: gust and receiver error in
// their stationary state, the speed itself an unknown of the run.
func (n Noise) initial() covariance {
	return covariance{gg: n.GustSD * n.GustSD, dd: n.DriftSD * n.DriftSD}
}

// step carries the covariance forward.
func (p covariance) step(m *stepModel) covariance {
	return covariance{
		vv: m.fv*m.fv*p.vv + 2*m.fv*m.fvg*p.vg + m.fvg*m.fvg*p.gg + m.qv,
		vg: m.fg*(m.fv*p.vg+m.fvg*p.gg) + m.qvg,
		vd: m.fd * (m.fv*p.vd + m.fvg*p.gd),
		gg: m.fg*m.fg*p.gg + m.qg,
		gd: m.fg * m.fd * p.gd,
		dd: m.fd*m.fd*p.dd + m.qd,
	}
}

// update takes in a fix, which measures δv + d with variance r. It returns the
// gain and the variance of what the fix adds.
func (p covariance) update(r float64) (after covariance, k [3]float64, s float64) {
	hv, hg, hd := p.vv+p.vd, p.vg+p.gd, p.vd+p.dd
	s = hv + hd + r
	k = [3]float64{hv / s, hg / s, hd / s}
	return covariance{
		vv: p.vv - k[0]*hv, vg: p.vg - k[0]*hg, vd: p.vd - k[0]*hd,
		gg: p.gg - k[1]*hg, gd: p.gd - k[1]*hd, dd: p.dd - k[2]*hd,
	}, k, s
}

// spread fills extra with the variance that gusts leave in the air speed: of
// the gust, of what earlier gusts did to the speed, and of both together.
// Drag goes with the square of the air speed, so its mean is larger by this.
func (c *coast) spread(n Noise) {
	p := n.initial()
	p.dd = 0
	for i := range c.t {
		c.extra[i] = p.vv + 2*p.vg + p.gg
		if i < len(c.t)-1 {
			h := c.t[i+1] - c.t[i]
			m := newStepModel(n, h, c.decay[i]/h, c.push[i])
			p = p.step(&m)
		}
	}
}
