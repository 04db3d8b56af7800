package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// learn turns the dials to the least cost, starting where they are. It leaves
// the equations factorised there.
func (l *learner) learn() error {
	l.slope()
	if math.IsInf(l.value, 1) {
		clear(l.at) // no equations there: begin again at what was expected
		l.model = nil
		l.slope()
	}
	if l.model == nil {
		l.believe()
	}
	for range dialLoops {
		step, err := l.newtonStep()
		if err != nil {
			return err
		}
		before := mat.VecDenseCopyOf(l.grad)
		moved, gained := l.search(step)
		if gained < dialGain {
			break
		}
		l.value -= gained
		l.incline()
		l.update(moved, before)
	}
	l.noise = l.noiseAt(l.at)
	_, err := l.s.evaluate(l.noise)
	return err
}

// believe starts the curvature from its diagonal, no flatter than the prior.
func (l *learner) believe() {
	l.model = mat.NewSymDense(len(l.at), nil)
	for i, d := range l.dials {
		bend := 1 / (d.sd * d.sd)
		if l.diagonal[i] > bend && !math.IsInf(l.diagonal[i], 1) {
			bend = l.diagonal[i]
		}
		l.model.SetSym(i, i, bend)
	}
}

// newtonStep solves model × step = −gradient and keeps the step within reach.
func (l *learner) newtonStep() (*mat.VecDense, error) {
	var chol mat.Cholesky
	if !chol.Factorize(l.model) {
		l.believe()
		chol.Factorize(l.model)
	}
	step := mat.NewVecDense(len(l.at), nil)
	if err := chol.SolveVecTo(step, l.grad); err != nil {
		return nil, errSingular
	}
	far := mat.Norm(step, math.Inf(1)) / dialMove
	step.ScaleVec(-1/math.Max(far, 1), step)
	return step, nil
}

// search halves the step until the cost falls, takes it, and returns it with
// what was gained.
func (l *learner) search(step *mat.VecDense) (*mat.VecDense, float64) {
	next := make([]float64, len(l.at))
	for range 5 {
		for i := range next {
			next[i] = l.at[i] + step.AtVec(i)
		}
		if v := l.cost(next); v < l.value {
			copy(l.at, next)
			return step, l.value - v
		}
		step.ScaleVec(0.5, step)
	}
	return step, 0
}

// update teaches the model what the gradient did over a step.
func (l *learner) update(step, before *mat.VecDense) {
	p := len(l.at)
	change, believed := mat.NewVecDense(p, nil), mat.NewVecDense(p, nil)
	change.SubVec(l.grad, before)
	believed.MulVec(l.model, step)
	along, expected := mat.Dot(change, step), mat.Dot(step, believed)
	if along <= 1e-3*expected {
		return
	}
	l.model.SymRankOne(l.model, 1/along, change)
	l.model.SymRankOne(l.model, -1/expected, believed)
}

// spreadOf is the covariance of the learned logarithms: twice the inverse of
// the curvature of −2 log likelihood.
func (l *learner) spreadOf() (*mat.SymDense, error) {
	h := l.curvature()
	var chol mat.Cholesky
	for try := 0; !chol.Factorize(h); try++ {
		if try > 20 {
			return nil, errSingular
		}
		for i, d := range l.dials {
			h.SetSym(i, i, h.At(i, i)+1/(d.sd*d.sd))
		}
	}
	out := mat.NewSymDense(len(l.at), nil)
	if err := chol.InverseTo(out); err != nil {
		return nil, err
	}
	out.ScaleSym(2, out)
	return out, nil
}
