package fusion_test

import (
	"testing"

	"stillair/sensors/sim"
)

// TestFoldedLine: an engine that is held at 5940 a minute while the clutch slips
// turns 99 times a second, which aliases to 1 Hz in a sensor read 100 times a
// second. Uncorrected it costs 0.14 s at the start; its components across the
// road and upwards allow most of it to be removed.
func TestFoldedLine(t *testing.T) {
	rides := 12
	if testing.Short() {
		rides = 2
	}
	got := launches(t, rides, func(sc *sim.Scenario) {
		sc.Bike = sim.Sport()
		sc.Rider = sim.DefaultRider(sc.Bike)
	})
	for _, what := range []string{rolled, quarter} {
		s := got[what]
		t.Logf("%s: n %d, 95 %% within %.3f s, errors %.2f of what is said, intervals hold %.0f %%", what, len(s), s.p95(), s.normalised(), 100*s.covered())
		if z := s.normalised(); len(s) == 0 || z > 1.2 {
			t.Errorf("%s: errors are %.2f times their standard error", what, z)
		}
		if s.p95() > 0.09 && !testing.Short() {
			t.Errorf("%s: 95 %% within %.3f s", what, s.p95())
		}
	}
}
