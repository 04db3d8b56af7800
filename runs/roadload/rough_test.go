package roadload_test

import (
	"math"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// TestRoughRoad: the slope varies by 0.2 % over 150 m, the same for all runs.
// Runs that start at the ends of one stretch mirror each other and cannot tell
// its profile from drag; with a barometer, or started in different places,
// they can. Without the barometer the roughness itself is hard to learn, which
// costs a sixth over the bound.
func TestRoughRoad(t *testing.T) {
	for _, c := range []struct {
		name    string
		baro    bool
		scatter float64
		over    float64 // allowed sd of CdA over the bound of a smooth road
		limits  limits  // of the three bikes together
	}{
		{"barometer", true, 30, 1.4, limits{0.005, 0.01, 1.10, 0.92, 0.97}},
		{"starts apart", false, 250, 1.7, limits{0.005, 0.01, 1.20, 0.90, 0.97}},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := 100
			if testing.Short() {
				n = 2
				c.limits = c.limits.loose(3 * n)
			}
			var cda, crr tally
			for i, b := range loadtest.Bikes {
				r := trial{test: loadtest.Default(b, 1.5), opts: told(1.5), rough: 0.002, seed: uint64(20 + i)}
				r.test.Baro, r.test.Press, r.test.Scatter, r.test.Length = c.baro, 0.15, c.scatter, 1200
				one, other := r.many(t, n)
				over := one.figure().sd / smoothBound(t, r)
				t.Logf("%s: sd of CdA %.2f of the bound on a smooth road", b.Name, over)
				if !testing.Short() && over > c.over {
					t.Errorf("%s: sd of CdA %.2f times the smooth road's bound, allowed %.2f", b.Name, over, c.over)
				}
				cda.join(one)
				crr.join(other)
			}
			c.limits.hold(t, cda.figure(), crr.figure())
		})
	}
}

// smoothBound is the relative bound of CdA on a smooth road, without heights.
func smoothBound(t *testing.T, c trial) float64 {
	t.Helper()
	c.rough, c.noPlaces = 0, true
	runs, truth := c.ride(0)
	for i := range runs {
		runs[i].Height = nil
	}
	cov, err := roadload.Bound(runs, []roadload.Design{{CdA: c.test.Bike.CdA, Crr: c.test.Bike.Crr}}, truth)
	if err != nil {
		t.Fatal(err)
	}
	return math.Sqrt(cov.At(0, 0)) / c.test.Bike.CdA
}

// TestSmoothAfterAll: looking for a rough road does no harm where there is
// none.
func TestSmoothAfterAll(t *testing.T) {
	for i, b := range loadtest.Bikes {
		t.Run(b.Name, func(t *testing.T) {
			c := trial{test: loadtest.Default(b, 1.5), opts: told(1.5), seed: uint64(30 + i)}
			c.run(t, 100, 2, limits{0.006, 0.012, 1.2, 0.92, 0.99})
		})
	}
}

// TestSlopeDrawn: when the growth of rolling resistance with speed is known as
// well as the options say, and no better, the intervals hold.
func TestSlopeDrawn(t *testing.T) {
	opts := roadload.DefaultOptions(0.5)
	opts.Slope = measure.Value{X: 0.004, SE: 0.002}
	n, hits := 150, 0.0
	if testing.Short() {
		n = 8
	}
	for seed := range n {
		c := trial{test: loadtest.Default(loadtest.Bikes[0], 0.5), opts: opts, noPlaces: true, seed: 40}
		// the same spread of truths for any number of seeds: quantiles of the prior
		c.test.Bike.Slope += 0.002 * math.Sqrt2 * math.Erfinv(2*(float64(seed)+0.5)/float64(n)-1)
		runs, _ := c.ride(seed)
		l := fit(t, runs, opts).Loads[0]
		if l.CdACI[0] <= c.test.Bike.CdA && c.test.Bike.CdA <= l.CdACI[1] {
			hits++
		}
	}
	if cover := hits / float64(n); cover < 0.95-3*0.22/math.Sqrt(float64(n)) {
		t.Errorf("intervals hold %.1f %%", 100*cover)
	}
}
