package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
)

// TestHardLaunches: with worse data the ± is larger and still holds.
func TestHardLaunches(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("a Monte Carlo of several hundred launches")
	}
	tests := []struct {
		name   string
		change func(sc *sim.Scenario)
		within float64 // s, for 95 % of 0-100 km/h from the rollout
		bias   float64 // s
	}{
		{"harsh vibration", func(sc *sim.Scenario) { sc.Phone = sim.HarshPhone() }, 0.100, 0.03},
		{"a browser's 60 Hz", func(sc *sim.Scenario) { sc.Phone = sim.BrowserPhone() }, 0.100, 0.03},
		{"a receiver that smooths over 0.4 s", func(sc *sim.Scenario) { sc.Receiver.SmoothTau = 0.4 }, 0.070, 0.03},
	}
	for _, tt := range tests {
		errs := launchErrors(t, batch.Size(125, 125), tt.change)
		for _, mark := range []string{"0-100 km/h from the rollout", "0-100 km/h from first movement", "1/4 mile from the rollout", "80-120 km/h"} {
			t.Logf("%s, %s: %v", tt.name, mark, errs.spread(mark))
		}
		s := errs.spread("0-100 km/h from the rollout")
		if s.p95 > tt.within || s.mean > tt.bias || s.mean < -tt.bias {
			t.Errorf("%s: %v, want 95 %% within %v s and a bias under %v s", tt.name, s, tt.within, tt.bias)
		}
		if s.n < 490 {
			t.Errorf("%s: only %d of 500 launches were accepted", tt.name, s.n)
		}
		if s.covered < 0.92 {
			t.Errorf("%s: 95 %% intervals hold %.1f %%", tt.name, 100*s.covered)
		}
	}
}
