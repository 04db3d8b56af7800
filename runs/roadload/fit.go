package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// Fit finds the road load of every setup among the runs. All setups are fitted
// together, so what they share (the road's profile, the size of gusts) cancels
// in their differences.
func Fit(runs []Run, opts Options) (*Estimate, error) {
	if err := check(runs); err != nil {
		return nil, err
	}
	s := newSystem(coasts(runs), opts)
	s.guess()
	l := newLearner(s, opts.Noise)
	if err := s.settle(l); err != nil {
		return nil, err
	}
	return s.report(l)
}

// coasts prepares the runs.
func coasts(runs []Run) []*coast {
	middle := 0.0
	for _, r := range runs {
		middle += r.T[0] / float64(len(runs))
	}
	out := make([]*coast, len(runs))
	for i, r := range runs {
		out[i] = newCoast(r, middle)
	}
	return out
}

// guess starts every setup from what most bikes have.
func (s *system) guess() {
	for i := range s.lay.setups {
		s.state.beta[cdaAt(i)], s.state.beta[crrAt(i)] = 0.5, 0.018
	}
}

const (
	settleLoops = 30
	settled     = 1e-6 // relative change of the road load
)

// settle alternates between fitting at a noise and learning the noise at a fit.
func (s *system) settle(l *learner) error {
	if err := s.fitAt(l.noise); err != nil {
		return err
	}
	for range 2 {
		if err := l.learn(dialLoops); err != nil {
			return err
		}
		if err := s.fitAt(l.noise); err != nil {
			return err
		}
	}
	return nil
}

// fitAt fits at a noise that is held: Gauss and Newton's iteration.
func (s *system) fitAt(n Noise) error {
	for range settleLoops {
		s.linearise(n)
		if _, err := s.evaluate(n); err != nil {
			return err
		}
		if s.improve() < settled {
			return nil
		}
	}
	return nil
}

// report turns the fit into an Estimate.
func (s *system) report(l *learner) (*Estimate, error) {
	l.curve()
	if _, err := s.evaluate(l.noise); err != nil {
		return nil, err
	}
	cov, err := s.loadCov()
	if err != nil {
		return nil, err
	}
	e := &Estimate{Cov: cov, Noise: l.noise}
	for i := range s.lay.setups {
		cda, crr := cdaAt(i), crrAt(i)
		ld := Load{
			CdA: measure.Value{X: s.state.beta[cda], SE: math.Sqrt(cov.At(cda, cda))},
			Crr: measure.Value{X: s.state.beta[crr], SE: math.Sqrt(cov.At(crr, crr))},
			Cov: cov.At(cda, crr),
		}
		w := mat.NewVecDense(cov.SymmetricDim(), nil)
		w.SetVec(cda, 1)
		if ld.DoF, err = s.freedom(l, w); err != nil {
			return nil, err
		}
		ld.CdACI, ld.CrrCI = ld.CdA.Interval(0.95, ld.DoF), ld.Crr.Interval(0.95, ld.DoF)
		e.Loads = append(e.Loads, ld)
	}
	return e, nil
}

// freedom returns Satterthwaite's degrees of freedom of wᵀ·(road loads):
// 2·variance² over the variance of that variance, which comes from how well the
// noise is known.
func (s *system) freedom(l *learner, w *mat.VecDense) (float64, error) {
	spread, err := l.spreadOf()
	if err != nil {
		return 0, err
	}
	variance := func(at []float64) (float64, error) {
		if _, err := s.evaluate(l.noiseAt(at)); err != nil {
			return 0, err
		}
		cov, err := s.loadCov()
		if err != nil {
			return 0, err
		}
		return mat.Inner(w, cov, w), nil
	}
	probe := append([]float64(nil), l.at...)
	g := mat.NewVecDense(len(probe), nil)
	base, err := variance(probe)
	if err != nil {
		return 0, err
	}
	for i := range probe {
		probe[i] = l.at[i] + dialStep
		up, err := variance(probe)
		if err != nil {
			return 0, err
		}
		probe[i] = l.at[i]
		g.SetVec(i, (up-base)/dialStep)
	}
	return 2 * base * base / mat.Inner(g, spread, g), nil
}
