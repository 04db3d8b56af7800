package kalman

// Left is how an observation lies to what all the others say about it.
type Left struct {
	Off      float64 // observed less predicted from all others, m/s
	Variance float64 // that this should have, the observation's own noise included, m²/s²; 0: nothing was observed
	Lasting  float64 // the receiver's correlated error as all others say, m/s
}

// LeaveOut gives the states that Smooth gives and, for each node, how far its
// observation lies from what the smoother makes of all others, before and after
// it. It costs no smoothing without it: with u = e/r - gᵀη and D = 1/r + gᵀΛg,
// where e, r and g are the filter's innovation, its variance and the gain, and
// η and Λ what later observations say, the observation left out is missed by
// u/D, with the variance 1/D (de Jong, "A cross-validation filter for time
// series models", Biometrika 75 (1988) 594). Both hold until the filter is used
// again.
func (f *Filter) LeaveOut(nodes []Node, x Vec, p Sym) ([]Vec, []Left) {
	f.run(nodes, x, p)
	f.left = room(f.left, len(nodes))
	var eta Vec
	var info Sym
	for i := len(nodes) - 1; i >= 0; i-- {
		f.x[i].shift(&f.p[i], &eta)
		t := &f.steps[i]
		f.left[i] = Left{}
		if t.seen >= 0 {
			is := &f.seen[t.seen]
			f.left[i] = is.left(&eta, &info)
			f.left[i].Lasting = f.x[i][C] - f.p[i].lasting(&info, &is.h)*f.left[i].Off/nodes[i].Observation.R
			is.backEta(&eta)
			is.backInfo(&info)
		}
		t.transition.backEta(&eta)
		t.transition.backInfo(&info)
	}
	return f.x, f.left
}

// Last is the covariance at the last node.
func (f *Filter) Last() *Sym { return &f.p[len(f.p)-1] }

// left is the observation against all others, of which eta and info hold the
// later ones.
func (is *seen) left(eta *Vec, info *Sym) Left {
	l := info.columns()
	var spread float64
	for i := range l {
		spread += is.gain[i] * dot(&l[i], &is.gain)
	}
	d := 1/is.variance + spread
	return Left{Off: (is.innovation/is.variance - dot(&is.gain, eta)) / d, Variance: 1 / d}
}

// lasting is what c has to do with an observation after smoothing: the place of
// c in P̂h, where P̂ = P - PΛP. Without the observation the state is less by
// P̂h·off/R.
func (p *Sym) lasting(info *Sym, h *sees) float64 {
	c, l := p.columns(), info.columns()
	ph := Vec{}
	for i := range c {
		ph[i] = h.of(&c[i])
	}
	out := ph[C]
	for i := V; i < N; i++ {
		out -= c[C][i] * dot(&l[i], &ph)
	}
	return out
}
