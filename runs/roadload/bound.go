package roadload

import (
	"gonum.org/v1/gonum/mat"
)

// Bound returns the Cramér-Rao bound of a test: the covariance of CdA (m²) and
// Crr, setup by setup as in Estimate.Cov, that no unbiased estimator can go
// below when the noise is as in opts and known. The runs say when and where
// fixes are taken; their speeds are not looked at but for the first of each.
// Random effects (wind, slope, the road's profile) count as information of
// their own spread.
func Bound(runs []Run, loads []Design, opts Options) (*mat.SymDense, error) {
	coasts := make([]*coast, len(runs))
	for i, r := range runs {
		coasts[i] = newCoast(r, 0)
	}
	opts.Noise = opts.Noise.altitudeNoise(coasts)
	s := newSystem(coasts, opts)
	for i, d := range loads {
		s.state.beta[cdaAt(i)], s.state.beta[crrAt(i)] = d.CdA, d.Crr
	}
	s.linearise(opts.Noise)
	s.linearise(opts.Noise)
	if _, err := s.evaluate(opts.Noise); err != nil {
		return nil, err
	}
	return s.loadCov()
}

// Design is a road load that a bound is computed for.
type Design struct{ CdA, Crr float64 }

// loadCov is the covariance of the wanted unknowns.
func (s *system) loadCov() (*mat.SymDense, error) {
	n := 2 * s.lay.setups
	cov := mat.NewSymDense(n, nil)
	e, x := mat.NewVecDense(s.lay.size, nil), mat.NewVecDense(s.lay.size, nil)
	for j := range n {
		e.Zero()
		e.SetVec(j, 1)
		if err := s.chol.SolveVecTo(x, e); err != nil {
			return nil, err
		}
		for i := range j + 1 {
			cov.SetSym(i, j, x.AtVec(i))
		}
	}
	return cov, nil
}
