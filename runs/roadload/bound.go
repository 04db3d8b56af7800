package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Bound returns the Cramér-Rao bound of a test: the covariance of CdA (m²) and
// Crr, setup by setup as in Estimate.Cov, that no unbiased estimator can go
// below when the noise is as in opts and known. The runs give the times and
// places of the fixes; of their speeds only the first of each run is used.
// Random effects (wind, slope, the road's profile) contribute the information
// of their priors.
func Bound(runs []Run, loads []Design, opts Options) (*mat.SymDense, error) {
	_, cov, err := bound(planned(runs), loads, opts)
	return cov, err
}

// planned prepares the runs of a design.
func planned(runs []Run) []*coast {
	out := make([]*coast, len(runs))
	for i, r := range runs {
		out[i] = newCoast(r, 0)
	}
	return out
}

func bound(coasts []*coast, loads []Design, opts Options) (*system, *mat.SymDense, error) {
	opts.Noise = opts.Noise.altitudeNoise(coasts)
	s := newSystem(coasts, opts)
	for i, d := range loads {
		s.state.beta[cdaAt(i)], s.state.beta[crrAt(i)] = d.CdA, d.Crr
	}
	s.linearise(opts.Noise)
	s.linearise(opts.Noise)
	if _, err := s.evaluate(opts.Noise); err != nil {
		return nil, nil, err
	}
	cov, err := s.loadCov()
	return s, cov, err
}

// Expected is the expected uncertainty of a planned test: the bound from noise,
// and the part from assumptions.
type Expected struct {
	Noise   *mat.SymDense // as Estimate.Cov
	Assumed Assumed
	loads   []Design
	common  float64 // relative uncertainty of mass and air
}

// Expect computes it for a test given as for Bound. Of few runs it expects what Fit
// allows for there, a drag area that varies a little from run to run.
func Expect(runs []Run, loads []Design, opts Options) (Expected, error) {
	coasts := planned(runs)
	if few(coasts) {
		opts.Noise.PostureSD = math.Max(opts.Noise.PostureSD, steadyPosture)
	}
	s, cov, err := bound(coasts, loads, opts)
	if err != nil {
		return Expected{}, err
	}
	e := Expected{Noise: cov, loads: loads, common: math.Hypot(opts.MassSD, opts.DensitySD)}
	e.Assumed, err = s.assume(s.opts.Noise)
	return e, err
}

// Alike is the standard error of the difference in CdA between two setups as
// Estimate.Alike will give it, m²: the parts from noise and from assumptions.
func (e Expected) Alike(a, b int) (noise, assumed float64) {
	prior := TyresAlike * e.loads[a].Crr
	k := crrRegression(e.Noise, a, b, prior)
	w := make([]float64, 2*len(e.loads))
	w[cdaAt(b)], w[cdaAt(a)], w[crrAt(b)], w[crrAt(a)] = 1, -1, -k, k
	v := mat.NewVecDense(len(w), w)
	return math.Sqrt(math.Max(0, mat.Inner(v, e.Noise, v))), math.Hypot(e.Assumed.ContrastSE(w), k*prior)
}

// Alone is the same for the CdA of one setup.
func (e Expected) Alone(setup int) (noise, assumed float64) {
	w := make([]float64, 2*len(e.loads))
	w[cdaAt(setup)] = 1
	return math.Sqrt(e.Noise.At(cdaAt(setup), cdaAt(setup))), math.Hypot(e.Assumed.SE(w), e.common*e.loads[setup].CdA)
}

// Design is a road load for which a bound is computed.
type Design struct{ CdA, Crr float64 }

// loadCov is the covariance of the road loads.
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
