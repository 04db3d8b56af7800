package roadload_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// twoRoads rides three pairs on each of two rough roads, the second of which
// begins a given distance in m after the first.
func twoRoads(seed int, apart float64) []roadload.Run {
	r := rand.New(rand.NewPCG(uint64(seed), 90))
	test := loadtest.Default(loadtest.Bikes[1], 0.5)
	test.Pairs, test.Scatter = 3, 250
	var all []roadload.Run
	for road := range 2 {
		test.Road = loadtest.Rough(r, 0.002, 150)
		for _, run := range test.Ride(r) {
			run.ID, run.Pair = len(all)+1, run.Pair+3*road
			for i := range run.T {
				run.T[i] += 3600 * float64(road)
				run.Pos[i] += apart * float64(road)
			}
			all = append(all, run)
		}
	}
	return all
}

// TestTwoRoads: knots lie only where runs passed, so that a second road does
// not reduce the detail of the first one, at any distance.
func TestTwoRoads(t *testing.T) {
	n := 40
	if testing.Short() {
		n = 2
	}
	bike := loadtest.Bikes[1]
	truth := loadtest.Known(0.5)
	truth.Noise.RoadSD, truth.Noise.RoadLength = 0.002, 150
	var cda, crr tally
	for seed := range n {
		runs := twoRoads(seed, 5000)
		l := fit(t, runs, loadtest.Known(0.5)).Loads[0]
		bound, err := roadload.Bound(runs, []roadload.Design{{CdA: bike.CdA, Crr: bike.Crr}}, truth)
		if err != nil {
			t.Fatal(err)
		}
		cda.add(l.CdA, l.CdACI, bike.CdA, bound.At(0, 0))
		crr.add(l.Crr, l.CrrCI, bike.Crr, bound.At(1, 1))
		if seed < 5 {
			far := fit(t, twoRoads(seed, 1e5), loadtest.Known(0.5)).Loads[0]
			if d := math.Abs(far.CdA.X - l.CdA.X); d > 0.05*l.CdA.SE || math.Abs(far.CdA.SE/l.CdA.SE-1) > 0.02 {
				t.Errorf("seed %d: CdA %.4f ± %.4f with the second road 5 km off, %.4f ± %.4f at 100 km",
					seed, l.CdA.X, l.CdA.SE, far.CdA.X, far.CdA.SE)
			}
		}
	}
	limits := limits{0.01, 0.015, 1.25, 0.875, 1}
	if testing.Short() {
		limits = limits.loose(n)
	}
	limits.hold(t, cda.figure(), crr.figure())
}
