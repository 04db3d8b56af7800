package roadload_test

import (
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
	"stillair/sensors/finding"
)

// TestNotes: the notes name what limits the figures, and only if it does.
func TestNotes(t *testing.T) {
	bike := loadtest.Bikes[0]
	for _, c := range []struct {
		name    string
		change  func(test *loadtest.Test, r *rand.Rand)
		code    finding.Code
		present bool
	}{
		{"plain day", func(*loadtest.Test, *rand.Rand) {}, "load.gusty", false},
		{"gusty day", func(c *loadtest.Test, _ *rand.Rand) { c.Noise.GustSD *= 5 }, "load.gusty", true},
		{"smooth road", func(*loadtest.Test, *rand.Rand) {}, "load.rough_same_places", false},
		{"rough road", func(c *loadtest.Test, r *rand.Rand) { c.Road = loadtest.Rough(r, 0.004, 150) }, "load.rough_same_places", true},
		{"rough road, starts far apart", func(c *loadtest.Test, r *rand.Rand) {
			c.Road, c.Farther = loadtest.Rough(r, 0.004, 150), 200
		}, "load.rough_same_places", false},
		{"no positions", nil, "load.maybe_smooth", true},
		{"one pair", func(c *loadtest.Test, _ *rand.Rand) { c.Pairs, c.To = 1, 90/3.6 }, "load.uncertain", true},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(4, 70))
			test := loadtest.Default(bike, 0.5)
			if c.change != nil {
				c.change(&test, r)
			}
			runs := test.Ride(r)
			for i := range runs {
				if c.change == nil {
					runs[i].Pos = nil
				}
			}
			e := fit(t, runs, roadload.DefaultOptions(0.5))
			if got := finding.Any(e.Notes, c.code); got != c.present {
				t.Errorf("notes %q hold %q: %v", e.Notes, c.code, got)
			}
		})
	}
}
