package roadload

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestSteady checks which of the receiver's altitudes are used, and the noise
// found.
func TestSteady(t *testing.T) {
	const n = 40
	rng := rand.New(rand.NewPCG(1, 2))
	walk := 0.0
	good := make([]float64, n)
	times := make([]float64, n)
	for i := range good {
		walk += 0.4 * rng.NormFloat64()
		times[i], good[i] = float64(i), 120+0.1*float64(i)+walk
	}
	change := func(f func(i int, a float64) float64) []float64 {
		out := make([]float64, n)
		for i, a := range good {
			out[i] = f(i, a)
		}
		return out
	}
	nan := math.NaN()
	for _, c := range []struct {
		name string
		alt  []float64
		used bool
		same bool // as the good ones, except for missing values
	}{
		{"good", good, true, true},
		{"none", nil, false, false},
		{"all missing", change(func(int, float64) float64 { return nan }), false, false},
		{"a third missing", change(func(i int, a float64) float64 {
			if i%3 == 1 {
				return nan
			}
			return a
		}), true, true},
		{"two thirds missing", change(func(i int, a float64) float64 {
			if i%3 > 0 {
				return nan
			}
			return a
		}), false, false},
		{"an infinite one", change(func(i int, a float64) float64 {
			if i == 7 {
				return math.Inf(1)
			}
			return a
		}), true, true},
		{"stuck", change(func(int, float64) float64 { return 0 }), false, false},
		{"in steps of 5 m", change(func(i int, a float64) float64 { return 5 * math.Round(10*a/5) }), false, false},
		{"in steps of 0.1 m", change(func(_ int, a float64) float64 { return math.Round(10*a) / 10 }), true, false},
		{"a jump", change(func(i int, a float64) float64 {
			if i > 20 {
				return a + 15
			}
			return a
		}), true, false},
		{"one wild", change(func(i int, a float64) float64 {
			if i == 20 {
				return a - 300
			}
			return a
		}), true, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := steady(times, c.alt)
			if (got != nil) != c.used {
				t.Fatalf("used: %v, want %v", got != nil, c.used)
			}
			for i := range got {
				if math.IsNaN(got[i]) {
					continue
				}
				if d := math.Abs(got[i] - good[i]); c.same && d > 0 || d > 4 {
					t.Errorf("fix %d: %.2f m off", i, got[i]-good[i])
				}
			}
		})
	}
}

// TestBarometerFirst: with a barometer the receiver's altitude is not used, and
// without positions neither is.
func TestBarometerFirst(t *testing.T) {
	n := 10
	r := Run{T: make([]float64, n), Pos: make([]float64, n), Height: make([]float64, n), Alt: make([]float64, n)}
	for i := range n {
		r.T[i], r.Alt[i] = float64(i), 0.3*float64(i)
	}
	if _, kind := r.heights(); kind != byBarometer {
		t.Errorf("with a barometer: %v", kind)
	}
	r.Height = nil
	if _, kind := r.heights(); kind != byReceiver {
		t.Errorf("with altitudes alone: %v", kind)
	}
	r.Pos = nil
	if _, kind := r.heights(); kind != none {
		t.Errorf("without places: %v", kind)
	}
}
