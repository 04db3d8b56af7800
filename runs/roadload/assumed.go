package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/air"
	"stillair/runs/measure"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// A coast-down determines the force at each speed well, but its split into air
// and tyres only as well as their growth with speed is known. The parameters
// that the fit holds fixed enter the uncertainty by consider covariance
// analysis (Schmidt, Advances in Control Systems 3 (1966) 293): each keeps its
// prior, the sensitivity of the fit to it is computed, and the sensitivity
// times the prior's standard deviation is one term of the covariance.

// assumption is one consider parameter: a force beyond those of the model,
// which the fit holds at zero.
type assumption struct {
	code   finding.Code
	sd     float64     // prior standard deviation of its size
	across float64     // the cross-wind that it concerns, m/s
	kept   bool        // it is part of the road load, so that Force includes it
	shows  bool        // it varies within a day, so that the runs partly show it
	road   *[2]float64 // from and to, m: it concerns only this road; nil: all
}

// considered holds the run and road load that an assumption acts on.
type considered struct{ cda, crr, rho, weight float64 } // m², 1, kg/m³, N

// CrossWindLimit is the wind across the road that SAE J1263 allows (its public
// summaries), m/s. It is assumed where the cross-wind is unknown.
const CrossWindLimit = 8 * units.KMH

// Priors of the consider parameters: standard deviations about zero.
const (
	// Growth with v²: the textbook formulas for car and truck tyres put it at
	// 0 (formulas linear in v), 3.8e-5 (0.0136 + 0.40e-7·V², radial, V in km/h),
	// 1.5e-4 (0.0169 + 0.19e-6·V², bias-ply), 5.0e-4 (0.006 + 0.23e-6·V²; all
	// three in Wong, Theory of Ground Vehicles, from memory) and 5.5e-4 s²/m²
	// (0.005 + (1/p)(0.01 + 0.0095·(V/100)²) at 2.5 bar): root mean square.
	quadraticSD = 3.4e-4 // s²/m²
	// Linear growth beyond the fit's narrow prior: gearbox and wheel bearings
	// drag by oil that is sheared, and tyre formulas linear in v reach 0.02 s/m
	// (Gillespie, Fundamentals of Vehicle Dynamics, from memory).
	linearSD = 0.004 // s/m
	// Of a drag area in yawed flow: 1.5 % a degree (from memory).
	perRadian  = 0.015 * 180 / math.Pi // relative, 1/rad
	sitUpSD    = 0.07                  // increase of CdA of a rider who sits up below sitUpSpeed, relative (common practice)
	sitUpSpeed = 60 / 3.6              // m/s
	coldSD     = 0.10                  // increase of Crr of cold tyres in the first run over warm ones, relative (common practice)
	warmTime   = 900.0                 // s in which the difference falls to 1/e (common practice)
	valleySD   = 0.0006                // slope at each end of a stretch that dips in its middle, without a barometer
)

// assumptions are the consider parameters for a fit of these runs.
func (s *system) assumptions() []assumption {
	all := []assumption{
		{code: codeSquareGrowth, sd: quadraticSD, kept: true},
		{code: codeLinearGrowth, sd: linearSD, kept: true},
		{code: codeYaw, sd: perRadian, across: s.opts.CrossRMS},
		{code: codeAirAcross, sd: 1, across: s.opts.CrossRMS},
		{code: codeSitUp, sd: sitUpSD, kept: true},
		{code: codeColdTyres, sd: coldSD, shows: true},
	}
	if s.lay.press < 0 {
		all = append(all, s.valleys()...)
	}
	return all
}

// valleys returns one assumption for each road: setups ridden on the same road
// share its valley, which then cancels from their difference; setups on
// different roads do not.
func (s *system) valleys() (all []assumption) {
	valley := assumption{code: codeValley, sd: valleySD}
	roads := stretchesOf(s.runs)
	if len(roads) < 2 {
		return []assumption{valley}
	}
	for k := range roads {
		valley.road = &roads[k]
		all = append(all, valley)
	}
	return all
}

// on reports whether an assumption acts on a run.
func (a assumption) on(c *coast) bool {
	return a.road == nil || c.x[0] >= a.road[0] && c.x[0] <= a.road[1]
}

