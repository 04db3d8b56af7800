package roadload

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestExpectedAlike compares with a calculation by hand: differences with errors of 3
// and 4, correlated by −0.8, and a prior difference of rolling resistance of 0 ± 3
// give 9 − 9.6²/(16 + 9).
func TestExpectedAlike(t *testing.T) {
	// Only setup b has errors, so that the differences have the same.
	cov := mat.NewSymDense(4, []float64{
		0, 0, 0, 0,
		0, 0, 0, 0,
		0, 0, 9, -9.6,
		0, 0, -9.6, 16,
	})
	se := func(crr float64) float64 {
		load := Design{CdA: 0.5, Crr: crr}
		noise, assumed := Expected{Noise: cov, Assumed: Assumed{Cov: mat.NewSymDense(4, nil), contrasts: mat.NewSymDense(4, nil)}, loads: []Design{load, load}}.Alike(0, 1)
		return math.Hypot(noise, assumed)
	}
	if got, want := se(3/TyresAlike), math.Sqrt(9-9.6*9.6/25); math.Abs(got-want) > 1e-12 {
		t.Errorf("got %v, want %v", got, want)
	}
	if got := se(1e9); math.Abs(got-3) > 1e-6 {
		t.Errorf("with nothing known of rolling: got %v, want the plain 3", got)
	}
}
