package kalman

import "math"

// Result is the smoothed ride: at each node the state given everything that
// was observed before and after, its covariance, and the gain that ties it to
// the next node.
type Result struct {
	X []Vec
	P []Mat
	// G[i] is the smoother's gain from node i to i+1; the covariance of the
	// states at nodes i < j is G[i]·G[i+1]⋯G[j-1]·P[j].
	G []Mat
}

// Smooth runs the filter forward and the Rauch-Tung-Striebel recursion back.
func Smooth(nodes []Node, x Vec, p Mat) *Result {
	n := len(nodes)
	r := &Result{X: make([]Vec, n), P: make([]Mat, n), G: make([]Mat, max(n-1, 0))}
	for i := range nodes {
		nd := &nodes[i]
		if i > 0 {
			y, j := nd.Step.predict(&x)
			m := j.left(&p)
			p = j.right(&m)
			nd.Step.addNoise(&p)
			x = y
		}
		if nd.Seen {
			nd.Sight.update(&x, &p)
		}
		r.X[i], r.P[i] = x, p
	}
	for i := n - 2; i >= 0; i-- {
		r.back(i, &nodes[i+1].Step)
	}
	return r
}

// back turns the filtered state at node i into the smoothed one, given the
// smoothed one at i+1.
func (r *Result) back(i int, st *Step) {
	y, j := st.predict(&r.X[i])
	m := j.left(&r.P[i]) // (P·Fᵀ)ᵀ
	pp := j.right(&m)
	st.addNoise(&pp)
	gt := solve(&pp, &m)
	g := &r.G[i]
	for a := range N {
		for b := range N {
			g[a][b] = gt[b][a]
		}
	}
	var dx Vec
	var dp Mat
	for a := range N {
		dx[a] = r.X[i+1][a] - y[a]
		for b := range N {
			dp[a][b] = r.P[i+1][a][b] - pp[a][b]
		}
	}
	var gdp Mat
	for a := range N {
		for b := range N {
			var sum, dot float64
			for c := range N {
				sum += g[a][c] * dp[c][b]
				dot += g[a][c] * dx[c]
			}
			gdp[a][b] = sum
			if b == 0 {
				r.X[i][a] += dot
			}
		}
	}
	for a := range N {
		for b := a; b < N; b++ {
			var sum float64
			for c := range N {
				sum += gdp[a][c] * g[b][c]
			}
			v := r.P[i][a][b] + sum
			r.P[i][a][b], r.P[i][b][a] = v, v
		}
	}
}

// solve gives p⁻¹·m for a symmetric positive definite p, by Cholesky's
// decomposition. A pivot that rounding made vanish is kept away from zero.
func solve(p, m *Mat) Mat {
	var l Mat
	for a := range N {
		d := p[a][a]
		for c := range a {
			d -= l[a][c] * l[a][c]
		}
		d = math.Sqrt(math.Max(d, 1e-14*p[a][a]+1e-30))
		l[a][a] = 1 / d
		for b := a + 1; b < N; b++ {
			v := p[b][a]
			for c := range a {
				v -= l[b][c] * l[a][c]
			}
			l[b][a] = v / d
		}
	}
	x := *m
	for a := range N {
		for c := range a {
			f := l[a][c]
			for b := range N {
				x[a][b] -= f * x[c][b]
			}
		}
		for b := range N {
			x[a][b] *= l[a][a]
		}
	}
	for a := N - 1; a >= 0; a-- {
		for c := a + 1; c < N; c++ {
			f := l[c][a]
			for b := range N {
				x[a][b] -= f * x[c][b]
			}
		}
		for b := range N {
			x[a][b] *= l[a][a]
		}
	}
	return x
}
