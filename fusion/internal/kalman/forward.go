package kalman

import "math"

// transition holds the entries of a step's matrix F that are not 1: v gains
// multiples of b and k, s gains the duration times the mean of v before and
// after, and c and k decay.
type transition struct {
	h      float64 // s
	vb, vk float64 // share of b and of k in v
	c, k   float64 // what remains of c and of k
}

// predict propagates x over a step and returns the transition.
func (st *Step) predict(x *Vec) transition {
	f := transition{h: st.H, c: st.PhiC, k: st.PhiK}
	x[S] += x[V] * st.H
	if !st.Blind {
		b, g, h := x[B], 1-x[K], st.H
		x[V] += (st.DV - b*h) * g
		x[S] += (st.DS - b*h*h/2) * g
		f.vb, f.vk = -h*g, -st.RV
	}
	x[C] *= st.PhiC
	x[K] *= st.PhiK
	return f
}

// transform replaces p by F·p·Fᵀ.
func (f *transition) transform(p *Sym) {
	p.addToSpeed(f.vb/2, f.vk/2)
	p.addToDistance(f.h)
	p.addToSpeed(f.vb/2, f.vk/2)
	p.SC, p.VC, p.BC, p.CD, p.CW = p.SC*f.c, p.VC*f.c, p.BC*f.c, p.CD*f.c, p.CW*f.c
	p.SK, p.VK, p.BK, p.KD, p.KW = p.SK*f.k, p.VK*f.k, p.BK*f.k, p.KD*f.k, p.KW*f.k
	p.CC, p.CK, p.KK = p.CC*f.c*f.c, p.CK*f.c*f.k, p.KK*f.k*f.k
}

// addToSpeed transforms a covariance for v += vb·b + vk·k.
func (p *Sym) addToSpeed(vb, vk float64) {
	b := vb*p.BB + vk*p.BK
	k := vb*p.BK + vk*p.KK
	p.SV += vb*p.SB + vk*p.SK
	p.VV += 2*(vb*p.VB+vk*p.VK) + vb*b + vk*k
	p.VB += b
	p.VC += vb*p.BC + vk*p.CK
	p.VK += k
	p.VD += vb*p.BD + vk*p.KD
	p.VW += vb*p.BW + vk*p.KW
}

// addToDistance transforms a covariance for s += h·v.
func (p *Sym) addToDistance(h float64) {
	p.SS += h * (2*p.SV + h*p.VV)
	p.SV += h * p.VV
	p.SB += h * p.VB
	p.SC += h * p.VC
	p.SK += h * p.VK
	p.SD += h * p.VD
	p.SW += h * p.VW
}

// pass propagates state and covariance over a step (time update).
func (st *Step) propagate(x *Vec, p *Sym) transition {
	f := st.predict(x)
	f.transform(p)
	st.addNoise(p)
	return f
}

// addNoise adds the process noise of a step: white noise on the acceleration
// and a random walk of b, each integrated into speed and distance.
func (st *Step) addNoise(p *Sym) {
	h := st.H
	qb := st.QB
	if st.Blind {
		qb = 0 // without a measured force b has no effect
	}
	p.VV += st.Q + qb*h*h/3
	p.SV += st.Q*h/2 + qb*h*h*h/8
	p.SS += st.Q*h*h/3 + qb*h*h*h*h/20
	p.VB -= qb * h / 2
	p.SB -= qb * h * h / 6
	p.BB += st.QB
	p.CC += st.QC
	p.KK += st.QK
	p.DD += st.QD
}

// seen records the measurement update of an observation.
type seen struct {
	h          sees
	gain       Vec
	innovation float64
	variance   float64 // of the innovation
}

// sees holds the coefficients of c, d and w in an observation; that of the
// speed is 1.
type sees struct{ c, d, w float64 }

func (o *Observation) sees() sees {
	if o.Still {
		return sees{}
	}
	return sees{c: 1, d: -o.Accel, w: o.Shape}
}

// of is the predicted observation h·x.
func (h *sees) of(x *Vec) float64 { return x[V] + h.c*x[C] + h.d*x[D] + h.w*x[W] }

// update is the Kalman filter's measurement update.
func (o *Observation) update(x *Vec, p *Sym) seen {
	h := o.sees()
	ph := Vec{
		p.SV + h.c*p.SC + h.d*p.SD + h.w*p.SW,
		p.VV + h.c*p.VC + h.d*p.VD + h.w*p.VW,
		p.VB + h.c*p.BC + h.d*p.BD + h.w*p.BW,
		p.VC + h.c*p.CC + h.d*p.CD + h.w*p.CW,
		p.VK + h.c*p.CK + h.d*p.KD + h.w*p.KW,
		p.VD + h.c*p.CD + h.d*p.DD + h.w*p.DW,
		p.VW + h.c*p.CW + h.d*p.DW + h.w*p.WW,
	}
	is := seen{h: h, innovation: o.Z - h.of(x), variance: o.R + h.of(&ph)}
	for i := range N {
		is.gain[i] = ph[i] / is.variance
		x[i] += is.gain[i] * is.innovation
	}
	p.subtractOuter(&is.gain, &ph)
	return is
}

// subtractOuter subtracts g·hᵀ, which must be symmetric, from p.
func (p *Sym) subtractOuter(g, h *Vec) {
	p.SS -= g[S] * h[S]
	p.SV -= g[S] * h[V]
	p.SB -= g[S] * h[B]
	p.SC -= g[S] * h[C]
	p.SK -= g[S] * h[K]
	p.SD -= g[S] * h[D]
	p.SW -= g[S] * h[W]
	p.VV -= g[V] * h[V]
	p.VB -= g[V] * h[B]
	p.VC -= g[V] * h[C]
	p.VK -= g[V] * h[K]
	p.VD -= g[V] * h[D]
	p.VW -= g[V] * h[W]
	p.BB -= g[B] * h[B]
	p.BC -= g[B] * h[C]
	p.BK -= g[B] * h[K]
	p.BD -= g[B] * h[D]
	p.BW -= g[B] * h[W]
	p.CC -= g[C] * h[C]
	p.CK -= g[C] * h[K]
	p.CD -= g[C] * h[D]
	p.CW -= g[C] * h[W]
	p.KK -= g[K] * h[K]
	p.KD -= g[K] * h[D]
	p.KW -= g[K] * h[W]
	p.DD -= g[D] * h[D]
	p.DW -= g[D] * h[W]
	p.WW -= g[W] * h[W]
}

// LogLikelihood runs the filter over the nodes and sums the log-likelihood of
// the innovations, up to a constant (prediction error decomposition). An
// outlier contributes Huber's loss, so that one bad fix does not dominate the
// noise of a ride.
func LogLikelihood(nodes []Node, x Vec, p Sym) float64 {
	const knee = 3.5
	var ll float64
	for i := range nodes {
		n := &nodes[i]
		if i > 0 {
			n.Step.propagate(&x, &p)
		}
		if !n.Seen {
			continue
		}
		is := n.Observation.update(&x, &p)
		if n.Observation.Still {
			continue
		}
		r := math.Abs(is.innovation) / math.Sqrt(is.variance)
		cost := r * r
		if r > knee {
			cost = knee * (2*r - knee)
		}
		ll -= (cost + math.Log(is.variance)) / 2
	}
	return ll
}
