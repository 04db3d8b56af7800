package fusion

import (
	"math"
	"slices"

	"stillair/fusion/internal/kalman"
)

// Joint is the joint distribution of distance and speed at two instants: the
// means and the full covariance of (S_i, V_i, S_j, V_j), in metres and metres
// per second. Errors of neighbouring instants are strongly correlated: between
// two marks of a launch nearly all of the distance's uncertainty cancels, which
// the two variances alone would not show.
type Joint struct {
	Mean [4]float64
	Cov  [4][4]float64
}

// Joint returns the joint distribution at samples i and j. Its cost is
// proportional to the number of nodes between them.
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

// Term is one term of a linear combination of the track's errors: S times the
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

// SpeedCov is the covariance matrix of the speeds at increasing times, row by
// row, m²/s², as a generalised least-squares (GLS) fit to the speed curve
// needs.
func (tr *Track) SpeedCov(times []float64) [][]float64 {
	out := make([][]float64, len(times))
	for i := range out {
		out[i] = make([]float64, len(times))
	}
	p := &tr.post
	for i, t := range times {
		a := tr.place(t)
		w := walk{p: p, from: a}
		for j := i; j < len(times); j++ {
			b := tr.place(times[j])
			c := w.to(b)
			out[i][j] = c[1][1]
			out[j][i] = c[1][1]
		}
	}
	return out
}

// between is a time between two nodes.
type between struct {
	k int     // the node before
	u float64 // share of the way to the next
}

// place finds the nodes around t, clamped to the ends.
func (tr *Track) place(t float64) between {
	knots := tr.post.knots
	k, _ := slices.BinarySearchFunc(knots, t, func(n knot, t float64) int {
		if tr.T[n.sample] <= t {
			return -1
		}
		return 1
	})
	k = max(0, min(k-1, len(knots)-2))
	t0, t1 := tr.T[knots[k].sample], tr.T[knots[k+1].sample]
	return between{k: k, u: math.Max(0, math.Min(1, (t-t0)/(t1-t0)))}
}

// cov is the covariance of (S, V) at a with (S, V) at b.
func (p *posterior) cov(a, b between) [2][2]float64 {
	if b.k < a.k {
		c := p.cov(b, a)
		c[0][1], c[1][0] = c[1][0], c[0][1]
		return c
	}
	w := walk{p: p, from: a}
	return w.to(b)
}

// walk propagates the errors of (S, V) at one time forward from node to node.
type walk struct {
	p    *posterior
	from between
	on   kalman.Walk // after the interval it began in
	left bool
}

// to returns the covariance with (S, V) at b, which must not lie before the
// walk's current node.
func (w *walk) to(b between) [2][2]float64 {
	if b.k == w.from.k {
		return w.p.inside(b.k, w.from.u, b.u)
	}
	if !w.left {
		w.on, w.left = w.p.links.Leave(w.from.k, w.from.u), true
	}
	w.on.To(b.k)
	ahead := w.on
	ahead.To(b.k + 1)
	near, far := w.on.Here(), ahead.Here()
	for x := range near {
		for y := range near[x] {
			near[x][y] += b.u * (far[x][y] - near[x][y])
		}
	}
	return near
}

// inside is the covariance of two times in the same interval, at its fractions
// a and b: that of the linear interpolation between its ends plus that of the
// Brownian bridge of the vibration.
func (p *posterior) inside(k int, a, b float64) [2][2]float64 {
	near, far := &p.knots[k], &p.knots[k+1]
	x := &far.cross
	both := (1-a)*b + a*(1-b)
	var c [2][2]float64
	c[0][0] = (1-a)*(1-b)*near.ss + a*b*far.ss + both*x[0][0]
	c[1][1] = (1-a)*(1-b)*near.vv + a*b*far.vv + both*x[1][1] + far.bridge*math.Min(a, b)*(1-math.Max(a, b))
	c[0][1] = (1-a)*(1-b)*near.sv + a*b*far.sv + (1-a)*b*x[0][1] + a*(1-b)*x[1][0]
	c[1][0] = (1-a)*(1-b)*near.sv + a*b*far.sv + (1-a)*b*x[1][0] + a*(1-b)*x[0][1]
	return c
}
