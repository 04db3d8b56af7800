package roadload_test

import (
	"flag"
	"math"
	"testing"

	"stillair/runs/roadload/loadtest"
)

// comparedTests is the number of tests in each world.
var comparedTests = flag.Int("compared", 8, "how many tests to compare in each world that is not the fit's")

// changing are worlds whose physics change during A B B A, or differ from the
// fit's model.
func changing() []loadtest.World {
	with := func(name string, f func(*loadtest.World)) loadtest.World {
		w := loadtest.Naked()
		f(&w)
		w.Name = name
		return w
	}
	return []loadtest.World{
		with("cross-wind", func(w *loadtest.World) { w.Cross, w.Yaw = 2, 0.015 }),
		with("warming tyres", func(w *loadtest.World) { w.Cold, w.CoolsIn = 0.15, 1200 }),
		with("v² tyres", func(w *loadtest.World) { w.Rolling = loadtest.TyresSquare(2.5) }),
		with("drifting wind", func(w *loadtest.World) { w.Along, w.Drifts = 1, 2 }),
	}
}

// TestComparedElsewhere simulates A B B A in those worlds without a change, with
// 4 % more drag area and with 8 % less. A false difference is shown in at most 7
// % of tests, which allows for the small number; 8 % is seen in 80 %, and no
// difference is ever shown with the wrong sign. The result for 4 % is only
// logged, since its chance depends on the day.
func TestComparedElsewhere(t *testing.T) {
	tests := *comparedTests
	if testing.Short() {
		tests = 4
	}
	for _, change := range []struct {
		name        string
		factor      float64
		least, most float64 // share of tests that show it
	}{{"no change", 1, 0, 0.07}, {"4 % more", 1.04, 0, 1}, {"8 % less", 0.92, 0.8, 1}} {
		shown, wrong, n := 0, 0, 0
		for _, w := range changing() {
			here := 0
			var sum, sq, se float64
			for seed := range tests {
				e, err := fitABBA(w, change.factor, uint64(1000+seed))
				if err != nil {
					t.Fatalf("%s, seed %d: %v", w.Name, seed, err)
				}
				d, _ := e.Alike(0, 1)
				ci := d.CdA.Interval(0.95, d.DoF)
				n++
				x := d.CdA.X / w.CdA
				sum, sq, se = sum+x, sq+x*x, se+d.CdA.SE/w.CdA
				switch {
				case ci[0] > 0 && change.factor >= 1, ci[1] < 0 && change.factor <= 1:
					here++
				case ci[0] > 0, ci[1] < 0:
					wrong++
				}
			}
			k := float64(tests)
			t.Logf("%s, %s: shown %d of %d; mean %+.2f %%, sd %.2f, se %.2f", change.name, w.Name, here, tests,
				100*sum/k, 100*math.Sqrt(sq/k-sum*sum/k/k), 100*se/k)
			shown += here
		}
		t.Logf("%s: shown %d of %d, the wrong way %d", change.name, shown, n, wrong)
		share := float64(shown) / float64(n)
		chance := 2.6 * math.Sqrt(change.most*(1-change.most)/float64(n))
		if wrong > 0 || share < change.least || share > change.most+chance {
			t.Errorf("%s: shown in %.0f %% of tests, %d the wrong way; want %.0f to %.0f %%",
				change.name, 100*share, wrong, 100*change.least, 100*change.most)
		}
	}
}
