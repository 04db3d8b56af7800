package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// learn minimises the cost from the current values of the dials by BFGS. It
// leaves the equations factorised at the minimum.
func (l *learner) learn() error {
	l.gradientAndDiagonal()
	if math.IsInf(l.value, 1) {
		clear(l.at) // no equations there: restart at the prior
		l.model = nil
		l.gradientAndDiagonal()
	}
	if l.model == nil {
		l.resetHessian()
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

// resetHessian initialises the Hessian model with its diagonal, no flatter than the
// prior.
func (l *learner) resetHessian() {
	l.model = mat.NewSymDense(len(l.at), nil)
	for i, d := range l.dials {
		bend := 1 / (d.sd * d.sd)
		if l.diagonal[i] > bend && !math.IsInf(l.diagonal[i], 1) {
			bend = l.diagonal[i]
		}
		l.model.SetSym(i, i, bend)
	}
}

// newtonStep solves model × step = −gradient and limits the length of the step.
func (l *learner) newtonStep() (*mat.VecDense, error) {
	var chol mat.Cholesky
	if !chol.Factorize(l.model) {
		l.resetHessian()
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

// search is a backtracking line search: it halves the step until the cost
// falls, takes it, and returns it with the gain.
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

// update is the BFGS update of the Hessian model.
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
