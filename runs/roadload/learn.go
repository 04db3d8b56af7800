package roadload

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// dial is one noise parameter that is learned: its logarithm has a normal prior
// about the starting value.
type dial struct {
	figure figure
	sd     float64 // of the prior, of the logarithm
}

// figure names a noise parameter. (A function could not be serialised with an
// Estimate.)
type figure int

const (
	gustSize figure = iota
	gustTime
	whiteSize
	driftSize
	driftTime
	roadSize
	roadLength
	heightSize
	heightWalk
	shiftSize
	postureSize
)

func (d dial) of(n *Noise) *float64 {
	return [...]*float64{&n.GustSD, &n.GustTime, &n.WhiteSD, &n.DriftSD, &n.DriftTime,
		&n.RoadSD, &n.RoadLength, &n.HeightSD, &n.HeightWalk, &n.ShiftSD, &n.PostureSD}[d.figure]
}

// Prior standard deviations of the logarithms. Standard deviations may be three
// times the expected one, or a third; gusts and roads vary more, and any
// shrinkage towards the expected value makes a gusty day's intervals too
// narrow; correlation times are harder to learn and matter less.
const (
	sizeSD    = 1.2
	gustSD    = 2.0
	timeSD    = 0.4
	roadSD    = 2.0
	postureSD = 1.0
)

// dials lists the noise parameters that are learned from the runs of a layout.
func dials(l layout) []dial {
	d := []dial{{gustSize, gustSD}, {gustTime, timeSD}, {whiteSize, sizeSD}, {driftSize, sizeSD}, {driftTime, timeSD}}
	if l.knots > 0 {
		d = append(d, dial{roadSize, roadSD})
	}
	if l.knots > 0 && l.mirror == nil {
		d = append(d, dial{roadLength, timeSD})
	}
	if l.press >= 0 {
		d = append(d, dial{heightSize, sizeSD}, dial{heightWalk, sizeSD})
	}
	if l.posture >= 0 {
		d = append(d, dial{postureSize, postureSD})
	}
	if l.shifts {
		d = append(d, dial{shiftSize, sizeSD})
	}
	return d
}

// learner estimates the noise by restricted maximum likelihood (REML) with the
// priors of the dials, by the quasi-Newton method of Broyden, Fletcher,
// Goldfarb and Shanno (BFGS) with finite-difference gradients.
type learner struct {
	s     *system
	dials []dial
	prior Noise
	at    []float64 // logarithms relative to the prior
	noise Noise

	value    float64       // cost at at
	grad     *mat.VecDense // of the cost
	diagonal []float64     // of its curvature
	model    *mat.SymDense // curvature approximated by the iteration
}

func newLearner(s *system, prior Noise) *learner {
	d := dials(s.lay)
	return &learner{s: s, dials: d, prior: prior, noise: prior, at: make([]float64, len(d)),
		grad: mat.NewVecDense(len(d), nil), diagonal: make([]float64, len(d))}
}

// on returns a learner for another system that starts from this one's result.
func (l *learner) on(s *system) *learner {
	next := newLearner(s, s.opts.Noise)
	for i, d := range next.dials {
		if k := slices.IndexFunc(l.dials, func(o dial) bool { return o.figure == d.figure }); k >= 0 {
			next.at[i] = l.at[k]
		}
	}
	next.noise = next.noiseAt(next.at)
	return next
}

// noiseAt converts logarithms to noise parameters.
//
// Dials are limited to farDial: where the likelihood is flat towards zero (a
// smooth road, still air), only rounding errors differ beyond.
func (l *learner) noiseAt(at []float64) Noise {
	n := l.prior
	for i, d := range l.dials {
		*d.of(&n) *= math.Exp(math.Max(-farDial, math.Min(farDial, at[i])))
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
	dialStep  = 0.02 // of the finite differences, in the logarithm
	dialMove  = 1.0  // largest step of a parameter in one iteration
	farDial   = 4.0  // of a logarithm: a factor of 55, two standard deviations of the widest prior
	dialLoops = 25
	dialGain  = 0.01 // of the cost: a smaller gain ends the iteration
)

// gradientAndDiagonal computes the gradient and the diagonal of the Hessian of
// the cost at l.at.
func (l *learner) gradientAndDiagonal() {
	probe := append([]float64(nil), l.at...)
	l.value = l.cost(probe)
	for i := range probe {
		probe[i] = l.at[i] + dialStep
		up := l.cost(probe)
		probe[i] = l.at[i] - dialStep
		down := l.cost(probe)
		probe[i] = l.at[i]
		l.grad.SetVec(i, (up-down)/(2*dialStep))
		l.diagonal[i] = (up - 2*l.value + down) / (dialStep * dialStep)
	}
}

// incline computes the gradient alone, by forward differences corrected with
// the current curvature model: half the work of slope.
func (l *learner) incline() {
	probe := append([]float64(nil), l.at...)
	for i := range probe {
		probe[i] = l.at[i] + dialStep
		up := l.cost(probe)
		probe[i] = l.at[i]
		l.grad.SetVec(i, (up-l.value)/dialStep-dialStep/2*l.model.At(i, i))
	}
}

// curvature computes the Hessian of the cost at l.at. The mixed terms come from
// forward differences, corrected with the diagonal.
func (l *learner) curvature() *mat.SymDense {
	l.gradientAndDiagonal()
	p := len(l.at)
	h := mat.NewSymDense(p, nil)
	probe := append([]float64(nil), l.at...)
	for i := range p {
		h.SetSym(i, i, l.diagonal[i])
		for j := range i {
			probe[i], probe[j] = l.at[i]+dialStep, l.at[j]+dialStep
			both := l.cost(probe)
			probe[i], probe[j] = l.at[i]-dialStep, l.at[j]-dialStep
			neither := l.cost(probe)
			probe[i], probe[j] = l.at[i], l.at[j]
			sum := (both - 2*l.value + neither) / (dialStep * dialStep)
			h.SetSym(i, j, (sum-l.diagonal[i]-l.diagonal[j])/2)
		}
	}
	return h
}

// Unsure is the standard uncertainty of the logarithm of a learned noise
// parameter; +Inf if it was not learned.
func (e *Estimate) Unsure(of func(*Noise) *float64) float64 {
	var n Noise
	for i, d := range e.dials {
		if e.spread != nil && i < e.spread.SymmetricDim() && d.of(&n) == of(&n) {
			return math.Sqrt(math.Max(0, e.spread.At(i, i)))
		}
	}
	return math.Inf(1)
}