// force is the assumption's for a size of 1, N: at v m/s, so many seconds after the
// first run began, at a place of its stretch between 0 and 1.
func (a assumption) force(b *considered, v, since, along float64) float64 {
	switch a.code {
	case codeSquareGrowth:
		return b.weight * b.crr * v * v
	case codeLinearGrowth:
		return b.weight * b.crr * v
	case codeYaw:
		speed, yaw := air.Apparent(v, a.across, math.Pi/2)
		return b.rho / 2 * b.cda * speed * v * yaw
	case codeAirAcross:
		speed, _ := air.Apparent(v, a.across, math.Pi/2)
		return b.rho / 2 * b.cda * (speed - v) * v
	case codeSitUp:
		return b.rho / 2 * b.cda * v * v / (1 + math.Exp((v-sitUpSpeed)/0.5))
	case codeColdTyres:
		return b.weight * b.crr * math.Exp(-since/warmTime)
	case codeValley:
		return b.weight * (2*along - 1)
	}
	return 0
}

// marks are the losses of speed that an assumption of size 1 causes, at each
// fix of each run.
func (s *system) marks(a assumption) [][]float64 {
	first := s.runs[0].hours
	for _, c := range s.runs {
		first = math.Min(first, c.hours)
	}
	out := make([][]float64, len(s.runs))
	for k, c := range s.runs {
		b := c.considered(s)
		rolled := c.rolled()
		whole := rolled[len(rolled)-1]
		out[k] = make([]float64, len(c.t))
		if !a.on(c) {
			continue
		}
		for i := range len(c.t) - 1 {
			h := c.t[i+1] - c.t[i]
			force := a.force(&b, (c.v[i]+c.v[i+1])/2, (c.hours-first)*3600+c.t[i]-c.t[0], (rolled[i]+rolled[i+1])/2/whole)
			out[k][i+1] = out[k][i]*c.fades.steps[i].speed - h*force/c.inertia*math.Exp(-c.decay[i]/2)
		}
	}
	return out
}

// scaledCost evaluates the equations with the data scaled by share and marks added.
func (s *system) scaledCost(share float64, marks [][]float64, n Noise) (float64, error) {
	pull := append([]float64(nil), s.pull...)
	kept := make([][]float64, len(s.runs))
	for i := range s.pull {
		s.pull[i] *= share
	}
	for k, c := range s.runs {
		kept[k] = append([]float64(nil), c.jac...)
		w := c.width()
		for i := w - 1; i < len(c.jac); i += w {
			c.jac[i] *= share
		}
		for i := range c.t {
			c.rowOf(c.jac, i, 0)[w-1] += marks[k][i]
		}
	}
	v, err := s.evaluate(n)
	for k, c := range s.runs {
		copy(c.jac, kept[k])
	}
	copy(s.pull, pull)
	return v, err
}

// sensitivity is the sensitivity of the fitted road loads to a consider parameter:
// the loss of speed that it causes is fitted like data.
func (s *system) sensitivity(marks [][]float64, n Noise) (moved []float64, minus2 float64, err error) {
	minus2, err = s.scaledCost(0, marks, n)
	return append([]float64(nil), s.x.RawVector().Data[:2*s.lay.setups]...), minus2, err
}

func (c *coast) considered(s *system) considered {
	return considered{s.state.beta[cdaAt(c.setup)], s.state.beta[crrAt(c.setup)], c.rho, c.mass * s.opts.Gravity}
}

// Assumed is the contribution of the consider parameters to the road loads.
type Assumed struct {
	Cov       *mat.SymDense // of CdA and Crr of all setups, as Estimate.Cov
	what      []assumption
	responses [][]float64
	shown     []measure.Value // estimate of each from the runs
	contrasts *mat.SymDense   // as Cov, including the information of the runs
	loadSD    []float64       // relative, of each setup
	massSD    float64         // relative
	airSD     float64         // relative
}

// assume computes the contribution of the consider parameters to the fit.
func (s *system) assume(noise Noise) (Assumed, error) {
	n := 2 * s.lay.setups
	out := Assumed{Cov: mat.NewSymDense(n, nil), contrasts: mat.NewSymDense(n, nil), what: s.assumptions(),
		massSD: s.opts.MassSD, airSD: s.opts.DensitySD, loadSD: s.opts.LoadSD}
	for _, a := range out.what {
		marks := s.marks(a)
		r, alone, err := s.sensitivity(marks, noise)
		if err != nil {
			return out, err
		}
		size := measure.Value{SE: a.sd}
		if a.shows {
			if size, err = s.size(a, marks, alone, noise); err != nil {
				return out, err
			}
		}
		out.responses, out.shown = append(out.responses, r), append(out.shown, size)
		v := mat.NewVecDense(n, r)
		out.Cov.SymRankOne(out.Cov, a.sd*a.sd, v)
		out.contrasts.SymRankOne(out.contrasts, size.SE*size.SE, v)
	}
	for i, sd := range s.opts.LoadSD {
		if at := cdaAt(i); i < s.lay.setups {
			own := math.Pow(sd*s.state.beta[at], 2)
			out.Cov.SetSym(at, at, out.Cov.At(at, at)+own)
			out.contrasts.SetSym(at, at, out.contrasts.At(at, at)+own)
		}
	}
	_, err := s.evaluate(noise)
	return out, err
}

