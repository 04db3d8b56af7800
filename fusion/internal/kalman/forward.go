package kalman

import "math"

// jacobian holds the two rows of the transition that are not diagonal; the
// others have a single entry each.
type jacobian struct {
	sv, sb, sk float64 // s on v, b, k
	vb, vk     float64 // v on b, k
	c, k       float64 // c on c, k on k
}

// predict moves x over a step and gives the transition's slope there.
func (st *Step) predict(x *Vec) (Vec, jacobian) {
	y := *x
	j := jacobian{sv: st.H, c: st.PhiC, k: st.PhiK}
	y[S] += x[V] * st.H
	if !st.Blind {
		b, g, h := x[B], 1-x[K], st.H
		y[V] += (st.DV - b*h) * g
		y[S] += (st.DS - b*h*h/2) * g
		j.vb, j.vk = -h*g, -st.RV
		j.sb, j.sk = -h*h/2*g, -st.RV*h/2
	}
	y[C] *= st.PhiC
	y[K] *= st.PhiK
	return y, j
}

// left gives F·p.
func (j *jacobian) left(p *Mat) Mat {
	m := *p
	for i := range N {
		m[S][i] = p[S][i] + j.sv*p[V][i] + j.sb*p[B][i] + j.sk*p[K][i]
		m[V][i] = p[V][i] + j.vb*p[B][i] + j.vk*p[K][i]
		m[C][i] *= j.c
		m[K][i] *= j.k
	}
	return m
}

// right gives m·Fᵀ.
func (j *jacobian) right(m *Mat) Mat {
	p := *m
	for i := range N {
		r := &m[i]
		p[i][S] = r[S] + j.sv*r[V] + j.sb*r[B] + j.sk*r[K]
		p[i][V] = r[V] + j.vb*r[B] + j.vk*r[K]
		p[i][C] *= j.c
		p[i][K] *= j.k
	}
	return p
}

// addNoise adds what the step leaves unknown: white noise on the acceleration
// and a random walk of b, each with its shares in speed and distance.
func (st *Step) addNoise(p *Mat) {
	h := st.H
	qb := st.QB
	if st.Blind {
		qb = 0 // the force that b would act on was not measured
	}
	p[V][V] += st.Q + qb*h*h/3
	sv := st.Q*h/2 + qb*h*h*h/8
	p[S][V] += sv
	p[V][S] += sv
	p[S][S] += st.Q*h*h/3 + qb*h*h*h*h/20
	p[V][B] -= qb * h / 2
	p[B][V] -= qb * h / 2
	p[S][B] -= qb * h * h / 6
	p[B][S] -= qb * h * h / 6
	p[B][B] += st.QB
	p[C][C] += st.QC
	p[K][K] += st.QK
	p[D][D] += st.QD
}

// update takes in an observation and gives the innovation and its variance.
func (o *Sight) update(x *Vec, p *Mat) (innovation, variance float64) {
	var ph Vec // P·hᵀ
	var hx float64
	if o.Still {
		hx = x[V]
		for i := range N {
			ph[i] = p[i][V]
		}
	} else {
		hx = x[V] + x[C] - o.Accel*x[D] + o.Shape*x[W]
		for i := range N {
			ph[i] = p[i][V] + p[i][C] - o.Accel*p[i][D] + o.Shape*p[i][W]
		}
	}
	variance = ph[V] + o.R
	if !o.Still {
		variance += ph[C] - o.Accel*ph[D] + o.Shape*ph[W]
	}
	innovation = o.Z - hx
	for i := range N {
		gain := ph[i] / variance
		x[i] += gain * innovation
		for j := i; j < N; j++ {
			p[i][j] -= gain * ph[j]
			p[j][i] = p[i][j]
		}
	}
	return innovation, variance
}

// LogLikelihood runs the filter over the nodes and adds up how probable each
// fix was before it was taken in, up to a constant. A fix far out counts as
// Huber would have it, so that one bad fix does not set the noise of a ride.
func LogLikelihood(nodes []Node, x Vec, p Mat) float64 {
	const knee = 3.5
	var ll float64
	for i := range nodes {
		n := &nodes[i]
		if i > 0 {
			y, j := n.Step.predict(&x)
			m := j.left(&p)
			p = j.right(&m)
			n.Step.addNoise(&p)
			x = y
		}
		if !n.Seen {
			continue
		}
		e, s := n.Sight.update(&x, &p)
		if n.Sight.Still {
			continue
		}
		r := math.Abs(e) / math.Sqrt(s)
		cost := r * r
		if r > knee {
			cost = knee * (2*r - knee)
		}
		ll -= (cost + math.Log(s)) / 2
	}
	return ll
}
