package runs

import (
	"testing"

	"stillair/sensors/sim"
)

// TestLaunchesWithHoles: with missing readings within a launch, the intervals
// of its times still hold, or the launch is rejected. Nothing was tuned on
// these seeds.
func TestLaunchesWithHoles(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("a Monte Carlo of several hundred launches")
	}
	for _, rate := range []float64{60, 100} {
		errs := launchErrorsFrom(t, fresh, 40, func(sc *sim.Scenario) {
			sc.Phone.Rate = rate
			sc.Phone.Stamp.GapsPerHour, sc.Phone.Stamp.GapMean = 200, 0.4
		})
		for _, mark := range []string{"0-100 km/h from first movement", "0-100 km/h from the rollout", "1/4 mile from the rollout"} {
			s := errs.spread(mark)
			t.Logf("%v Hz, %s: %v", rate, mark, s)
			if s.n < 110 || s.coveredLess(0.92) {
				t.Errorf("%v Hz, %s: %v, want most launches and 95 %% intervals that hold", rate, mark, s)
			}
		}
	}
}
