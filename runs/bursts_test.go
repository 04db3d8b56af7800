package runs

import (
	"context"
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestBursts stamps the motion of launches in bursts of 8 to 50 readings, each at
// the time of its last reading: the marks agree with those of individually stamped
// motion within half their standard errors, and no launch is lost.
func TestBursts(t *testing.T) {
	sc := sim.DefaultScenario(sim.Sport())
	sc.Plan = append(sim.Launches(3, 110*units.KMH, 0), sim.Stand{Seconds: 5})
	ride, whole := rideAndResult(t, sc, fresh+900)
	if ride == nil {
		return
	}
	for _, n := range []int{8, 20, 50} {
		log := *ride.Log
		log.Motion = nil
		for i, m := range ride.Log.Motion {
			last := min(i-i%n+n, len(ride.Log.Motion)) - 1
			m.T = ride.Log.Motion[last].T - 1e-4*float64(last-i)
			log.Motion = append(log.Motion, m)
		}
		result, err := Analyse(context.Background(), &log, Options{})
		if err != nil {
			t.Errorf("%d: %v", n, err)
			continue
		}
		if len(result.Notes) != len(whole.Notes)+1 || len(sensors.Spread(&log).Notes) == 0 {
			t.Errorf("%d: notes %v", n, result.Notes)
		}
		for _, d := range ride.Truth.Of(sim.KindLaunch) {
			a, _ := launchAt(whole, d.Start)
			b, ok := launchAt(result, d.Start)
			if !ok || !b.Accepted() || math.Abs(b.Start-a.Start) > 0.02 || len(a.Marks) != len(b.Marks) {
				t.Errorf("%d: the launch at %.2f s: found %v, at %.3f s, %v", n, d.Start, ok, b.Start, b.Reasons)
				continue
			}
			for i, m := range a.Marks {
				if off := b.Marks[i].Rollout.X - m.Rollout.X; math.Abs(off) > 0.5*m.Rollout.SE {
					t.Errorf("%d: %s is off by %.3f s, its standard error is %.3f s", n, m.Name, off, m.Rollout.SE)
				}
			}
		}
	}
}
