package roadload_test

import (
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// TestKnownCrossWind: if a weather station gives the cross-wind, the bands of
// CdA and of the force are narrower in calm air, wider in a strong wind, and
// contain the truth in both.
func TestKnownCrossWind(t *testing.T) {
	const tests = 12
	var noStation float64
	for _, c := range []struct {
		name   string
		entry  float64 // root mean square across the road, m/s
		across float64 // true value, m/s
	}{{"none entered", roadload.CrossWindLimit, 0.6}, {"calm", 0.8, 0.6}, {"strong", 4.5, 4}} {
		w := loadtest.Naked()
		w.Cross, w.Yaw = c.across, 0.015
		var sum loadtest.Tally
		for seed := range tests {
			opts := roadload.DefaultOptions(0.5)
			opts.MassSD, opts.DensitySD, opts.CrossRMS = 0.015, 0.006, c.entry
			e, err := roadload.Fit(w.Ride(rand.New(rand.NewPCG(uint64(seed), 81)), 0, 0, 0), opts)
			if err != nil {
				t.Fatal(err)
			}
			sum.Add(w, e)
		}
		t.Logf("%s: %v", c.name, &sum)
		if sum.CdAHeld < tests*9/10 || sum.CrrHeld < tests*9/10 || sum.ForceHeld < tests*9/10 {
			t.Errorf("%s: bands hold too seldom: %v", c.name, &sum)
		}
		switch se := sum.ForceSE / tests; c.name {
		case "none entered":
			noStation = se
		case "calm":
			if se > 0.8*noStation {
				t.Errorf("force ± %.1f %% in known calm, %.1f %% without", 100*se, 100*noStation)
			}
		default:
			if se < noStation {
				t.Errorf("force ± %.1f %% in a known strong wind, %.1f %% without", 100*se, 100*noStation)
			}
		}
	}
}
