package sensors

import "testing"

// TestWithoutFalseZeros checks that speeds of 0 while moving are left out, and none at
// a stop, at a launch or next to a single wild speed.
func TestWithoutFalseZeros(t *testing.T) {
	plain := func(speeds ...float64) (fixes []Fix) {
		for i, v := range speeds {
			fixes = append(fixes, NewFix(float64(i), v))
		}
		return fixes
	}
	// placed has positions at given distances, m.
	placed := func(step float64, speeds ...float64) (fixes []Fix) {
		for i, v := range speeds {
			f := NewFix(float64(i), v)
			f.LatDeg, f.LonDeg = 48+step*float64(i)/111200, 11
			fixes = append(fixes, f)
		}
		return fixes
	}
	for _, tt := range []struct {
		name  string
		fixes []Fix
		left  int
	}{
		{"three on the way", plain(20, 20, 0, 0, 0, 20, 20), 4},
		{"three on the way, places that go on", placed(20, 20, 20, 0, 0, 0, 20, 20), 4},
		{"slow, places that go on", placed(8, 8, 8, 0, 0, 8, 8), 4},
		{"slow, without places", plain(8, 8, 0, 0, 8, 8), 6},
		{"a hard stop and a hard launch", plain(30, 20, 10, 0, 0, 0, 9, 18, 26), 9},
		{"a launch that the receiver held back", plain(0, 0, 0, 0, 0, 0, 15, 20), 5},
		{"a wild speed while standing", plain(0, 0, 0, 40, 0, 0, 0), 7},
		{"places that wander while standing", placed(2, 0, 0, 0, 0, 0), 5},
		{"none", nil, 0},
	} {
		log := &Log{Fixes: tt.fixes}
		got := WithoutFalseZeros(log)
		if len(got.Fixes) != tt.left || (len(got.Notes) > 0) != (tt.left < len(tt.fixes)) || len(log.Fixes) != len(tt.fixes) {
			t.Errorf("%s: %d fixes left, want %d; notes %v", tt.name, len(got.Fixes), tt.left, got.Notes)
		}
	}
}
