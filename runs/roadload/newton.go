package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// learn turns the dials to the least cost, starting where they are. It leaves
// the equations factorised there.
func (l *learner) learn(loops int) error {
	damp := 0.0
	for range loops {
		l.curve()
		move, err := l.newtonStep(damp)
		if err != nil {
			return err
		}
		next, gained := l.search(move)
		copy(l.at, next)
		if gained < 0.01 {
			break
		}
	}
	l.noise = l.noiseAt(l.at)
	_, err := l.s.evaluate(l.noise)
	return err
}

// newtonStep solves curvature × step = −gradient, with the diagonal raised
// until the curvature is positive.
func (l *learner) newtonStep(damp float64) ([]float64, error) {
	p := len(l.at)
	var chol mat.Cholesky
	h := mat.NewSymDense(p, nil)
	for try := 0; ; try++ {
		h.CopySym(l.hess)
		for i := range p {
			h.SetSym(i, i, h.At(i, i)+damp)
		}
		if chol.Factorize(h) && chol.Cond() < 1e8 {
			break
		}
		if try > 40 {
			return nil, errSingular
		}
		damp = math.Max(2*damp, 0.5)
	}
	step := mat.NewVecDense(p, nil)
	if err := chol.SolveVecTo(step, l.grad); err != nil {
		return nil, err
	}
	out := make([]float64, p)
	far := 1.0
	for i := range p {
		far = math.Max(far, math.Abs(step.AtVec(i))/dialMove)
	}
	for i := range p {
		out[i] = -step.AtVec(i) / far
	}
	return out, nil
}

// search halves the step until the cost falls, and returns by how much.
func (l *learner) search(move []float64) ([]float64, float64) {
	next := make([]float64, len(l.at))
	for share := 1.0; share > 0.05; share /= 2 {
		for i := range next {
			next[i] = l.at[i] + share*move[i]
		}
		if v := l.cost(next); v < l.value {
			return next, l.value - v
		}
	}
	copy(next, l.at)
	return next, 0
}

// spreadOf is the covariance of the learned logarithms: twice the inverse of
// the curvature of −2 log likelihood.
func (l *learner) spreadOf() (*mat.SymDense, error) {
	p := len(l.at)
	var chol mat.Cholesky
	h := mat.NewSymDense(p, nil)
	h.CopySym(l.hess)
	for try := 0; !chol.Factorize(h); try++ {
		if try > 20 {
			return nil, errSingular
		}
		for i := range p {
			h.SetSym(i, i, h.At(i, i)+0.5)
		}
	}
	out := mat.NewSymDense(p, nil)
	if err := chol.InverseTo(out); err != nil {
		return nil, err
	}
	out.ScaleSym(2, out)
	return out, nil
}
