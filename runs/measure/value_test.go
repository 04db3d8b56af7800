package measure

import (
	"math"
	"testing"
)

// TestQuantile checks the coverage factors against the table of Student's t in
// JCGM 100:2008 (GUM), annex G, table G.2, column 95 %.
func TestQuantile(t *testing.T) {
	tests := []struct {
		dof  float64
		want float64
	}{
		{1, 12.71}, {2, 4.30}, {3, 3.18}, {4, 2.78}, {5, 2.57}, {10, 2.23}, {20, 2.09}, {50, 2.01}, {math.Inf(1), 1.960},
	}
	for _, tt := range tests {
		if got := Quantile(0.95, tt.dof); math.Abs(got-tt.want) > 0.005 {
			t.Errorf("dof %v: got %.4f, table gives %v", tt.dof, got, tt.want)
		}
	}
}

func TestTwoSidedIsTheInverseOfQuantile(t *testing.T) {
	for _, dof := range []float64{1, 3, 9, math.Inf(1)} {
		v := Value{X: Quantile(0.95, dof) * 2, SE: 2}
		if got := v.TwoSided(dof); math.Abs(got-0.05) > 1e-9 {
			t.Errorf("dof %v: got %v, want 0.05", dof, got)
		}
	}
}
