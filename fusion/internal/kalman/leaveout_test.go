package kalman

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestLeaveOut actually leaves each observation out, smooths the rest and
// compares.
func TestLeaveOut(t *testing.T) {
	nodes, x, p := chain(rand.New(rand.NewPCG(3, 4)))
	var f Filter
	_, left := f.LeaveOut(nodes, x, p)
	for i := range nodes {
		if !nodes[i].Seen {
			if left[i].Variance != 0 {
				t.Errorf("node %d: nothing was observed, but %+v", i, left[i])
			}
			continue
		}
		without := append([]Node(nil), nodes...)
		without[i].Seen = false
		res := Smooth(without, x, p)
		h := nodes[i].Observation.sees()
		off := nodes[i].Observation.Z - h.of(&res.X[i])
		variance := nodes[i].Observation.R
		for b, c := range res.P[i].columns() {
			variance += h.of(&c) * share(h, b)
		}
		if !nodes[i].Observation.Still && math.Abs(left[i].Lasting-res.X[i][C]) > 1e-9 {
			t.Errorf("node %d: lasting error %v, left out in earnest %v", i, left[i].Lasting, res.X[i][C])
		}
		if math.Abs(left[i].Off-off) > 1e-9 || math.Abs(left[i].Variance-variance) > 1e-9 {
			t.Errorf("node %d: %+v, left out in earnest %v and %v", i, left[i], off, variance)
		}
	}
}

func share(h sees, place int) float64 {
	return Vec{V: 1, C: h.c, D: h.d, W: h.w}[place]
}
