package fusion

import (
	"math"

	"stillair/fusion/internal/kalman"
	"stillair/fusion/internal/motion"
)

// posterior is what is known of distance and speed at the nodes, from which the
// covariance of any two places is worked out.
type posterior struct {
	knots []knot
	links kalman.Links
}

// knot is what a node leaves to the posterior.
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

// each visits every sample with the node before it and the share of the way to
// the next.
func (p *posterior) each(t []float64, visit func(i, node int, u float64)) {
	n := 0
	for i := range t {
		for n+2 < len(p.knots) && p.knots[n+1].sample <= i {
			n++
		}
		t0, t1 := t[p.knots[n].sample], t[p.knots[n+1].sample]
		visit(i, n, (t[i]-t0)/(t1-t0))
	}
}

// point is the smoothed motion at a sample.
type point struct{ s, v, b, k float64 }

// expand visits every sample. Between two nodes the force carries the speed,
// and what it misses at the next node is shared out in proportion to time: the
// mean of a Brownian bridge.
func (r *ride) expand(nodes []kalman.Node, states []kalman.Vec, visit func(i int, at point)) {
	t := r.s.T
	for n := 0; n+1 < len(nodes); n++ {
		a, c := &states[n], &states[n+1]
		i0, i1 := nodes[n].Index, nodes[n+1].Index
		blind := nodes[n+1].Step.Blind
		se, ve := r.carry(a, i0, i1, blind)
		missV, missS := c[kalman.V]-ve, c[kalman.S]-se
		h := t[i1] - t[i0]
		last := i1
		if n+2 == len(nodes) {
			last = i1 + 1
		}
		for i := i0; i < last; i++ {
			u := (t[i] - t[i0]) / h
			s, v := r.carry(a, i0, i, blind)
			visit(i, point{s: s + u*u*missS, v: v + u*missV,
				b: a[kalman.B] + u*(c[kalman.B]-a[kalman.B]), k: a[kalman.K] + u*(c[kalman.K]-a[kalman.K])})
		}
	}
}

// carry moves a node's state to a later sample by the measured force.
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

// calmReach and slopeReach are the reaches of the windows over which the
// reference speed is smoothed and its slope taken, s. What multiplies an
// unknown of the state (lag, scale, smoothing) must be all but free of the
// vibration that is also in the prediction of the speed: the square of that
// common noise would pass for a lag or a scale.
const (
	calmReach  = 0.25
	slopeReach = 0.5
)

// relinearise makes the smoothed ride the reference of the next pass.
func (r *ride) relinearise(nodes []kalman.Node, states []kalman.Vec) {
	speed := make([]float64, len(r.s.T))
	r.expand(nodes, states, func(i int, at point) { speed[i] = math.Max(at.v, 0) })
	r.ref.set(r.s, speed)
	last := &states[len(states)-1]
	r.lag += last[kalman.D]
	r.shape = math.Max(r.shape+last[kalman.W], 0)
	r.bend()
}

// set takes a speed as the reference.
func (f *reference) set(s *motion.Series, speed []float64) {
	f.speed = s.Smooth(speed, calmReach)
	f.accel = slope(s, f.speed, slopeReach)
}

// slope is the change of x per second between reach seconds before and after
// each sample.
func slope(s *motion.Series, x []float64, reach float64) []float64 {
	half := max(1, s.Half(reach))
	out := make([]float64, len(x))
	for i := range out {
		a, b := max(i-half, 0), min(i+half, len(x)-1)
		out[i] = (x[b] - x[a]) / (s.T[b] - s.T[a])
	}
	return out
}

// bend works out what the receiver's own smoothing makes of the reference
// speed. A first-order lag of time constant τ delays by τ on the whole, which
// is part of the lag; what remains is half of τ² times the jerk and higher
// terms, so that the reading is linear in τ², not in τ.
func (r *ride) bend() {
	for i, jerk := range slope(r.s, slope(r.s, r.ref.speed, calmReach), calmReach) {
		r.ref.dcurve[i] = jerk / 2
		r.ref.curve[i] = 0
	}
	if r.shape < 1e-4 {
		return
	}
	const dw = 0.02
	r.lowPass(r.ref.curve, r.shape)
	r.lowPass(r.ref.dcurve, r.shape+dw)
	for i := range r.ref.dcurve {
		r.ref.dcurve[i] = (r.ref.dcurve[i] - r.ref.curve[i]) / dw
	}
}

// lowPass puts into out how much more than the speed a receiver reads that
// smooths with a time constant √w and whose mean delay √w is accounted for.
func (r *ride) lowPass(out []float64, w float64) {
	tau := math.Sqrt(w)
	t, v := r.s.T, r.ref.speed
	y := make([]float64, len(t))
	y[0] = v[0]
	for i := 1; i < len(t); i++ {
		h := t[i] - t[i-1]
		e := math.Exp(-h / tau)
		// exact for straight lines between the samples
		slope := (v[i] - v[i-1]) / h
		y[i] = v[i] - slope*tau + (y[i-1]-v[i-1]+slope*tau)*e
	}
	k := 0
	for i := range t {
		at := t[i] + tau
		for k+2 < len(t) && t[k+1] <= at {
			k++
		}
		u := math.Min((at-t[k])/(t[k+1]-t[k]), 1)
		out[i] = y[k] + u*(y[k+1]-y[k]) - v[i]
	}
}
