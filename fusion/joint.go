package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/kalman"
)

// Joint is what the track knows of distance and speed at two instants
// together: the means and the full covariance of (S_i, V_i, S_j, V_j), in
// metres and metres per second. Errors of neighbouring instants are strongly
// correlated: between two marks of a launch nearly all of the distance's
// uncertainty cancels, which the two variances alone would not tell.
type Joint struct {
	Mean [4]float64
	Cov  [4][4]float64
}

// Joint gives what is known of samples i and j together. It takes time in
// proportion to how far they lie apart.
func (tr *Track) Joint(i, j int) Joint {
	return tr.joint(tr.place(tr.T[i]), tr.place(tr.T[j]), [4]float64{tr.S[i], tr.V[i], tr.S[j], tr.V[j]})
}

// JointAt is Joint for two times of the track that need not be samples.
func (tr *Track) JointAt(t, u float64) Joint {
	a, b := tr.At(t), tr.At(u)
	return tr.joint(tr.place(t), tr.place(u), [4]float64{a.S, a.V, b.S, b.V})
}

func (tr *Track) joint(a, b between, mean [4]float64) Joint {
	out := Joint{Mean: mean}
	p := &tr.post
	aa, bb, ab := p.cov(a, a), p.cov(b, b), p.cov(a, b)
	for x := range 2 {
		for y := range 2 {
			out.Cov[x][y], out.Cov[2+x][2+y] = aa[x][y], bb[x][y]
			out.Cov[x][2+y], out.Cov[2+y][x] = ab[x][y], ab[x][y]
		}
	}
	return out
}

// Term is a share of a linear combination of the track's errors: S times the
// error of the distance at T plus V times that of the speed.
type Term struct{ T, S, V float64 }

// Cov is the covariance of two linear combinations of the track's errors.
func (tr *Track) Cov(a, b []Term) float64 {
	var sum float64
	for _, x := range a {
		for _, y := range b {
			c := tr.post.cov(tr.place(x.T), tr.place(y.T))
			sum += x.S*(c[0][0]*y.S+c[0][1]*y.V) + x.V*(c[1][0]*y.S+c[1][1]*y.V)
		}
	}
	return sum
}

// SD is the standard uncertainty of a linear combination of the track's
// errors.
func (tr *Track) SD(a []Term) float64 { return math.Sqrt(math.Max(tr.Cov(a, a), 0)) }

// SpeedCov is the covariance matrix of the speeds at rising times, row by row,
// m²/s²; what a generalised least-squares fit to the speed curve needs.
func (tr *Track) SpeedCov(times []float64) [][]float64 {
	out := make([][]float64, len(times))
	for i := range out {
		out[i] = make([]float64, len(times))
	}
	p := &tr.post
	for i, t := range times {
		a := tr.place(t)
		w := p.walk(a)
		for j := i; j < len(times); j++ {
			b := tr.place(times[j])
			c := w.to(b)
			out[i][j] = c[1][1]
			out[j][i] = c[1][1]
		}
	}
	return out
}

// between is a place in time between two nodes.
type between struct {
	k int     // the node before
	u float64 // share of the way to the next
}

// place finds where t lies; times beyond the ends count as the ends.
func (tr *Track) place(t float64) between {
	nodes := tr.post.nodes
	k, _ := slices.BinarySearchFunc(nodes, t, func(n kalman.Node, t float64) int {
		if tr.T[n.Index] <= t {
			return -1
		}
		return 1
	})
	k = max(0, min(k-1, len(nodes)-2))
	t0, t1 := tr.T[nodes[k].Index], tr.T[nodes[k+1].Index]
	return between{k: k, u: math.Max(0, math.Min(1, (t-t0)/(t1-t0)))}
}

// cov is the covariance of (S, V) at a with (S, V) at b.
func (p *posterior) cov(a, b between) [2][2]float64 {
	if b.k < a.k {
		c := p.cov(b, a)
		c[0][1], c[1][0] = c[1][0], c[0][1]
		return c
	}
	w := p.walk(a)
	return w.to(b)
}

// pair is two rows that act on a state.
type pair [2]kalman.Vec

// walk carries the covariance of (S, V) at one place forward from node to
// node.
type walk struct {
	p    *posterior
	from between
	k    int  // the node that rows now act on
	rows pair // Cov((S,V) at from, x_k) = rows·P_k
}

func (p *posterior) walk(a between) walk { return walk{p: p, from: a, k: a.k} }

// times gives rows·g.
func (r *pair) times(g *kalman.Mat) pair {
	var out pair
	for a := range r {
		for c, f := range r[a] {
			if f == 0 {
				continue
			}
			for b := range kalman.N {
				out[a][b] += f * g[c][b]
			}
		}
	}
	return out
}

// to gives the covariance with (S, V) at b, which must not lie before the
// place the walk has come to.
func (w *walk) to(b between) [2][2]float64 {
	p := w.p
	if b.k == w.from.k {
		return p.inside(w.from, b.u)
	}
	if w.k == w.from.k { // leave the first interval: both ends act on its far node
		u := w.from.u
		w.rows = pair{}
		for a, s := range [2]int{kalman.S, kalman.V} {
			w.rows[a] = p.G[w.k][s]
			for c := range w.rows[a] {
				w.rows[a][c] *= 1 - u
			}
			w.rows[a][s] += u
		}
		w.k++
	}
	for w.k < b.k {
		w.rows = w.rows.times(&p.G[w.k])
		w.k++
	}
	near := w.rows.times(&p.P[b.k])
	ahead := w.rows.times(&p.G[b.k])
	far := ahead.times(&p.P[b.k+1])
	var c [2][2]float64
	for x := range 2 {
		for y, s := range [2]int{kalman.S, kalman.V} {
			c[x][y] = (1-b.u)*near[x][s] + b.u*far[x][s]
		}
	}
	return c
}

// inside is the covariance of two places in the same interval: of the straight
// line between its ends, and of the bridge of vibration between them.
func (p *posterior) inside(a between, u float64) [2][2]float64 {
	k := a.k
	p0, p1, g := &p.P[k], &p.P[k+1], &p.G[k]
	idx := [2]int{kalman.S, kalman.V}
	var c [2][2]float64
	for x, sx := range idx {
		for y, sy := range idx {
			var xy, yx float64 // Cov(x at k, y at k+1) and the other way
			for m := range kalman.N {
				xy += g[sx][m] * p1[m][sy]
				yx += g[sy][m] * p1[m][sx]
			}
			c[x][y] = (1-a.u)*(1-u)*p0[sx][sy] + a.u*u*p1[sx][sy] + (1-a.u)*u*xy + a.u*(1-u)*yx
		}
	}
	c[1][1] += p.nodes[k+1].Step.Q * math.Min(a.u, u) * (1 - math.Max(a.u, u))
	return c
}