// size estimates a consider parameter from the runs and its prior: generalised
// least squares of the residuals on its marks. The sums follow from −2 log
// likelihoods, which are quadratic in the data; alone is that of the marks
// alone.
func (s *system) size(a assumption, marks [][]float64, alone float64, n Noise) (measure.Value, error) {
	none := make([][]float64, len(marks))
	for k := range marks {
		none[k] = make([]float64, len(marks[k]))
	}
	nothing, err := s.scaledCost(0, none, n)
	if err != nil {
		return measure.Value{}, err
	}
	data, err := s.scaledCost(1, none, n)
	if err != nil {
		return measure.Value{}, err
	}
	both, err := s.scaledCost(1, marks, n)
	precision := alone - nothing + 1/(a.sd*a.sd)
	return measure.Value{X: (both - data - alone + nothing) / 2 / precision, SE: 1 / math.Sqrt(precision)}, err
}

// SE is the part of the standard uncertainty of Σ wᵢ·θᵢ that comes from
// assumptions, θ being the road loads in the order of Cov.
func (a Assumed) SE(w []float64) float64 { return spreadOf(w, a.Cov) }

// ContrastSE is SE for a difference that is corrected by the runs' estimates of
// the assumed quantities.
func (a Assumed) ContrastSE(w []float64) float64 { return spreadOf(w, a.contrasts) }

func spreadOf(w []float64, cov *mat.SymDense) float64 {
	v := mat.NewVecDense(len(w), w)
	return math.Sqrt(math.Max(0, mat.Inner(v, cov, v)))
}

// estimatedBias is the bias of Σ wᵢ·θᵢ from the assumed quantities as the runs
// estimate them.
func (a Assumed) estimatedBias(w []float64) float64 {
	sum := 0.0
	for j, size := range a.shown {
		sum += size.X * a.moves(j, w)
	}
	return sum
}

// moves is the sensitivity of Σ wᵢ·θᵢ to the j-th assumption.
func (a Assumed) moves(j int, w []float64) float64 {
	sum := 0.0
	for i, x := range a.responses[j] {
		sum += w[i] * x
	}
	return sum
}

// Force is the road load of a setup on the level in still air at v m/s, N. It
// is known better than its split: errors of air drag and rolling resistance are
// anti-correlated and largely cancel.
func (e *Estimate) Force(setup int, v float64, b Vehicle) measure.Value {
	l := e.Loads[setup]
	w := make([]float64, 2*len(e.Loads))
	perCdA, perCrr := b.Density/2*v*v, b.Mass*b.Gravity*(1+b.Slope*v)
	w[cdaAt(setup)], w[crrAt(setup)] = perCdA, perCrr
	total := perCdA*l.CdA.X + perCrr*l.Crr.X
	c := considered{l.CdA.X, l.Crr.X, b.Density, b.Mass * b.Gravity}
	variance := perCdA*perCdA*l.CdA.SE*l.CdA.SE + perCrr*perCrr*l.Crr.SE*l.Crr.SE + 2*perCdA*perCrr*l.Cov
	scale := perCdA * l.CdA.X // mass and air: already in the uncertainty of l.CdA, here for the rolling part
	variance += math.Pow(e.Assumed.massSD, 2) * (total*total - scale*scale)
	for j, a := range e.Assumed.what {
		d := e.Assumed.moves(j, w)
		if a.kept {
			d -= a.force(&c, v, math.Inf(1), 0.5)
		}
		variance += a.sd * a.sd * d * d
	}
	return measure.Value{X: total, SE: math.Sqrt(math.Max(variance, 0))}
}

// Power is the power needed to hold v m/s on the level in still air, W at the
// tyre.
func (e *Estimate) Power(setup int, v float64, b Vehicle) measure.Value {
	return e.Force(setup, v, b).Times(v)
}
