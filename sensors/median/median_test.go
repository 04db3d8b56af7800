package median

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/stat"
)

// TestOf compares medians with gonum's quantiles of the sorted numbers, ties and
// infinities among them.
func TestOf(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for n := 1; n < 200; n++ {
		x := make([]float64, n)
		for i := range x {
			if x[i] = rng.NormFloat64(); n%3 == 0 {
				x[i] = math.Round(x[i])
			}
		}
		if n%7 == 0 {
			x[0] = math.Inf(1)
		}
		before := slices.Clone(x)
		got := Of(x)
		if !slices.Equal(x, before) {
			t.Fatalf("%d numbers: they were put into another order", n)
		}
		slices.Sort(before)
		want := stat.Quantile(0.5, stat.Empirical, before, nil)
		if n%2 == 0 {
			want = (want + before[n/2]) / 2
		}
		if got != want {
			t.Errorf("%d numbers: %v, want %v", n, got, want)
		}
	}
	if got := Of(nil); !math.IsNaN(got) {
		t.Errorf("of nothing: %v, want NaN", got)
	}
}

func BenchmarkOf(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 2))
	x := make([]float64, 2500)
	for i := range x {
		x[i] = rng.ExpFloat64()
	}
	for b.Loop() {
		Of(x)
	}
}
