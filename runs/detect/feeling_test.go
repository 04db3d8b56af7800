package detect

import (
	"math"
	"testing"
)

// TestBetaBernoulli: with a uniform share every number of events is equally likely
// (Bayes, 1763), and the probabilities of all sequences add up to one.
func TestBetaBernoulli(t *testing.T) {
	const n = 7
	choose := func(k float64) float64 {
		x := 1.0
		for i := 1.0; i <= k; i++ {
			x *= (n - i + 1) / i
		}
		return x
	}
	for _, b := range []float64{1, ringingBeta} {
		sum := 0.0
		for k := 0.0; k <= n; k++ {
			p := choose(k) * betaBernoulli(b, k, n)
			sum += p
			if b == 1 && math.Abs(p-1./(n+1)) > 1e-12 {
				t.Errorf("%g of %d: %g, want %g", k, n, p, 1./(n+1))
			}
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("Beta(1, %g): the probabilities add up to %g", b, sum)
		}
	}
}

// TestFelt: lines in most decelerations of a ride speak for a gear in all of them, a
// line in one or two hardly does, and what nobody listened to says nothing.
func TestFelt(t *testing.T) {
	tests := []struct {
		name                string
		feels, others, deaf int
		least, most         float64 // of the likelihood with a gear in all, over that without
	}{
		{"all", 8, 0, 0, 500, math.Inf(1)},
		{"most", 7, 1, 0, 100, math.Inf(1)},
		{"one", 1, 7, 0, 0.5, 20},
		{"none", 0, 8, 0, 0.3, 1},
		{"nobody listened", 0, 0, 8, 1, 1},
	}
	for _, tt := range tests {
		var felt []feeling
		for k, f := range []feeling{feltTurning, notFelt, notHeard} {
			for range []int{tt.feels, tt.others, tt.deaf}[k] {
				felt = append(felt, f)
			}
		}
		in := make([]bool, len(felt))
		free := logFelt(felt, in)
		for i := range in {
			in[i] = true
		}
		if got := math.Exp(logFelt(felt, in) - free); got < tt.least-1e-9 || got > tt.most+1e-9 {
			t.Errorf("%s: %.3g times as likely, want %g to %g", tt.name, got, tt.least, tt.most)
		}
	}
}
