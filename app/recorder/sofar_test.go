package recorder

import (
	"context"
	"math"
	"testing"

	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// TestSoFarIsTheWholeTest simulates the demo ride, analyses its coast-downs leg by
// leg as at halts, and checks that their joint result agrees with that of the whole
// recording: the same number of pairs with each setup, and the difference within a
// quarter of its uncertainty.
func TestSoFarIsTheWholeTest(t *testing.T) {
	if testing.Short() {
		t.Skip("measures a whole ride twice")
	}
	ride, err := sim.Run(sim.DemoScenario(sim.Naked()), 1)
	if err != nil {
		t.Fatal(err)
	}
	analyse := func(log *sensors.Log, brief bool) *runs.Result {
		res, err := runs.Analyse(context.Background(), log, runs.Options{Brief: brief})
		if err != nil {
			return &runs.Result{}
		}
		return res
	}
	var all soFar
	legs := 0
	for _, leg := range legsOf(ride.Log) {
		if all.add(leg, analyse(leg, true)) {
			legs++
		}
	}
	all.log.Ride = ride.Log.Ride
	t.Logf("%d legs with coast-downs, %.0f of %.0f s kept", legs, float64(len(all.log.Motion))/100, float64(len(ride.Log.Motion))/100)
	got, want := analyse(&all.log, false), analyse(ride.Log, false)
	if legs < 2 || len(got.Compared) != 1 || len(want.Compared) != 1 || got.Compared[0].CdA == nil {
		t.Fatalf("%d legs, compared %+v, the whole %+v", legs, got.Compared, want.Compared)
	}
	for i, l := range want.RoadLoads {
		if g := got.RoadLoads[i]; g.Setup != l.Setup || g.Pairs != l.Pairs {
			t.Errorf("%q has %d pairs so far, %q %d in the whole", g.Setup, g.Pairs, l.Setup, l.Pairs)
		}
	}
	a, b := got.Compared[0].CdA.Delta, want.Compared[0].CdA.Delta
	t.Logf("so far %.4f ± %.4f m², the whole %.4f ± %.4f", a.X, a.SE, b.X, b.SE)
	if math.Abs(a.X-b.X) > 0.25*b.SE || a.SE > 1.25*b.SE || a.SE < 0.8*b.SE {
		t.Errorf("so far %.4f ± %.4f m², the whole %.4f ± %.4f", a.X, a.SE, b.X, b.SE)
	}
}

// legsOf splits a log where the bike stands.
func legsOf(log *sensors.Log) []*sensors.Log {
	var out []*sensors.Log
	from, stood, moved := math.Inf(-1), 0.0, false
	cut := func(to float64) {
		leg := &sensors.Log{Ride: log.Ride}
		for _, m := range log.Motion {
			if m.T >= from && m.T < to {
				leg.Motion = append(leg.Motion, m)
			}
		}
		for _, f := range log.Fixes {
			if f.T >= from && f.T < to {
				leg.Fixes = append(leg.Fixes, f)
			}
		}
		for _, p := range log.Pressure {
			if p.T >= from && p.T < to {
				leg.Pressure = append(leg.Pressure, p)
			}
		}
		out, from, moved = append(out, leg), to-5, false
	}
	last := math.NaN()
	for _, f := range log.Fixes {
		switch {
		case f.Speed > movingAbove:
			stood, moved = 0, true
		case f.Speed < standingBelow && !math.IsNaN(last):
			stood += f.T - last
		}
		if moved && stood >= standingAfter {
			cut(f.T)
		}
		last = f.T
	}
	if moved {
		cut(math.Inf(1))
	}
	return out
}
