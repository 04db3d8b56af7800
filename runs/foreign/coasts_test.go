package foreign

import (
	"math"
	"testing"

	"stillair/runs"
	"stillair/runs/compare"
)

// TestHeldOnce: one of ten coast-downs is slowed by a dragging brake or a gear left in,
// and the bands of the drag area still contain the truth.
func TestHeldOnce(t *testing.T) {
	for _, tt := range []struct {
		name  string
		brake float64 // N
		gear  bool
	}{
		{"brake of 20 N", 20, false},
		{"brake of 50 N", 50, false},
		{"brake of 120 N", 120, false},
		{"gear left in", 0, true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			held, loads, refused, rode, kept := 0, 0, 0, 0, 0
			each(t, few(), func(w *world) {
				which := w.rng.IntN(10)
				for k := range 10 {
					if w.dragging = 0; k == which {
						w.dragging, w.inGear = tt.brake, tt.gear
					}
					w.roll(math.Min(0.7*w.top(), 31), w.between(6, 9))
					if k == which {
						w.events[len(w.events)-1].kind = ""
					}
					w.dragging, w.inGear = 0, false
					w.stopAndTurn(2)
				}
			}, func(seed uint64, w *world, res *runs.Result) {
				rode++
				f, n := w.found(res)
				refused += n - f
				kept += w.untrue(res, runs.CoastDown)
				for _, l := range res.RoadLoads {
					loads++
					if l.CdACI[0] < w.cda && w.cda < l.CdACI[1] {
						held++
					}
					if math.Abs(l.CdA.X-w.cda) > 5*l.CdA.SE {
						t.Errorf("seed %d, %.0f kW: CdA %.3f ± %.3f, in truth %.3f", seed, w.power/1e3, l.CdA.X, l.CdA.SE, w.cda)
					}
					t.Logf("seed %d, %.0f kW: CdA %.3f (%.3f to %.3f), in truth %.3f", seed, w.power/1e3, l.CdA.X, l.CdACI[0], l.CdACI[1], w.cda)
				}
			})
			t.Logf("of %d rides %d with a road load, the band of CdA holds in %d; the run that was held back kept in %d, others refused %d", rode, loads, held, kept, refused)
			if float64(held) < 0.9*float64(loads)-1-math.Sqrt(0.09*float64(loads)) || loads == 0 {
				t.Errorf("of %d road loads the band of CdA holds in %d", loads, held)
			}
		})
	}
}

// TestSlimmer: A, B, B, A with two pairs each time; the second setup has as much drag,
// 4 % more or 8 % less.
func TestSlimmer(t *testing.T) {
	for _, tt := range []struct {
		name string
		more float64
	}{
		{"as much", 0},
		{"4 % more", 0.04},
		{"8 % less", -0.08},
	} {
		t.Run(tt.name, func(t *testing.T) {
			rode, compared, held, seen := 0, 0, 0, 0
			each(t, few(), func(w *world) {
				cda := w.cda
				for k, name := range []string{"as it was", "changed", "changed", "as it was"} {
					if w.cda = cda; name == "changed" {
						w.cda *= 1 + tt.more
					}
					if k != 2 {
						w.becomes(name)
					}
					w.coastPairs(2)
				}
			}, func(seed uint64, w *world, res *runs.Result) {
				rode++
				for _, c := range res.Compared {
					if c.CdA == nil {
						continue
					}
					compared++
					want := w.cda * tt.more
					if c.CdA.CI[0] < want && want < c.CdA.CI[1] {
						held++
					}
					if c.CdA.Finding == compare.Differs {
						seen++
						if tt.more*c.CdA.Delta.X < 0 {
							t.Errorf("seed %d: %+.1f %%, in truth %+.0f %%", seed, c.CdA.Percent, 100*tt.more)
						}
					}
					t.Logf("seed %d, %.0f kW: %+.2f %% (%.2f to %.2f)", seed, w.power/1e3, c.CdA.Percent, c.CdA.CIPercent[0], c.CdA.CIPercent[1])
				}
			})
			n := float64(compared)
			t.Logf("of %d rides %d compared, the band holds in %d, a difference is seen in %d", rode, compared, held, seen)
			if float64(held) < 0.9*n-1-math.Sqrt(0.09*n) || tt.more == 0 && float64(seen) > 0.07*n+1+math.Sqrt(0.07*n) || compared == 0 {
				t.Errorf("of %d rides %d compared, the band holds in %d, a difference is seen in %d", rode, compared, held, seen)
			}
		})
	}
}
