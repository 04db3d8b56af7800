package roadload_test

import (
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// TestGearLeftIn: engine drag through one whole run is not mistaken for a wind
// that changed between the runs of its pair, for any weight of the bike: this
// run is named and left out, and no other.
func TestGearLeftIn(t *testing.T) {
	n := 40
	if testing.Short() {
		n = 2
	}
	for i, b := range loadtest.Bikes {
		t.Run(b.Name, func(t *testing.T) {
			named, others := 0, 0
			for seed := range n {
				c := trial{test: loadtest.Default(b, 1.5), opts: loadtest.Known(1.5), seed: uint64(77 + i)}
				c.opts.Noise.RoadSD = 0
				c.test.Spoil = func(run int, _, v float64) (float64, float64) {
					if run == 3 {
						return 60 + 4*v, 0 // N
					}
					return 0, 0
				}
				runs, _ := c.ride(seed)
				e, err := roadload.Fit(runs, c.opts)
				if err != nil {
					t.Fatal(err)
				}
				for k, r := range e.Runs {
					switch {
					case r.Reason.IsZero():
					case k == 3:
						named++
					default:
						others++
					}
				}
			}
			t.Logf("named in %d of %d, %d others left out", named, n, others)
			if float64(named) < 0.95*float64(n) || float64(others) > 0.07*float64(n) {
				t.Errorf("named in %d of %d, %d others left out", named, n, others)
			}
		})
	}
}
