package roadload_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"fmt"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// TestNotes: the notes name what limits the figures, and only then.
func TestNotes(t *testing.T) {
	bike := loadtest.Bikes[0]
	for _, c := range []struct {
		name    string
		change  func(test *loadtest.Test, r *rand.Rand)
		word    string
		present bool
	}{
		{"plain day", func(*loadtest.Test, *rand.Rand) {}, "gusts", false},
		{"gusty day", func(c *loadtest.Test, _ *rand.Rand) { c.Noise.GustSD *= 5 }, "gusts", true},
		{"smooth road", func(*loadtest.Test, *rand.Rand) {}, "uneven", false},
		{"rough road", func(c *loadtest.Test, r *rand.Rand) { c.Road = loadtest.Rough(r, 0.004, 150) }, "barometer", true},
		{"rough road, starts far apart", func(c *loadtest.Test, r *rand.Rand) {
			c.Road, c.Farther = loadtest.Rough(r, 0.004, 150), 200
		}, "barometer", false},
		{"no positions", nil, "where it was", true},
		{"one pair", func(c *loadtest.Test, _ *rand.Rand) { c.Pairs, c.To = 1, 90/3.6 }, "more pairs", true},
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
			if got := strings.Contains(fmt.Sprint(e.Notes), c.word); got != c.present {
				t.Errorf("notes %q hold %q: %v", e.Notes, c.word, got)
			}
		})
	}
}
