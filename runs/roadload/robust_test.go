package roadload_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// spoiler is something that happens in the fourth of ten runs.
type spoiler struct {
	name    string
	force   float64 // additional drag force, N
	perMPS  float64 // and per m/s
	air     float64 // additional air speed, m/s
	from, s float64 // when it begins and how long it lasts, s
	whole   bool    // the whole run is affected
	move    float64 // limit for the change of the result, rms, in standard errors
}

func (c spoiler) apply(run int, t, v float64) (force, air float64) {
	if run != 3 || t < c.from || t > c.from+c.s {
		return 0, 0
	}
	return c.force + c.perMPS*v, c.air
}

// TestSpoilt: one of ten runs is spoilt. It is named, and the result changes
// little from that without the disturbance. Leaving out a whole run changes it
// because of the lost information: an eleventh of the variance, and more
// because its partner loses most of its information too.
func TestSpoilt(t *testing.T) {
	n := 30
	if testing.Short() {
		n = 2
	}
	const forever = 1e9
	for i, c := range []spoiler{
		{name: "brush of the brake", force: 0.5 * 300, from: 20.4, s: 3, move: 0.3},
		{name: "short brake", force: 1.5 * 300, from: 12, s: 1, move: 0.3},
		{name: "bow wave of a lorry", air: 10, from: 10, s: 1.5, move: 0.3},
		{name: "gear left in", force: 60, perMPS: 4, s: forever, whole: true, move: 0.8},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			bike := loadtest.Bikes[i%len(loadtest.Bikes)]
			named, square, wrong := 0, 0.0, 0
			for seed := range n {
				test := loadtest.Default(bike, 1.5)
				opts := loadtest.Known(1.5)
				opts.Noise.RoadSD = 0
				ride := func() *roadload.Estimate {
					return fit(t, test.Ride(rand.New(rand.NewPCG(uint64(seed), uint64(50+i)))), opts)
				}
				clean := ride()
				test.Spoil = c.apply
				spoilt := ride()
				moved := (spoilt.Loads[0].CdA.X - clean.Loads[0].CdA.X) / clean.Loads[0].CdA.SE
				square += moved * moved
				for _, f := range spoilt.Runs {
					switch found := !f.Reason.IsZero() || !c.whole && len(f.Cuts) > 0; {
					case found && f.ID == 4:
						named++
					case found:
						wrong++
					}
				}
			}
			rms := math.Sqrt(square / float64(n))
			t.Logf("%s: named in %d of %d, others named %d times, moved %.2f se (rms)", bike.Name, named, n, wrong, rms)
			if named < n-n/20 || wrong > 1+n/15 {
				t.Errorf("named in %d of %d, others named %d times", named, n, wrong)
			}
			if rms > c.move {
				t.Errorf("moved by %.2f standard errors (rms), allowed %.2f", rms, c.move)
			}
		})
	}
}

// TestCutSaysWhere: a cut covers the disturbance and has the right sign.
func TestCutSaysWhere(t *testing.T) {
	test := loadtest.Default(loadtest.Bikes[0], 0.5)
	c := spoiler{force: 600, from: 12.2, s: 1.5}
	test.Spoil = c.apply
	runs := test.Ride(rand.New(rand.NewPCG(1, 60)))
	f := fit(t, runs, loadtest.Known(0.5)).Runs[3]
	if len(f.Cuts) != 1 {
		t.Fatalf("%d cuts, want 1", len(f.Cuts))
	}
	cut, start := f.Cuts[0], runs[3].T[0]
	if cut.From-start > 13 || cut.To-start < 13 || cut.To-cut.From > 6 {
		t.Errorf("cut from %.1f to %.1f s of the run, the brake was on from 12.2 to 13.7 s", cut.From-start, cut.To-start)
	}
	if cut.Reason.IsZero() {
		t.Error("the cut gives no reason")
	}
}

// TestTurnedWind: a wind that turns between the two runs of a pair is reported.
func TestTurnedWind(t *testing.T) {
	test := loadtest.Default(loadtest.Bikes[0], 0.5)
	c := spoiler{air: 5, s: 1e9}
	test.Spoil = c.apply
	e := fit(t, test.Ride(rand.New(rand.NewPCG(2, 60))), loadtest.Known(0.5))
	if f := e.Runs[3]; !f.Reason.IsZero() {
		return // left out completely: also reported
	}
	a, b := e.Runs[2].Wind, e.Runs[3].Wind
	if d := math.Abs(a.X - b.X); d < 2.6*math.Hypot(a.SE, b.SE) {
		t.Errorf("winds %v and %v of the pair do not differ", a, b)
	}
}
