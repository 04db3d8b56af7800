package roadload

import (
	"math"
	"slices"

	"stillair/runs/usual"
	"stillair/sensors/finding"
)

// Fit estimates the road load of every setup among the runs. All setups are
// fitted together, so common errors (the road's profile) cancel in their
// differences. Runs of a single fix are left out with their reason.
func Fit(runs []Run, opts Options) (*Estimate, error) {
	usable, out, err := check(runs, opts)
	if err != nil {
		return nil, err
	}
	e, err := fitWithFallback(usable, opts)
	if opts.Rolling.SE == 0 && (err != nil || e.leansOn(tyres())) {
		opts.Rolling = tyres()
		if leaning, failed := fitWithFallback(usable, opts); failed == nil {
			e, err = leaning, nil
			e.Notes = append(e.Notes, finding.New(codeTyres, finding.Num("crr", opts.Rolling.X).With(opts.Rolling.SE)))
		}
	}
	if err == nil {
		e.addBare(out)
	}
	return e, err
}

// fitWithFallback fits the full model, or a simpler one if that fails.
func fitWithFallback(runs []Run, opts Options) (*Estimate, error) {
	e, err := fitOnce(runs, opts)
	if err == nil && e.finite() {
		return e, nil
	}
	return fitSimpler(runs, opts, err)
}

// fitOnce is Fit with the full model.
func fitOnce(runs []Run, opts Options) (*Estimate, error) {
	all := coasts(runs)
	opts.Noise = opts.Noise.altitudeNoise(all)
	s := newSystem(all, opts)
	s.guess()
	l := newLearner(s, opts.Noise)
	if err := s.settle(l); err != nil {
		return nil, err
	}
	s, l, err := s.withPlaces(l)
	if err != nil {
		return nil, err
	}
	s, l, out, err := clean(s, l)
	if err != nil {
		return nil, err
	}
	s, l = s.withPosture(l)
	e, err := s.report(l)
	if err != nil {
		return nil, err
	}
	e.addRejected(out)
	return e, nil
}

// simplerTimes widens the intervals of the simpler model, which leaves out a
// road profile that could not be learned: intervals of five pairs on a road of
// 0.2 % are up to 2.3 times those on a smooth one (see the package's doc).
const simplerTimes = 2.3

// fitSimpler is the fallback if the equations cannot be solved: the road is
// treated as smooth, and the uncertainty is widened to allow for a rough one.
func fitSimpler(runs []Run, opts Options, why error) (*Estimate, error) {
	if opts.Noise.RoadSD <= 0 {
		if why == nil {
			why = errSingular
		}
		return nil, why
	}
	opts.Noise.RoadSD = 0
	e, err := fitOnce(runs, opts)
	if err != nil {
		return nil, err
	}
	if !e.finite() {
		return nil, errSingular
	}
	e.Cov.ScaleSym(simplerTimes*simplerTimes, e.Cov)
	for i, d := range e.slopes {
		e.slopes[i].ScaleSym(simplerTimes*simplerTimes, d)
	}
	for i := range e.Loads {
		e.Loads[i].Cov = e.Cov.At(cdaAt(i), crrAt(i))
		e.Loads[i].intervals(e, i)
	}
	e.Notes = append(e.Notes, finding.New(codeSimpler))
	return e, nil
}

