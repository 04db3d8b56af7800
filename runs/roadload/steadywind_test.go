package roadload_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
	"stillair/sensors/sim/batch"
)

// TestSteadyWind: a steady wind along the road changes no figure by more than
// 0.5 %, in the mean over otherwise identical tests, and no standard error from
// noise by 10 %.
func TestSteadyWind(t *testing.T) {
	tests := batch.Size(60, 4)
	fit := func(seed int, along float64) roadload.Load {
		w := loadtest.Naked()
		w.Along = along
		e, err := roadload.Fit(w.Ride(rand.New(rand.NewPCG(uint64(seed), 82)), 0, 0, 0), roadload.DefaultOptions(0.5))
		if err != nil {
			t.Fatal(err)
		}
		return e.Loads[0]
	}
	calm := make([]roadload.Load, tests)
	for seed := range calm {
		calm[seed] = fit(seed, 0)
	}
	for _, along := range []float64{2, 5} {
		var cda, crr, wider sample
		for seed, still := range calm {
			l := fit(seed, along)
			cda = append(cda, l.CdA.X/still.CdA.X-1)
			crr = append(crr, l.Crr.X/still.Crr.X-1)
			wider = append(wider, l.CdA.SE/still.CdA.SE-1)
		}
		t.Logf("%.0f m/s, n %d: CdA %+.2f ± %.2f %%, Crr %+.2f ± %.2f %%, stated se of CdA %+.1f ± %.1f %%", along, tests,
			100*cda.mean(), 100*cda.se(), 100*crr.mean(), 100*crr.se(), 100*wider.mean(), 100*wider.se())
		if math.Abs(cda.mean()) > mostBias+2.6*cda.se() || math.Abs(crr.mean()) > mostBias+2.6*crr.se() {
			t.Errorf("%.0f m/s changes CdA by %+.2f %% and Crr by %+.2f %%", along, 100*cda.mean(), 100*crr.mean())
		}
		if math.Abs(wider.mean()) > 0.1+2.6*wider.se() {
			t.Errorf("%.0f m/s changes the standard error of CdA by %+.1f %%", along, 100*wider.mean())
		}
	}
}
