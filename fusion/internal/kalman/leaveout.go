package kalman

// Left is the leave-one-out residual of an observation.
type Left struct {
	Off      float64 // observed minus predicted from all others, m/s
	Variance float64 // its expected variance, including the observation's own noise, m²/s²; 0: nothing was observed
	Lasting  float64 // the receiver's correlated error as estimated from all others, m/s
}

// LeaveOut returns the states that Smooth gives and, for each node, the
// residual of its observation against the smoother's estimate from all others,
// before and after it (leave-one-out cross-validation). This needs no second
// smoothing: with u = e/r - gᵀη and D = 1/r + gᵀΛg, where e, r and g are the
// filter's innovation, its variance and the gain, and η and Λ the adjoint of
// all later observations, the residual is u/D, with the variance 1/D (de Jong,
// "A cross-validation filter for time series models", Biometrika 75 (1988)
// 594). Both slices are valid until the filter is used again.
func (f *Filter) LeaveOut(nodes []Node, x Vec, p Sym) ([]Vec, []Left) {
	f.run(nodes, x, p)
	f.left = resize(f.left, len(nodes))
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

// left is the leave-one-out residual; eta and info hold the later observations.
func (is *seen) left(eta *Vec, info *Sym) Left {
	l := info.columns()
	var spread float64
	for i := range l {
		spread += is.gain[i] * dot(&l[i], &is.gain)
	}
	d := 1/is.variance + spread
	return Left{Off: (is.innovation/is.variance - dot(&is.gain, eta)) / d, Variance: 1 / d}
}

// lasting is the smoothed covariance of c with an observation: the component c
// of P̂h, where P̂ = P - PΛP. Leaving the observation out lowers the state by
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
