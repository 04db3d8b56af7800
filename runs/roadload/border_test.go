package roadload_test

import (
	"flag"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// borderTests is the number of tests of each kind.
var borderTests = flag.Int("border", 4, "how many tests to fit in each calm of TestCalmAndSmooth")

// TestCalmAndSmooth: if gusts, the variation of wind between pairs and the road's
// unevenness are zero, or nearly so, the likelihood of their size has its maximum at
// the boundary, where its curvature does not give the uncertainty. Priors keep the
// estimates away from it, and averaging over roughnesses covers the rest: the
// intervals from noise must hold.
func TestCalmAndSmooth(t *testing.T) {
	tests := *borderTests
	if testing.Short() {
		tests = 2
	}
	for _, c := range []struct {
		name           string
		gusts, differs float64 // m/s
		positions      bool
	}{
		{"no gusts", 0, 0.5, false},
		{"no gusts, positions", 0, 0.5, true},
		{"no wind at all", 0, 0, false},
		{"no wind at all, positions", 0, 0, true},
		{"next to none", 0.05, 0.05, false},
		{"next to none, positions", 0.05, 0.05, true},
	} {
		n, cda, crr, border := 0, 0, 0, 0
		var relative sample
		for seed := range tests {
			w := loadtest.Naked()
			w.GustSD, w.Differs, w.NoPosition = c.gusts, c.differs, !c.positions
			opts := roadload.DefaultOptions(0.5)
			e, err := roadload.Fit(w.Ride(rand.New(rand.NewPCG(uint64(seed), 83)), 0, 0, 0), opts)
			if err != nil {
				t.Fatalf("%s, seed %d: %v", c.name, seed, err)
			}
			l := e.Loads[0]
			n++
			if l.CdACI[0] < w.CdA && w.CdA < l.CdACI[1] {
				cda++
			}
			if l.CrrCI[0] < w.Rolls() && w.Rolls() < l.CrrCI[1] {
				crr++
			}
			if atBorder(opts.Noise, e.Noise) {
				border++
			}
			relative = append(relative, l.CdA.SE/w.CdA)
		}
		t.Logf("%s: %d tests; intervals of CdA held in %d, of Crr in %d; standard error of CdA %.2f %%; noise at a border in %d", c.name, n, cda, crr, 100*relative.mean(), border)
		if least := n*9/10 - 1; min(cda, crr) < least {
			t.Errorf("%s: intervals held in %d and %d of %d", c.name, cda, crr, n)
		}
	}
}
