package kalman

// Links holds what cross-covariances between nodes are computed from.
type Links struct {
	steps []taken
	seen  []seen
	ties  []tie
}

// tie is one node's part of Links.
type tie struct {
	s, v         Vec // columns of the filter's covariance P
	lostS, lostV Vec // columns of ΛP: the part that later observations remove
}

// Walk propagates errors forward from node to node to give their
// cross-covariance with later nodes. With P the filter's covariance at node i
// and Ψ the filter's transition of an error from there to node j (through each
// step F, at each observation 1 - g·hᵀ), the smoothed states have the
// covariance Cov(x_i, x_j) = P_i·Ψᵀ·(1 - Λ_j·P_j).
type Walk struct {
	all  *Links
	node int
	rows [2]Vec // P_i·Ψᵀ
}

// Leave starts a walk with the errors of the distance and the speed on the
// straight line between a node and the next, at the fraction u of the interval.
// It is then at that next node.
func (l *Links) Leave(node int, u float64) Walk {
	w := Walk{all: l, node: node, rows: [2]Vec{l.ties[node].s, l.ties[node].v}}
	w.step()
	next := &l.ties[node+1]
	for i := range N {
		w.rows[0][i] += u * (next.s[i] - w.rows[0][i])
		w.rows[1][i] += u * (next.v[i] - w.rows[1][i])
	}
	return w
}

// step advances to the next node.
func (w *Walk) step() {
	w.node++
	t := &w.all.steps[w.node]
	f := &t.transition
	for a := range w.rows {
		x := &w.rows[a]
		gain := f.vb*x[B] + f.vk*x[K]
		x[S] += f.h * (x[V] + gain/2)
		x[V] += gain
		x[C] *= f.c
		x[K] *= f.k
		if t.seen < 0 {
			continue
		}
		o := &w.all.seen[t.seen]
		seen := o.h.of(x)
		for i := range x {
			x[i] -= seen * o.gain[i]
		}
	}
}

// To advances to a node, which must not lie before the current one.
func (w *Walk) To(node int) {
	for w.node < node {
		w.step()
	}
}

// Here is the covariance of the propagated errors with distance and speed at
// the current node.
func (w *Walk) Here() [2][2]float64 {
	t := &w.all.ties[w.node]
	var c [2][2]float64
	for a := range w.rows {
		x := &w.rows[a]
		c[a] = [2]float64{x[S] - dot(x, &t.lostS), x[V] - dot(x, &t.lostV)}
	}
	return c
}
