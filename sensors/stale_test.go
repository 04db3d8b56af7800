package sensors

import "testing"

// TestWithoutStale checks that old fixes before a jump are left out, and none
// of a hard but possible start.
func TestWithoutStale(t *testing.T) {
	at := func(t, speed, lat float64) Fix {
		f := NewFix(t, speed)
		f.LatDeg, f.LonDeg = lat, 11
		return f
	}
	for _, tt := range []struct {
		name  string
		fixes []Fix
		left  int
	}{
		{"a jump of speed", []Fix{NewFix(0, 0), NewFix(1, 0), NewFix(2, 16), NewFix(3, 16.2)}, 2},
		{"a jump of place", []Fix{at(0, 0, 48), at(1, 0, 48), at(2, 8, 48.01), at(3, 8, 48.01007)}, 2},
		{"a launch", []Fix{NewFix(0, 0), NewFix(1, 0), NewFix(2, 8), NewFix(3, 16)}, 4},
		{"a launch with places", []Fix{at(0, 0, 48), at(1, 6, 48.00003), at(2, 12, 48.00011)}, 3},
		{"ten fixes a second", []Fix{NewFix(0, 0), NewFix(0.1, 0), NewFix(0.2, 14), NewFix(0.3, 14)}, 2},
		{"none", nil, 0},
	} {
		got := WithoutStale(&Log{Fixes: tt.fixes})
		if len(got.Fixes) != tt.left || (len(got.Notes) > 0) != (tt.left < len(tt.fixes)) {
			t.Errorf("%s: %d fixes left, notes %v", tt.name, len(got.Fixes), got.Notes)
		}
	}
}
