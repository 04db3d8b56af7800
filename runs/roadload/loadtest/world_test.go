package loadtest

import (
	"math"
	"testing"
)

// TestTyresSquare: the textbook formula for tyres, 0.005 + (1/p)·(0.01 +
// 0.0095·(V/100)²), widely published, gives 0.01360 at 2.5 bar and 110 km/h, and
// 0.009 at standstill.
func TestTyresSquare(t *testing.T) {
	if got := 0.009 * TyresSquare(2.5)(110/3.6); math.Abs(got-0.01360) > 5e-6 {
		t.Errorf("rolling resistance %.5f, want 0.01360", got)
	}
}
