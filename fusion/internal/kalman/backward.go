package kalman

// Result is the smoothed ride: at each node the state given all observations,
// its covariance, and what is needed for the cross-covariance with other nodes.
type Result struct {
	X     []Vec
	P     []Sym
	Links Links
}

// taken records what the filter did from the previous node up to and at a node.
type taken struct {
	transition transition
	seen       int32 // index of the observation; -1 if none
}

// Filter is the forward pass. It may be reused, and then reuses its memory.
type Filter struct {
	x     []Vec // after each node's observation
	p     []Sym
	steps []taken
	seen  []seen
	left  []Left
}

// Smooth runs the filter forward and the adjoint recursion back.
func Smooth(nodes []Node, x Vec, p Sym) *Result {
	var f Filter
	f.run(nodes, x, p)
	xs, ps, steps, ties := f.x, f.p, f.steps, make([]tie, len(nodes))
	var eta Vec
	var info Sym
	for i := len(nodes) - 1; i >= 0; i-- {
		xs[i].shift(&ps[i], &eta)
		ps[i].smoothCov(&info, &ties[i])
		t := &steps[i]
		if t.seen >= 0 {
			f.seen[t.seen].backEta(&eta)
			f.seen[t.seen].backInfo(&info)
		}
		t.transition.backEta(&eta)
		t.transition.backInfo(&info)
	}
	return &Result{X: xs, P: ps, Links: Links{steps: steps, seen: f.seen, ties: ties}}
}

func (f *Filter) run(nodes []Node, x Vec, p Sym) {
	observed := 0
	for i := range nodes {
		if nodes[i].Seen {
			observed++
		}
	}
	f.x, f.p, f.steps = resize(f.x, len(nodes)), resize(f.p, len(nodes)), resize(f.steps, len(nodes))
	f.seen = resize(f.seen, observed)[:0]
	xs, ps, steps := f.x, f.p, f.steps
	for i := range nodes {
		n, t := &nodes[i], &steps[i]
		t.transition, t.seen = transition{}, -1
		if i > 0 {
			t.transition = n.Step.propagate(&x, &p)
		}
		if n.Seen {
			t.seen = int32(len(f.seen))
			f.seen = append(f.seen, n.Observation.update(&x, &p))
		}
		xs[i] = x
		ps[i] = p
	}
}

// resize returns a slice of length n, reusing s where its capacity suffices.
func resize[E any](s []E, n int) []E {
	if cap(s) < n {
		return make([]E, n)
	}
	return s[:n]
}

// shift turns a filtered state into the smoothed one: x + Pη.
func (x *Vec) shift(p *Sym, eta *Vec) {
	c := p.columns()
	for i := range c {
		x[i] += dot(&c[i], eta)
	}
}

// dot is the scalar product without the distance, on which no observation
// depends.
func dot(a, b *Vec) float64 {
	return a[V]*b[V] + a[B]*b[B] + a[C]*b[C] + a[K]*b[K] + a[D]*b[D] + a[W]*b[W]
}

// smoothCov turns the filter's covariance P into the smoothed one, P - PΛP, and
// stores what cross-covariances with other nodes need.
func (p *Sym) smoothCov(info *Sym, t *tie) {
	c, l := p.columns(), info.columns()
	var m [N]Vec // columns of ΛP
	for j := range m {
		for i := V; i < N; i++ {
			m[j][i] = dot(&l[i], &c[j])
		}
	}
	t.s, t.v = c[S], c[V]
	t.lostS, t.lostV = m[S], m[V]
	p.SS -= dot(&c[S], &m[S])
	p.SV -= dot(&c[S], &m[V])
	p.SB -= dot(&c[S], &m[B])
	p.SC -= dot(&c[S], &m[C])
	p.SK -= dot(&c[S], &m[K])
	p.SD -= dot(&c[S], &m[D])
	p.SW -= dot(&c[S], &m[W])
	p.VV -= dot(&c[V], &m[V])
	p.VB -= dot(&c[V], &m[B])
	p.VC -= dot(&c[V], &m[C])
	p.VK -= dot(&c[V], &m[K])
	p.VD -= dot(&c[V], &m[D])
	p.VW -= dot(&c[V], &m[W])
	p.BB -= dot(&c[B], &m[B])
	p.BC -= dot(&c[B], &m[C])
	p.BK -= dot(&c[B], &m[K])
	p.BD -= dot(&c[B], &m[D])
	p.BW -= dot(&c[B], &m[W])
	p.CC -= dot(&c[C], &m[C])
	p.CK -= dot(&c[C], &m[K])
	p.CD -= dot(&c[C], &m[D])
	p.CW -= dot(&c[C], &m[W])
	p.KK -= dot(&c[K], &m[K])
	p.KD -= dot(&c[K], &m[D])
	p.KW -= dot(&c[K], &m[W])
	p.DD -= dot(&c[D], &m[D])
	p.DW -= dot(&c[D], &m[W])
	p.WW -= dot(&c[W], &m[W])
}
