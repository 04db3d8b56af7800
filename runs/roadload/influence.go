package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// without solves the equations without some runs, at the learned noise, and
// returns the change of each unknown.
func (s *system) without(out func(*coast) bool) ([]float64, error) {
	x, _, err := s.solveWithout(out)
	return x, err
}

// solveWithout is without, with the factors of the equations that were solved.
func (s *system) solveWithout(out func(*coast) bool) ([]float64, *mat.Cholesky, error) {
	a := mat.NewSymDense(s.lay.size, nil)
	a.CopySym(s.a)
	g := mat.VecDenseCopyOf(s.g)
	for _, c := range s.runs {
		if !out(c) {
			continue
		}
		w := c.width()
		for i, gi := range c.cols {
			row := c.norm[(c.own+i)*w : (c.own+i+1)*w]
			for j := i; j < len(c.cols); j++ {
				a.SetSym(gi, c.cols[j], a.At(gi, c.cols[j])-row[c.own+j])
			}
			g.SetVec(gi, g.AtVec(gi)-row[w-1])
		}
	}
	var chol mat.Cholesky
	x := mat.NewVecDense(s.lay.size, nil)
	if !chol.Factorize(a) {
		return nil, nil, errSingular
	}
	if err := chol.SolveVecTo(x, g); err != nil {
		return nil, nil, err
	}
	x.SubVec(x, s.x)
	return x.RawVector().Data, &chol, nil
}

// alone is the estimate from one pair, with the road and the noise estimated
// from all runs.
func (s *system) alone(setup, pair int) (cda, crr measure.Value) {
	x, chol, err := s.solveWithout(func(c *coast) bool { return c.setup == setup && c.pairIndex != pair })
	if err != nil {
		return measure.Unknown(), measure.Unknown()
	}
	value := func(i int) measure.Value {
		e, y := mat.NewVecDense(s.lay.size, nil), mat.NewVecDense(s.lay.size, nil)
		e.SetVec(i, 1)
		if err := chol.SolveVecTo(y, e); err != nil {
			return measure.Unknown()
		}
		return measure.Value{X: s.state.beta[i] + x[i], SE: math.Sqrt(y.AtVec(i))}
	}
	return value(cdaAt(setup)), value(crrAt(setup))
}

// moves returns the change of a setup's figures without some runs; infinite if
// too little would be left.
func (s *system) moves(setup int, out func(*coast) bool) (cda, crr float64) {
	x, err := s.without(out)
	if err != nil {
		return math.Inf(1), math.Inf(1)
	}
	return x[cdaAt(setup)], x[crrAt(setup)]
}

// runFits describes every run.
func (s *system) runFits() []RunFit {
	var fits []RunFit
	for _, c := range s.runs {
		f := RunFit{ID: c.id, Setup: c.setup, Pair: c.pair, Dir: c.dir, Road: s.roadAt(c), Posture: c.motion(s.lay, &s.state).posture, Against: c.dir * c.meanWind(s.lay, &s.state), AirSpread: c.extra, T: c.t, V: c.z, Fit: c.v, Misfit: s.misfit(c), Cuts: c.describeCuts()}
		f.Wind.X, f.Wind.SE = s.wind(c)
		f.MoveCdA, f.MoveCrr = s.moves(c.setup, func(o *coast) bool { return o == c })
		fits = append(fits, f)
	}
	return fits
}

// misfit is the root mean square of a run's whitened residuals.
func (s *system) misfit(c *coast) float64 {
	w := c.width()
	at := func(i, j int) float64 { return c.norm[(c.own+min(i, j))*w+c.own+max(i, j)] }
	last := len(c.cols)
	q := at(last, last)
	for i, gi := range c.cols {
		xi := s.x.AtVec(gi)
		q -= 2 * xi * at(i, last)
		for j, gj := range c.cols {
			q += xi * s.x.AtVec(gj) * at(i, j)
		}
	}
	n := -c.own
	for i, count := range c.count {
		if count > 0 {
			n++
		}
		if c.channels > 1 && !math.IsNaN(c.height[i]) {
			n++
		}
	}
	return math.Sqrt(math.Max(q, 0) / float64(max(n, 1)))
}

// valueOf is the fitted value of a common unknown.
func (s *system) valueOf(i int) measure.Value {
	e, x := mat.NewVecDense(s.lay.size, nil), mat.NewVecDense(s.lay.size, nil)
	e.SetVec(i, 1)
	if err := s.chol.SolveVecTo(x, e); err != nil {
		return measure.Value{X: s.state.beta[i], SE: math.Inf(1)}
	}
	return measure.Value{X: s.state.beta[i], SE: math.Sqrt(x.AtVec(i))}
}

// pairFits describes every pair.
func (s *system) pairFits() []PairFit {
	var fits []PairFit
	for p, number := range s.lay.pairs {
		if number < 0 {
			continue
		}
		f := PairFit{Pair: number, Wind: s.valueOf(s.lay.wind + p), Grade: s.valueOf(s.lay.grade + p)}
		if at := s.lay.shift[p]; at >= 0 {
			f.Shift = s.valueOf(at)
		}
		setup := 0
		for _, c := range s.runs {
			if c.pairIndex == p {
				setup = c.setup
			}
		}
		f.MoveCdA, f.MoveCrr = s.moves(setup, func(o *coast) bool { return o.pairIndex == p })
		f.CdA, f.Crr = s.alone(setup, p)
		fits = append(fits, f)
	}
	return fits
}

// wind is the mean wind of a run: that of its pair plus half of the run's own
// deviation from it, so that the difference between the two runs of a pair is
// the one that the data show.
func (s *system) wind(c *coast) (x, se float64) {
	t := s.column(c, 2)
	x = c.meanWind(s.lay, &s.state)
	if math.IsInf(t.se, 1) {
		return x, t.se
	}
	return x + t.estimate/2, t.se / math.Sqrt2
}
