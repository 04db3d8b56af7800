package runs

import (
	"context"
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// TestLaunchesOfAScooter: launches of a scooter of 9 kW, not used for tuning,
// are found and count, although strong bikes accelerate like that in everyday
// town riding.
func TestLaunchesOfAScooter(t *testing.T) {
	rides, launches, counted := 12, 0, 0
	if testing.Short() {
		rides = 4
	}
	for seed := range rides {
		sc := sim.DefaultScenario(sim.Scooter())
		sc.Plan = sim.Launches(4, 75*units.KMH, 0)
		ride, err := sim.Run(sc, 9300+uint64(seed))
		if err != nil {
			t.Fatal(err)
		}
		res, err := Analyse(context.Background(), ride.Log, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range ride.Truth.Of(sim.KindLaunch) {
			launches++
			for _, r := range res.Runs {
				if r.Kind == Launch && r.Start < d.End && r.End > d.Start {
					if r.Accepted() {
						counted++
					} else {
						t.Logf("seed %d: %v", seed, r.Reasons)
					}
				}
			}
		}
	}
	if counted < launches*97/100 {
		t.Errorf("%d of %d launches count", counted, launches)
	}
}

// TestFarStamps: time stamps far from a ride neither use much memory nor lose the ride.
func TestFarStamps(t *testing.T) {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.Launches(1, 110*units.KMH, 0)
	ride, err := sim.Run(sc, 9400)
	if err != nil {
		t.Fatal(err)
	}
	for _, far := range []float64{1.7e9, 1e15, 30 * 86400} {
		log := *ride.Log
		last := log.Motion[len(log.Motion)-1]
		last.T = far
		log.Motion = append(log.Motion[:len(log.Motion):len(log.Motion)], last)
		res, err := Analyse(context.Background(), &log, Options{})
		if err != nil {
			t.Fatalf("%g: %v", far, err)
		}
		found := 0
		for _, r := range res.Runs {
			if r.Kind == Launch && r.Accepted() {
				found++
			}
		}
		if found != 1 || len(res.Notes) == 0 || len(res.Track.T) > 2*len(ride.Log.Motion) {
			t.Errorf("%g: %d launches, %d notes, %d entries", far, found, len(res.Notes), len(res.Track.T))
		}
	}
}
