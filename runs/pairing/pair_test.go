package pairing

import (
	"fmt"
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Metres in a degree at the equator of WGS 84 (handbook tables, from memory).
const perLon, perLat = 111319.49, 110574.28

// on is a coast-down of 600 m along a road with a given bearing that begins at
// from metres along it, and beside metres to its right.
func on(id int, start, bearing, from, beside float64) Coast {
	c := Coast{ID: id, Setup: "a", Start: start, End: start + 40}
	sin, cos := math.Sincos(bearing * math.Pi / 180)
	for k := range 41 {
		x := from + 15*float64(k)
		f := sensors.NewFix(start+float64(k), 20)
		f.LonDeg = (x*sin + beside*cos) / perLon
		f.LatDeg = (x*cos - beside*sin) / perLat
		c.Fixes = append(c.Fixes, f)
	}
	return c
}

// back is the same road ridden the other way, beginning at its end.
func back(id int, start, bearing, from, beside float64) Coast {
	sin, cos := math.Sincos(bearing * math.Pi / 180)
	c := on(id, start, bearing+180, 0, beside)
	for k := range c.Fixes {
		c.Fixes[k].LonDeg += (from + 600) * sin / perLon
		c.Fixes[k].LatDeg += (from + 600) * cos / perLat
	}
	return c
}

func setup(c Coast, name string) Coast { c.Setup = name; return c }

func TestPairs(t *testing.T) {
	bare := on(1, 0, 84, 0, 0)
	for k := range bare.Fixes {
		bare.Fixes[k].LatDeg, bare.Fixes[k].LonDeg = math.NaN(), math.NaN()
	}
	tests := []struct {
		name   string
		coasts []Coast
		pairs  []int
		why    finding.Code // of the first single
	}{
		{"out, back, out, back", []Coast{on(1, 0, 84, 0, 0), back(2, 100, 84, 0, 0), on(3, 200, 84, 0, 0), back(4, 300, 84, 0, 0)},
			[]int{1, 1, 2, 2}, ""},
		{"out, out, back, back", []Coast{on(1, 0, 84, 0, 0), on(2, 100, 84, 0, 0), back(3, 200, 84, 0, 0), back(4, 300, 84, 0, 0)},
			[]int{1, 2, 1, 2}, ""},
		{"one too many: the nearest in time", []Coast{on(1, 0, 0, 0, 0), on(2, 600, 0, 0, 0), back(3, 700, 0, 0, 0)},
			[]int{0, 1, 1}, codeAllTaken},
		{"only one way", []Coast{on(1, 0, 84, 0, 0), on(2, 100, 84, 0, 0)}, []int{0, 0}, codeNoCounterpart},
		{"another setup", []Coast{on(1, 0, 84, 0, 0), setup(back(2, 100, 84, 0, 0), "b")}, []int{0, 0}, codeOtherSetup},
		{"too long after", []Coast{on(1, 0, 84, 0, 0), back(2, 3000, 84, 0, 0)}, []int{0, 0}, codeTooLong},
		{"another stretch", []Coast{on(1, 0, 84, 0, 0), back(2, 100, 84, 3000, 0)}, []int{0, 0}, codeNoCounterpart},
		{"a road beside", []Coast{on(1, 0, 84, 0, 0), back(2, 100, 84, 0, -200)}, []int{0, 0}, codeNoCounterpart},
		{"across", []Coast{on(1, 0, 84, 0, 0), back(2, 100, 20, 0, 0)}, []int{0, 0}, codeNoCounterpart},
		{"the other carriageway", []Coast{on(1, 0, 355, 0, 0), back(2, 100, 355, 100, 15)}, []int{1, 1}, ""},
		{"no positions", []Coast{bare}, []int{0}, codeNoDirection},
		{"nothing", nil, nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			placed := Pair(tt.coasts)
			var got []int
			var why finding.Code
			for _, p := range placed {
				got = append(got, p.Pair)
				if p.Pair == 0 && why == "" {
					why = p.Why.Code
				}
			}
			if fmt.Sprint(got) != fmt.Sprint(tt.pairs) {
				t.Errorf("pairs %v, want %v", got, tt.pairs)
			}
			if why != tt.why {
				t.Errorf("single because %q, want %q", why, tt.why)
			}
		})
	}
}

// TestPlacesAgree: a place has the same position on the way out and back.
func TestPlacesAgree(t *testing.T) {
	for _, bearing := range []float64{0, 84, 179, 271, 359} {
		placed := Pair([]Coast{on(1, 0, bearing, 0, 0), back(2, 100, bearing, 0, 0)})
		out, in := placed[0].Pos, placed[1].Pos
		if placed[0].Dir != 1 || placed[1].Dir != -1 {
			t.Fatalf("bearing %v: directions %v and %v", bearing, placed[0].Dir, placed[1].Dir)
		}
		if d := out[40] - out[0]; math.Abs(d-600) > 0.05 {
			t.Errorf("bearing %v: 600 m are %.1f m long", bearing, d)
		}
		for k := range out {
			if d := out[k] - in[40-k]; math.Abs(d) > 0.5 {
				t.Fatalf("bearing %v: the same place is %.2f m apart", bearing, d)
			}
		}
	}
}
