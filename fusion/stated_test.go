package fusion_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/fusion"
)

// TestStatedAccuracy: the accuracy that a receiver states for its fixes is used,
// whatever its scale.
func TestStatedAccuracy(t *testing.T) {
	rms := func(stated func(bad bool) float64) float64 {
		ride := simulate(t, fewLaunches(), 11)
		rng := rand.New(rand.NewPCG(3, 9))
		for i := range ride.Log.Fixes {
			f := &ride.Log.Fixes[i]
			bad := rng.IntN(3) == 0
			if bad {
				f.Speed = math.Max(0, f.Speed+0.4*rng.NormFloat64())
			}
			f.SpeedSD = stated(bad)
		}
		tr, err := fusion.Smooth(ride.Log, fusion.Options{})
		if err != nil {
			t.Fatal(err)
		}
		rms, z := misfit(tr, ride.Truth, always)
		if z > 1.5 {
			t.Errorf("errors are %.2f times what the track says", z)
		}
		return rms
	}
	said := func(good, bad float64) func(bool) float64 {
		return func(is bool) float64 {
			if is {
				return bad
			}
			return good
		}
	}
	silent, half, large := rms(said(math.NaN(), math.NaN())), rms(said(0.05, 0.4)), rms(said(0.5, 4))
	t.Logf("speed off by %.3f m/s rms where nothing is stated, %.3f where the truth is, %.3f where ten times it", silent, half, large)
	if half > 0.9*silent || large > 0.9*silent {
		t.Errorf("what the receiver states gains too little: %.3f and %.3f m/s of %.3f", half, large, silent)
	}
}
