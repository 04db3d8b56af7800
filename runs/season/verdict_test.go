package season

import (
	"math"
	"testing"

	"stillair/runs/compare"
)

// TestVerdictsHold judges many invented seasons: hardly any calls a difference
// for a part without effect, or none for one that matters, and words and bands
// always agree.
func TestVerdictsHold(t *testing.T) {
	seasons := 400
	if testing.Short() {
		seasons = 100
	}
	const matters = 0.05
	bike := truth{base: 0.55, parts: map[string]float64{"short screen": 0, "tall screen": 0.045, "panniers": 0.0285, "top box": 0, "hand guards": 0}}
	differ, none, found := 0, 0, 0
	for seed := range uint64(seasons) {
		b, err := NewBudget(invented(1000+seed, bike, 20), "short screen")
		if err != nil {
			t.Fatal(err)
		}
		wrongly, lost := false, false
		for i, v := range b.Verdicts(matters) {
			true := bike.parts[b.Effects[i].Part]
			switch v.Finding {
			case compare.Differs:
				wrongly = wrongly || true*v.Percent <= 0
				if b.Effects[i].Part == "tall screen" {
					found++
				}
			case compare.NoneShown:
				lost = lost || math.Abs(true) > matters*bike.base
			}
			outside := v.CIPercent[0] > 0 || v.CIPercent[1] < 0
			within := !outside && math.Max(-v.CIPercent[0], v.CIPercent[1]) <= 100*matters
			if outside != (v.Finding == compare.Differs) || within != (v.Finding == compare.NoneShown) {
				t.Fatalf("season %d, %s: %s with a band of %.2f", seed, b.Effects[i].Part, v.Finding, v.CIPercent)
			}
		}
		if wrongly {
			differ++
		}
		if lost {
			none++
		}
	}
	t.Logf("%d seasons: %d with a false difference, %d with a false none, %d find the tall screen", seasons, differ, none, found)
	if differ > seasons*5/100 || none > seasons*5/100 || found < seasons*95/100 {
		t.Errorf("%d of %d seasons have a false difference, %d a false none, %d find the tall screen", differ, seasons, none, found)
	}
}
