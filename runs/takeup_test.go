package runs

import (
	"testing"

	"stillair/sensors/sim"
)

// TestTakeUps: times from the rollout hold for ways to take up the clutch that
// the fit of a start does not contain. Nothing was tuned on these seeds or on
// these shapes.
func TestTakeUps(t *testing.T) {
	t.Parallel()
	const mark = "0-100 km/h from the rollout"
	for _, shape := range sim.TakeUps() {
		errs := launchErrorsFrom(t, fresh, seeds(15, 3), func(sc *sim.Scenario) { sc.Rider.TakeUp = shape })
		s := errs.spread(mark)
		t.Logf("%q, %s: %v", shape, mark, s)
		t.Logf("%q, from first movement: %v", shape, errs.spread("0-100 km/h from first movement"))
		if s.n == 0 || s.coveredLess(0.92) {
			t.Errorf("%q, %s: %v, want 95 %% intervals that hold 92 %%", shape, mark, s)
		}
	}
}
