package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// dial is one figure of the noise that is learned: by its logarithm, with a
// normal prior about where learning starts.
type dial struct {
	of func(*Noise) *float64
	sd float64 // of the prior, of the logarithm
}

// Prior widths. Sizes may well be double or half of what was expected, times
// less so: they are harder to learn and matter less.
const (
	sizeSD = 0.8
	timeSD = 0.4
	roadSD = 1.0
)

// dials lists what is learned from the runs of a layout.
func dials(l layout) []dial {
	d := []dial{
		{func(n *Noise) *float64 { return &n.GustSD }, sizeSD},
		{func(n *Noise) *float64 { return &n.GustTime }, timeSD},
		{func(n *Noise) *float64 { return &n.WhiteSD }, sizeSD},
		{func(n *Noise) *float64 { return &n.DriftSD }, sizeSD},
		{func(n *Noise) *float64 { return &n.DriftTime }, timeSD},
	}
	if l.knots > 0 {
		d = append(d,
			dial{func(n *Noise) *float64 { return &n.RoadSD }, roadSD},
			dial{func(n *Noise) *float64 { return &n.RoadLength }, timeSD})
	}
	return d
}

// learner finds the noise that makes the runs most likely: restricted maximum
// likelihood plus the priors of the dials, by Newton's method with the
// curvature from differences.
type learner struct {
	s     *system
	dials []dial
	prior Noise
	at    []float64 // logarithms over the prior's
	noise Noise
	value float64
	grad  *mat.VecDense
	hess  *mat.SymDense
}

func newLearner(s *system, prior Noise) *learner {
	d := dials(s.lay)
	return &learner{s: s, dials: d, prior: prior, noise: prior,
		at: make([]float64, len(d)), grad: mat.NewVecDense(len(d), nil), hess: mat.NewSymDense(len(d), nil)}
}

// noiseAt turns logarithms into a noise.
func (l *learner) noiseAt(at []float64) Noise {
	n := l.prior
	for i, d := range l.dials {
		*d.of(&n) *= math.Exp(at[i])
	}
	return n
}

// cost is −2 log of likelihood times prior.
func (l *learner) cost(at []float64) float64 {
	v, err := l.s.evaluate(l.noiseAt(at))
	if err != nil || math.IsNaN(v) {
		return math.Inf(1)
	}
	for i, d := range l.dials {
		z := at[i] / d.sd
		v += z * z
	}
	return v
}

const (
	dialStep  = 0.02 // of the differences, in the logarithm
	dialMove  = 1.0  // the farthest a dial turns at once
	dialLoops = 12
)

// curve computes gradient and Hessian of the cost at l.at by differences.
func (l *learner) curve() {
	p := len(l.at)
	probe := append([]float64(nil), l.at...)
	up := make([]float64, p)
	l.value = l.cost(probe)
	for i := range p {
		probe[i] = l.at[i] + dialStep
		up[i] = l.cost(probe)
		probe[i] = l.at[i] - dialStep
		down := l.cost(probe)
		probe[i] = l.at[i]
		l.grad.SetVec(i, (up[i]-down)/(2*dialStep))
		l.hess.SetSym(i, i, (up[i]-2*l.value+down)/(dialStep*dialStep))
	}
	for i := range p {
		for j := range i {
			probe[i], probe[j] = l.at[i]+dialStep, l.at[j]+dialStep
			both := l.cost(probe)
			probe[i], probe[j] = l.at[i], l.at[j]
			cross := (both - up[i] - up[j] + l.value) / (dialStep * dialStep)
			// forward differences carry half a step of the diagonal terms'
			// change, which Newton's method does not mind
			l.hess.SetSym(i, j, cross)
		}
	}
}
