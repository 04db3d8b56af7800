package roadload

import (
	"math"

	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/mat"
)

// system is the mixed model of all runs: Henderson's equations
//
//	(JᵀR⁻¹J + D⁻¹)·β = JᵀR⁻¹y
//
// with R the errors' covariance, block by block from the runs, and D that of
// the random effects.
type system struct {
	opts  Options
	lay   layout
	runs  []*coast
	state state
	pull  []float64 // gradient of the prior of Crr, for each setup

	a    *mat.SymDense
	g, x *mat.VecDense
	chol mat.Cholesky
}

func newSystem(runs []*coast, opts Options) *system {
	s := &system{opts: opts, runs: runs, lay: newLayout(runs, opts)}
	for _, c := range runs {
		c.attach(s.lay)
	}
	s.state = state{beta: make([]float64, s.lay.size), slope: opts.Slope.X, gravity: opts.Gravity}
	if opts.Rolling.SE > 0 {
		s.pull = make([]float64, s.lay.setups)
	}
	s.a = mat.NewSymDense(s.lay.size, nil)
	s.g, s.x = mat.NewVecDense(s.lay.size, nil), mat.NewVecDense(s.lay.size, nil)
	return s
}

// linearise integrates all runs at the current state.
func (s *system) linearise(n Noise) {
	for _, c := range s.runs {
		c.spread(n)
		c.integrate(s.lay, &s.state)
	}
	for i := range s.pull {
		s.pull[i] = (s.opts.Rolling.X - s.state.beta[crrAt(i)]) / (s.opts.Rolling.SE * s.opts.Rolling.SE)
	}
}

// evaluate builds and factorises the equations for a noise and returns −2 times
// the logarithm of the restricted likelihood, except for a constant.
func (s *system) evaluate(n Noise) (float64, error) {
	s.a.Zero()
	s.g.Zero()
	minus2, yy := s.prior(n), 0.0
	for i, p := range s.pull {
		s.g.SetVec(crrAt(i), p)
		yy += math.Pow(p*s.opts.Rolling.SE, 2)
	}
	for _, c := range s.runs {
		minus2 += c.whiten(n) + c.eliminate()
		yy += s.scatter(c)
	}
	if !s.chol.Factorize(s.a) {
		return math.Inf(1), errSingular
	}
	if err := s.chol.SolveVecTo(s.x, s.g); err != nil {
		return math.Inf(1), errSingular
	}
	return minus2 + s.chol.LogDet() + yy - mat.Dot(s.x, s.g), nil
}

// upper is U of the factorised equations, UᵀU.
func (s *system) upper() blas64.Triangular {
	return s.chol.RawU().(*mat.TriDense).RawTriangular()
}

// scatter adds a run's normal equations to the common ones and returns its
// sum of squares.
func (s *system) scatter(c *coast) float64 {
	w := c.width()
	raw := s.a.RawSymmetric()
	for i, gi := range c.cols {
		row := c.norm[(c.own+i)*w : (c.own+i+1)*w]
		for j := i; j < len(c.cols); j++ {
			a, b := gi, c.cols[j]
			if a > b {
				a, b = b, a
			}
			raw.Data[a*raw.Stride+b] += row[c.own+j]
		}
		s.g.SetVec(gi, s.g.AtVec(gi)+row[w-1])
	}
	return c.norm[w*w-1]
}

// prior adds D⁻¹ and returns the logarithm of the determinant of D.
func (s *system) prior(n Noise) (logDet float64) {
	add := func(i, j int, x float64) { s.a.SetSym(i, j, s.a.At(i, j)+x) }
	free := func(i int, sd float64) {
		add(i, i, 1/(sd*sd))
		logDet += 2 * math.Log(sd)
	}
	for i := range s.pull {
		free(crrAt(i), s.opts.Rolling.SE)
	}
	if s.lay.slope >= 0 {
		free(s.lay.slope, s.opts.Slope.SE)
	}
	for _, day := range s.lay.days {
		logDet += sharedPrior(day, s.lay.wind, s.opts.WindSD, commonWindSD, add)
		logDet += sharedPrior(day, s.lay.grade, s.opts.GradeSD, commonGradeSD, add)
	}
	for _, at := range s.lay.shift {
		if at >= 0 {
			free(at, s.lay.shiftSD(n))
		}
	}
	if s.lay.posture >= 0 {
		for i := range s.runs {
			free(s.lay.posture+i, n.PostureSD)
		}
	}
	if s.lay.warm >= 0 {
		free(s.lay.warm, s.opts.WarmUpSD)
	}
	if s.lay.press >= 0 {
		free(s.lay.press, pressSD)
	}
	knots := func(i, j int, x float64) { add(s.lay.knot+i, s.lay.knot+j, x) }
	if s.lay.mirror != nil {
		return logDet + s.lay.mirror.prior(n, knots)
	}
	return logDet + profilePrior(s.lay.road, n, knots)
}

// Prior standard deviations of what all pairs of a day have in common: a steady
// wind along the road, up to the 16 km/h of mean wind that SAE J1263 allows
// (public summaries), and the slope of a road between two towns (common
// practice). Both are wide: the runs determine them well, and only deviations
// need an informative prior.
const (
	commonWindSD  = 16 / 3.6 // m/s
	commonGradeSD = 0.03     // 1
)

// sharedPrior adds the inverse covariance of effects, from index at on, that
// have a deviation each and one mean in common, and returns the logarithm of
// the determinant of their covariance sd²·I + common²·11ᵀ (Sherman and
// Morrison's formula, and the determinant lemma).
func sharedPrior(members []int, at int, sd, common float64, add func(i, j int, x float64)) float64 {
	n := float64(len(members))
	shared := common * common / (sd*sd + n*common*common)
	for k, i := range members {
		add(at+i, at+i, (1-shared)/(sd*sd))
		for _, j := range members[:k] {
			add(at+j, at+i, -shared/(sd*sd))
		}
	}
	return 2*n*math.Log(sd) + math.Log(1+n*common*common/(sd*sd))
}

// improve takes a fraction of the step to the solution of evaluate (1: a
// Gauss-Newton step, less: a damped one), and returns the relative change of
// the road loads.
func (s *system) improve(share float64) float64 {
	moved := 0.0
	common := make([]float64, s.lay.size)
	for i := range common {
		common[i] = s.x.AtVec(i)
	}
	local := make([]float64, 0, s.lay.size)
	for _, c := range s.runs {
		local = local[:0]
		for _, g := range c.cols {
			local = append(local, common[g])
		}
		own := c.solveOwn(local)
		c.start += share * own[0]
		for j := range c.steps {
			c.steps[j] += share * own[1+j]
		}
	}
	for i := range common {
		if i >= 2*s.lay.setups {
			s.state.beta[i] += share * (common[i] - s.state.beta[i])
			continue
		}
		s.state.beta[i] += share * common[i]
		moved = math.Max(moved, math.Abs(common[i]/s.state.beta[i]))
	}
	return moved
}
