package detect

import "testing"

// TestDragged: what slows as motorcycles do is taken for free rolling, what an
// engine in top gear adds (0.04 to 0.1 of the weight, TestPossible in package
// runs) is not, and the doubtful lies between.
func TestDragged(t *testing.T) {
	tests := []struct {
		name      string
		strain    float64
		low, high float64
	}{
		{"an ordinary motorcycle", 0, 0, 0.01},
		{"much drag", 1.8, 0, 0.05},
		{"doubtful", 2.4, 0.3, 0.7},
		{"an engine dragged along", 3.5, 0.9, 1},
	}
	for _, tt := range tests {
		if p := dragged(tt.strain); p < tt.low || p > tt.high {
			t.Errorf("%s: chance %.2f, want %.2f to %.2f", tt.name, p, tt.low, tt.high)
		}
	}
}

// TestSlopeIsNoEngine: a road that falls one way clears the run that went up it;
// a gear left in both ways does not.
func TestSlopeIsNoEngine(t *testing.T) {
	up, down := rolled{course: 10, excess: 0.3, sd: 0.1, level: 0.06}, rolled{course: 190, excess: -0.25, sd: 0.1, level: 0.06}
	if p := dragged(up.strain([]rolled{up, down})); p > 0.1 {
		t.Errorf("up a hill: chance %.2f of a gear", p)
	}
	down.excess = 0.3
	if p := dragged(up.strain([]rolled{up, down})); p < 0.9 {
		t.Errorf("held back both ways: chance %.2f of a gear", p)
	}
	if p := dragged(up.strain([]rolled{up})); p < 0.5 {
		t.Errorf("alone: chance %.2f of a gear", p)
	}
}
