package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
)

// TestTakeUps: the intervals of times from the rollout and from first movement hold for
// clutch engagements that the fit of a start does not contain. Nothing was tuned on these
// seeds or on these shapes.
func TestTakeUps(t *testing.T) {
	t.Parallel()
	for _, shape := range sim.TakeUps() {
		errs := launchErrorsFrom(t, fresh, batch.Size(15, 3), func(sc *sim.Scenario) { sc.Rider.TakeUp = shape })
		for mark, holds := range map[string]float64{"0-100 km/h from the rollout": 0.92, "0-100 km/h from first movement": 0.90} {
			s := errs.spread(mark)
			t.Logf("%q, %s: %v", shape, mark, s)
			if s.n == 0 || s.coveredLess(holds) {
				t.Errorf("%q, %s: %v, want 95 %% intervals that hold %.0f %%", shape, mark, s, 100*holds)
			}
		}
	}
}
