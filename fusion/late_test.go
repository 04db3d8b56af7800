package fusion_test

import (
	"fmt"
	"math"
	"testing"

	"stillair/fusion"
	"stillair/fusion/opendrive"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// TestLateFixes delays the real drive's fixes more and more. The lag as recorded is
// 0.18 s (testdata/open-drive/README.md). If the lag cannot be estimated, the track
// must say so; the speed must be no worse than straight lines between the fixes,
// corrected for the true lag.
func TestLateFixes(t *testing.T) {
	for _, c := range []struct {
		every  int
		within float64 // s
	}{{1, 0.1}, {10, 0.1}, {20, 0.35}} {
		for _, late := range []float64{0, 3, 4.3} {
			t.Run(fmt.Sprintf("every %.1f s, %.1f s late", float64(c.every)/10, late), func(t *testing.T) {
				d, err := opendrive.Read("../testdata", c.every)
				if err != nil {
					t.Fatal(err)
				}
				for i := range d.Log.Fixes {
					d.Log.Fixes[i].T += late
				}
				tr, err := fusion.Smooth(&d.Log, fusion.Options{})
				if err != nil {
					t.Fatal(err)
				}
				want := 0.18 + late
				_, rms := d.Against(func(at float64) float64 { return tr.At(at).V }, 3, 52)
				_, drawn := d.Against(lines(d.Log.Fixes, want), 3, 52)
				t.Logf("lag %.3f ± %.3f s %v, %.3f m/s rms, straight lines %.3f, %v", tr.Lag.Seconds-want, tr.Lag.SE, tr.Lag.Found, rms, drawn, tr.Notes)
				if math.Abs(tr.Lag.Seconds-want) > c.within {
					t.Errorf("lag %.3f s, want %.2f", tr.Lag.Seconds, want)
				}
				if rms > drawn {
					t.Errorf("%.3f m/s rms off the wheels, straight lines %.3f", rms, drawn)
				}
			})
		}
	}
}

// TestLagSteps delays an invented ride's fixes from its middle on, and no longer
// before its end.
func TestLagSteps(t *testing.T) {
	for _, by := range []float64{0, 0.6, 1.5, 3} {
		t.Run(fmt.Sprintf("by %.1f s", by), func(t *testing.T) {
			ride := simulate(t, fewLaunches(), 11)
			from, to := ride.Log.Fixes[70].T, ride.Log.Fixes[130].T
			for i := range ride.Log.Fixes {
				if f := &ride.Log.Fixes[i]; f.T >= from && f.T < to {
					f.T += by
				}
			}
			ride.Log.Fixes = inOrder(ride.Log.Fixes)
			tr, err := fusion.Smooth(ride.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			rms, z := misfit(tr, ride.Truth, always)
			t.Logf("lag %.3f ± %.3f s, steps %v at %.1f and %.1f, %.3f m/s rms, %.2f of what is said, %v", tr.Lag.Seconds, tr.Lag.SE, tr.Lag.Steps, from, to, rms, z, tr.Notes)
			if rms > 0.2 || z > 2 {
				t.Errorf("speed off by %.3f m/s rms, %.2f of what is said", rms, z)
			}
			for _, f := range []float64{from - 3, from + by + 12, to - 3, to + by + 12} {
				want := ride.Truth.Lag
				if f >= from+by && f < to+by {
					want += by
				}
				if got := tr.Lag.At(f); math.Abs(got-want) > 0.1 {
					t.Errorf("lag %.2f s at %.1f s, want %.2f", got, f, want)
				}
			}
			if by == 0 && tr.Lag.Steps != nil {
				t.Errorf("a lag that did not change steps by %v", tr.Lag.Steps)
			}
		})
	}
}

// inOrder drops fixes that do not come later than the one before.
func inOrder(all []sensors.Fix) []sensors.Fix {
	out := all[:0:0]
	for _, f := range all {
		if len(out) == 0 || f.T > out[len(out)-1].T {
			out = append(out, f)
		}
	}
	return out
}

// TestLateInvented does the same with an invented town, whose truth is known.
func TestLateInvented(t *testing.T) {
	for _, rate := range []float64{10, 1, 0.5} {
		t.Run(fmt.Sprintf("%g Hz", rate), func(t *testing.T) {
			t.Parallel()
			sc := sim.DefaultScenario(sim.Tourer())
			sc.Receiver.Rate, sc.Receiver.Latency = rate, 4.5
			sc.Plan = []sim.Act{sim.Town{Minutes: 4}}
			ride := simulate(t, sc, 1)
			tr, err := fusion.Smooth(ride.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			drawn := *tr
			drawn.V = make([]float64, len(tr.T))
			straight := lines(ride.Log.Fixes, ride.Truth.Lag)
			for i, at := range tr.T {
				drawn.V[i] = straight(at)
			}
			rms, z := misfit(tr, ride.Truth, always)
			by, _ := misfit(&drawn, ride.Truth, always)
			t.Logf("lag off by %.3f ± %.3f s, %.3f m/s rms (straight lines %.3f), %.2f of what is said", tr.Lag.Seconds-ride.Truth.Lag, tr.Lag.SE, rms, by, z)
			if math.Abs(tr.Lag.Seconds-ride.Truth.Lag) > 0.1 || rms > by || z > 1.5 {
				t.Errorf("lag or speed off")
			}
		})
	}
}
