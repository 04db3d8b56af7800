package season

import (
	"slices"
	"testing"

	"stillair/runs/measure"
)

func TestTwice(t *testing.T) {
	ride := func(bike string, x float64, start float64) Ride {
		return Ride{Bike: bike, Loads: []Load{{Setup: "stock", CdA: measure.Value{X: x, SE: 0.01}}},
			Times: []Time{{Mark: "0-100 km/h", Start: start, Time: measure.Value{X: 4.2, SE: 0.04}}}}
	}
	asked, launched := ride("blue", 0.55, 10), ride("blue", 0, 10)
	asked.Times, launched.Loads = nil, nil
	got := Twice([]Ride{ride("blue", 0.55, 10), ride("blue", 0.5501, 10), ride("green", 0.55, 10), ride("blue", 0.55, 300), {}, {}, asked, launched, launched})
	if want := []int{-1, -1, -1, 0, -1, -1, 0, -1, 7}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
