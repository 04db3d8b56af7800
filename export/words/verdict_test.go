package words

import (
	"testing"

	"stillair/runs/compare"
)

// TestVerdicts says each answer, always with the estimate and its band.
func TestVerdicts(t *testing.T) {
	tests := []struct {
		name string
		v    compare.Verdict
		want string
	}{
		{"more", compare.Verdict{Finding: compare.Differs, Percent: 6.1, CIPercent: [2]float64{3.7, 8.5}},
			"panniers: 6.1 % more drag (95 %: 3.7 to 8.5 %)"},
		{"less", compare.Verdict{Finding: compare.Differs, Percent: -6.1, CIPercent: [2]float64{-8.5, -3.7}},
			"panniers: 6.1 % less drag (95 %: 3.7 to 8.5 %)"},
		{"none", compare.Verdict{Finding: compare.NoneShown, Percent: 0.4, CIPercent: [2]float64{-3.1, 3.8}},
			"panniers: no difference in drag that matters; change 0.4 % (95 %: −3.1 to 3.8 %)"},
		{"unclear", compare.Verdict{Finding: compare.CannotTell, Percent: 1.8, CIPercent: [2]float64{-9, 12}, MorePairs: 1},
			"panniers: drag not clear yet, about 1 more pair needed; change 1.8 % (95 %: −9.0 to 12.0 %)"},
	}
	for _, tt := range tests {
		if got := ForMachines().Say(Verdict("panniers", Drag(), tt.v)); got != tt.want {
			t.Errorf("%s: got %s\nwant %s", tt.name, got, tt.want)
		}
	}
}
