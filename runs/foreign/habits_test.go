package foreign

import (
	"math"
	"testing"

	"stillair/runs"
	"stillair/runs/compare"
)

// habits are what a rider and a day do to a coast-down that a test does not ask for.
type habits struct {
	varies       float64 // relative standard deviation of the drag area from run to run
	now          float64 // its deviation in this run
	sitsUp, from float64 // growth of the drag area below a speed, m/s
	windRises    float64 // m/s²
}

func (h habits) drag(cda, v float64) float64 {
	if v < h.from {
		cda *= 1 + h.sitsUp
	}
	return cda * (1 + h.now)
}

// sits takes the rider's seat for a run.
func (w *world) sits() {
	if w.habits.varies > 0 {
		w.habits.now = w.habits.varies * w.rng.NormFloat64()
	}
}

// fast is where coast-downs begin.
func (w *world) fast() float64 { return math.Min(0.7*w.top(), 31) }

// oneWay are coast-downs in one direction, ridden back under power.
func (w *world) oneWay(n int) {
	for range n {
		w.roll(w.fast(), w.between(6, 9))
		w.stopAndTurn(2)
		w.accelerate(0.4, 0.8*w.fast())
		w.hold(0.8*w.fast(), 15)
		w.stopAndTurn(2)
	}
}

// TestHabits: coast days of riders who do not follow the guide have true bands, or no
// road load at all where only one direction was ridden.
func TestHabits(t *testing.T) {
	for _, tt := range []struct {
		name string
		ride func(w *world)
		none bool // no road load can be had
	}{
		{"one way, downhill", func(w *world) { w.heading, w.tilt = 0, -w.between(0.002, 0.012); w.oneWay(6) }, true},
		{"one way, level", func(w *world) { w.oneWay(6) }, true},
		{"a sloping road", func(w *world) { w.heading, w.tilt = 0, w.between(-0.015, 0.015); w.coastPairs(4) }, false},
		{"sits up below some speed", func(w *world) {
			w.habits.sitsUp, w.habits.from = w.between(0.1, 0.35), w.between(11, 18)
			w.coastPairs(4)
		}, false},
		{"wind that rises", func(w *world) { w.wind, w.habits.windRises = 0, w.between(1, 4)/1800; w.coastPairs(4) }, false},
		{"sits differently in each run", func(w *world) { w.habits.varies = w.between(0.03, 0.08); w.coastPairs(4) }, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			loads, held := 0, 0
			each(t, few(), tt.ride, func(seed uint64, w *world, res *runs.Result) {
				for _, l := range res.RoadLoads {
					loads++
					if l.CdACI[0] < w.cda && w.cda < l.CdACI[1] && l.CrrCI[0] < w.crr && w.crr < l.CrrCI[1] {
						held++
					}
				}
			})
			n := float64(loads)
			t.Logf("%d road loads, of which both bands hold in %d", loads, held)
			if tt.none != (loads == 0) || float64(held) < 0.9*n-1-math.Sqrt(0.09*n) {
				t.Errorf("%d road loads, of which both bands hold in %d", loads, held)
			}
		})
	}
}

// TestUnsteadyPosture: A, B, B, A without a change, by riders who sit differently in each
// run. The bands of the difference hold.
func TestUnsteadyPosture(t *testing.T) {
	for _, tt := range []struct {
		name   string
		varies float64
		pairs  int // of each turn
	}{
		{"3 %, two pairs", 0.03, 2},
		{"6 %, two pairs", 0.06, 2},
		{"6 %, three pairs", 0.06, 3},
	} {
		t.Run(tt.name, func(t *testing.T) {
			compared, held, differs, said := 0, 0, 0, 0
			each(t, few(), func(w *world) {
				w.habits.varies = tt.varies
				for k, name := range []string{"as it was", "changed", "changed", "as it was"} {
					if k != 2 {
						w.becomes(name)
					}
					w.coastPairs(tt.pairs)
				}
			}, func(seed uint64, w *world, res *runs.Result) {
				for _, c := range res.Compared {
					if c.CdA == nil {
						continue
					}
					compared++
					if c.CdA.CI[0] < 0 && 0 < c.CdA.CI[1] {
						held++
					}
					if c.CdA.Finding == compare.Differs {
						differs++
					}
					if res.Estimate.Noise.PostureSD > 0 {
						said++
					}
					t.Logf("seed %d: %+.1f %% (%.1f to %.1f), learned %.3f", seed, c.CdA.Percent, c.CdA.CIPercent[0], c.CdA.CIPercent[1], res.Estimate.Noise.PostureSD)
				}
			})
			n := float64(compared)
			t.Logf("of %d compared the band holds in %d, a difference is said in %d, the posture is named in %d", compared, held, differs, said)
			if float64(held) < 0.9*n-1-math.Sqrt(0.09*n) || compared == 0 {
				t.Errorf("of %d compared the band holds in %d, a difference is said in %d", compared, held, differs)
			}
		})
	}
}
