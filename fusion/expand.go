package fusion

import (
	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// posterior holds the smoothed distance and speed at the nodes, from which the
// covariance of any two times is computed.
type posterior struct {
	knots []knot
	links kalman.Links
}

// knot is one node of the posterior.
type knot struct {
	sample     int
	ss, sv, vv float64       // covariance of distance and speed here
	cross      [2][2]float64 // of those at the node before with those here
	bridge     float64       // variance that the vibration added to the speed since the node before, m²/s²
}

func newPosterior(nodes []kalman.Node, res *kalman.Result) posterior {
	p := posterior{knots: make([]knot, len(nodes)), links: res.Links}
	for i := range nodes {
		cov := &res.P[i]
		p.knots[i] = knot{sample: nodes[i].Index, ss: cov.SS, sv: cov.SV, vv: cov.VV, bridge: nodes[i].Step.Q}
		if i > 0 {
			w := p.links.Leave(i-1, 0)
			p.knots[i].cross = w.Here()
		}
	}
	return p
}

// each visits every sample, on all cores, with the node before it and the
// fraction of the interval to the next node.
func (p *posterior) each(t []float64, visit func(i, node int, u float64)) {
	last := len(p.knots) - 2
	motion.Blocks(last+1, func(from, to int) {
		for n := from; n < to; n++ {
			i0, i1 := p.knots[n].sample, p.knots[n+1].sample
			h := t[i1] - t[i0]
			end := i1
			if n == last {
				end = i1 + 1
			}
			for i := i0; i < end; i++ {
				visit(i, n, (t[i]-t[i0])/h)
			}
		}
	})
}

// point is the smoothed motion at a sample.
type point struct{ s, v, b, k float64 }

// expand visits every sample, on all cores. Between two nodes the force is
// integrated, and the misclosure at the next node is distributed in proportion
// to time: the mean of a Brownian bridge.
func (r *ride) expand(nodes []kalman.Node, states []kalman.Vec, visit func(i int, at point)) {
	last := len(nodes) - 2
	motion.Blocks(last+1, func(from, to int) {
		for n := from; n < to; n++ {
			end := nodes[n+1].Index
			if n == last {
				end++
			}
			r.expandOne(&nodes[n], &nodes[n+1], &states[n], &states[n+1], end, visit)
		}
	})
}

// expandOne visits the samples from one node up to, but not including, end.
func (r *ride) expandOne(n0, n1 *kalman.Node, a, c *kalman.Vec, end int, visit func(i int, at point)) {
	t := r.s.T
	i0, i1 := n0.Index, n1.Index
	blind := n1.Step.Blind
	se, ve := r.carry(a, i0, i1, blind)
	missV, missS := c[kalman.V]-ve, c[kalman.S]-se
	h := t[i1] - t[i0]
	for i := i0; i < end; i++ {
		u := (t[i] - t[i0]) / h
		s, v := r.carry(a, i0, i, blind)
		visit(i, point{s: s + u*u*missS, v: v + u*missV,
			b: a[kalman.B] + u*(c[kalman.B]-a[kalman.B]), k: a[kalman.K] + u*(c[kalman.K]-a[kalman.K])})
	}
}

// carry predicts a node's state at a later sample by integrating the measured
// force.
func (r *ride) carry(x *kalman.Vec, from, to int, blind bool) (s, v float64) {
	h := r.s.T[to] - r.s.T[from]
	s, v = x[kalman.S]+x[kalman.V]*h, x[kalman.V]
	if blind {
		return s, v
	}
	dv, ds := r.force.Over(from, to)
	g, b := 1-x[kalman.K], x[kalman.B]
	return s + (ds-b*h*h/2)*g, v + (dv-b*h)*g
}
