package roadload

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestGram compares gram with gonum's product, for even and odd widths.
func TestGram(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for w := 1; w <= 7; w++ {
		rows := mat.NewDense(9, w, nil)
		rows.Apply(func(int, int, float64) float64 { return r.NormFloat64() }, rows)
		var want mat.Dense
		want.Mul(rows.T(), rows)
		norm := make([]float64, w*w)
		gram(norm, rows.RawMatrix().Data, w)
		for a := range w {
			for b := a; b < w; b++ {
				if got := norm[a*w+b]; math.Abs(got-want.At(a, b)) > 1e-12 {
					t.Errorf("width %d, columns %d and %d: %v, gonum %v", w, a, b, got, want.At(a, b))
				}
			}
		}
	}
}
