package roadload_test

import (
	"flag"
	"math"
	"testing"

	"stillair/runs/roadload/loadtest"
)

var warmingTests = flag.Int("warming", 3, "how many tests of each kind of warming up to ride")

// TestWarmingTyres simulates tyres that warm up by laws that the fit does not
// contain, in an unbalanced order, A A B B, and a balanced one. Differences are
// corrected for warming up as estimated from the runs: their bias must not
// significantly exceed mostBias in the balanced order and, since the runs show it
// only in part, three times that in the other, and their intervals hold in both. In
// 60 tests each the worst were −0.53 ± 0.20 % (25 % in 10 min, A B B A) and −1.27 ±
// 0.23 % (evenly over half an hour, A A B B).
func TestWarmingTyres(t *testing.T) {
	cold := func(more, in float64, law func(since float64) float64) loadtest.World {
		w := loadtest.Naked()
		w.Cold, w.CoolsIn, w.ColdLaw = more, in, law
		return w
	}
	tests := *warmingTests
	if testing.Short() {
		tests = 2
	}
	for _, c := range []struct {
		name  string
		world loadtest.World
	}{
		{"warm from the start", cold(0, 900, nil)},
		{"25 %, in 10 min", cold(0.25, 600, nil)},
		{"15 %, in 40 min", cold(0.15, 2400, nil)},
		{"15 %, by 1/(1 + t)", cold(0.15, 900, func(since float64) float64 { return 1 / (1 + since/600) })},
		{"15 %, evenly over half an hour", cold(0.15, 900, func(since float64) float64 { return math.Max(0, 1-since/1800) })},
	} {
		for _, order := range []struct {
			name string
			most float64
			of   []int
		}{{"A B B A", mostBias, []int{0, 1, 1, 0}}, {"A A B B", 3 * mostBias, []int{0, 0, 1, 1}}} {
			var sum differences
			for seed := range tests {
				e, err := fitOrder(c.world, 1.04, uint64(2000+seed), order.of...)
				if err != nil {
					t.Fatalf("%s, %s, seed %d: %v", c.name, order.name, seed, err)
				}
				sum.add(e, c.world.CdA)
			}
			t.Logf("%s, %s: %v", c.name, order.name, &sum)
			chance := math.Max(sum.area.se(), sum.se/math.Pow(float64(sum.n), 1.5)) // a few may agree by chance
			if bias := sum.area.mean() - 0.04; sum.held < sum.n*9/10-1 || math.Abs(bias) > order.most+2.6*chance {
				t.Errorf("%s, %s: %v", c.name, order.name, &sum)
			}
		}
	}
}