// finite reports whether every figure is finite.
func (e *Estimate) finite() bool {
	for _, l := range e.Loads {
		if sum := l.CdA.X + l.CdA.SE + l.Crr.X + l.Crr.SE; math.IsNaN(sum) || math.IsInf(sum, 0) {
			return false
		}
	}
	return true
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

// guess computes starting values for every setup by linear regression of
// −M·dv/dt on ½ρv² and m·g·(1 + k·v). They are rough, as wind and slope are
// neglected, so implausible values are clamped.
func (s *system) guess() {
	for i := range s.lay.setups {
		var l line
		for _, c := range s.runs {
			if c.setup == i {
				c.forces(s.opts, l.add)
			}
		}
		cda, crr := usual.CdA, usual.Crr
		if found, ok := l.solve(); ok && found.CdA.X > leastCdA && found.Crr.X > leastCrr {
			cda, crr = found.CdA.X, found.Crr.X
		} else if l.xx > 0 {
			cda = (l.xf - usual.Crr*l.xy) / l.xx // usual rolling resistance, the rest is air drag
		}
		s.state.beta[cdaAt(i)] = math.Max(cda, leastCdA)
		s.state.beta[crrAt(i)] = math.Min(math.Max(crr, leastCrr), mostCrr)
	}
}

// The search begins at an average motorcycle (package usual) and stays between what
// the lightest streamliner and the worst tyre have (common practice).
const (
	leastCdA          = 0.05
	leastCrr, mostCrr = 0.003, 0.06
	forceOver         = 4.0 // s between the fixes used for a force
)

// forces calls add with ½ρv², m·g·(1 + k·v) and the force over every few
// seconds.
func (c *coast) forces(opts Options, add func(x, y, f float64)) {
	from := 0
	for i := range c.t {
		if h := c.t[i] - c.t[from]; h >= forceOver || i == len(c.t)-1 && h > 0 {
			v := (c.z[i] + c.z[from]) / 2
			add(c.rho/2*v*v, c.mass*opts.Gravity*(1+opts.Slope.X*v), c.inertia*(c.z[from]-c.z[i])/h)
			from = i
		}
	}
}

const (
	settleLoops = 60
	fullSteps   = 12   // before steps are halved: poorly determined winds oscillate about the solution
	settled     = 1e-6 // relative change of the road load
	// The tolerance after many steps: far below the noise of any test.
	nearlySettled = 1e-3
	sameFit       = 0.02 // the same, for two fits whose learned noise is equivalent
)

// settle alternates between fitting at fixed noise and learning the noise at a
// fixed fit until convergence.
func (s *system) settle(l *learner) error {
	if _, err := s.fitAt(l.noise); err != nil {
		return err
	}
	for range 3 {
		if err := l.learn(); err != nil {
			return err
		}
		moved, err := s.fitAt(l.noise)
		if err != nil || moved < sameFit {
			return err
		}
	}
	return nil
}

// fitAt fits at fixed noise by Gauss-Newton iteration. It returns the relative
// change of the road loads.
func (s *system) fitAt(n Noise) (float64, error) {
	before := append([]float64(nil), s.state.beta[:2*s.lay.setups]...)
	moved := math.Inf(1)
	for loop := range settleLoops {
		s.linearise(n)
		if _, err := s.evaluate(n); err != nil {
			return 0, err
		}
		share := 1.0
		if loop >= fullSteps {
			share = 0.5
		}
		if moved = s.improve(share); moved <= settled {
			return s.movedFrom(before), nil
		}
	}
	if !(moved <= nearlySettled) { // includes NaN
		return 0, ErrNoFit
	}
	return s.movedFrom(before), nil
}

// movedFrom is the relative change of the road loads.
func (s *system) movedFrom(before []float64) float64 {
	far := 0.0
	for i, b := range before {
		far = math.Max(far, math.Abs(s.state.beta[i]/b-1))
	}
	return far
}

// report turns the fit into an Estimate.
func (s *system) report(l *learner) (*Estimate, error) {
	e := &Estimate{Noise: l.noise, dials: l.dials}
	moved, err := s.uncertainty(e, l)
	if err != nil {
		return nil, err
	}
	for i := range s.lay.setups {
		ld := s.load(e, i)
		ld.CdA.X += moved[cdaAt(i)]
		ld.Crr.X += moved[crrAt(i)]
		e.Loads = append(e.Loads, ld)
	}
	for i := range e.Loads {
		e.Loads[i].intervals(e, i)
	}
	if e.Assumed, err = s.assume(l.noise); err != nil {
		return nil, err
	}
	e.held = append([]float64(nil), s.state.beta[:2*s.lay.setups]...)
	e.Notes = s.notes(e)
	e.Fitted = s.fitted()
	e.Runs = s.runFits()
	e.Pairs = s.pairFits()
	return e, nil
}

// load is the point estimate of a setup.
func (s *system) load(e *Estimate, setup int) Load {
	l := Load{Cov: e.Cov.At(cdaAt(setup), crrAt(setup))}
	l.CdA.X, l.Crr.X = s.state.beta[cdaAt(setup)], s.state.beta[crrAt(setup)]
	l.Pairs = countPairs(s.runs, setup)
	return l
}

// way is 0 in direction +1 and 1 in direction −1.
func way(dir float64) int {
	if dir > 0 {
		return 0
	}
	return 1
}

// intervals fills in the intervals of one setup.
func (l *Load) intervals(e *Estimate, setup int) {
	w := make([]float64, 2*len(e.Loads))
	w[cdaAt(setup)] = 1
	l.CdA, l.DoF = e.Combine(w)
	w[cdaAt(setup)], w[crrAt(setup)] = 0, 1
	l.Crr, l.CrrDoF = e.Combine(w)
	l.CdACI, l.CrrCI = l.CdA.Interval(0.95, l.DoF), l.Crr.Interval(0.95, l.CrrDoF)
}

// addRejected adds the runs that were left out to those that were used, in
// order of their ID.
func (e *Estimate) addRejected(out []rejected) {
	for _, r := range out {
		e.Runs = append(e.Runs, RunFit{ID: r.run.id, Setup: r.run.setup, Pair: r.run.pair, Dir: r.run.dir, T: r.run.t, V: r.run.z, Fit: r.run.v, Reason: finding.New(r.reason).OfRun(r.run.id)})
	}
	e.sortRuns()
}

// addBare does so with the runs without a change of speed.
func (e *Estimate) addBare(out []Run) {
	for _, r := range out {
		e.Runs = append(e.Runs, RunFit{ID: r.ID, Setup: r.Setup, Pair: r.Pair, Dir: r.Dir, T: r.T, V: r.V, Fit: r.V, Reason: ErrSamples.Finding.OfRun(r.ID)})
	}
	e.sortRuns()
}

func (e *Estimate) sortRuns() {
	slices.SortFunc(e.Runs, func(a, b RunFit) int { return a.ID - b.ID })
}
