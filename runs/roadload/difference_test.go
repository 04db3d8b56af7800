package roadload_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
)

// abba rides two setups on one road in the order A B B A, two pairs at a time;
// the second has more drag by a share of the first's.
func abba(r *rand.Rand, wind, rough, more float64) []roadload.Run {
	var road func(float64) float64
	if rough > 0 {
		road = loadtest.Rough(r, rough, 150)
	}
	var runs []roadload.Run
	clock := 0.0
	for block, setup := range []int{0, 1, 1, 0} {
		test := loadtest.Default(loadtest.Bikes[0], wind)
		test.Road, test.Pairs, test.Setup = road, 2, setup
		if setup == 1 {
			test.Bike.CdA *= 1 + more
		}
		part := test.Ride(r)
		for i := range part {
			part[i].ID += 4 * block
			part[i].Pair += 2 * block
			for j := range part[i].T {
				part[i].T[j] += clock
			}
		}
		clock = part[len(part)-1].T[0] + 300
		runs = append(runs, part...)
	}
	return runs
}

// TestDifference: for two setups on one rough road, common effects (the road,
// the mass) cancel in the difference. Its intervals hold, and its uncertainty
// is about that on a smooth road.
func TestDifference(t *testing.T) {
	n := 120
	if testing.Short() {
		n = 3
	}
	const wind, more = 0.5, 0.1
	bike := loadtest.Bikes[0]
	for _, c := range []struct {
		name  string
		rough float64
	}{{"smooth", 0}, {"rough", 0.002}} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			var hits, square, se2, apart2 float64
			for seed := range n {
				opts := loadtest.Known(wind)
				opts.MassSD = 0.02
				e := fit(t, abba(rand.New(rand.NewPCG(uint64(seed), 23)), wind, c.rough, more), opts)
				d, _, dof, _ := e.Difference(0, 1)
				ci := d.Interval(0.95, dof)
				truth := more * bike.CdA
				if ci[0] <= truth && truth <= ci[1] {
					hits++
				}
				square += (d.X - truth) * (d.X - truth)
				se2 += d.SE * d.SE
				apart2 += e.Loads[0].CdA.SE*e.Loads[0].CdA.SE + e.Loads[1].CdA.SE*e.Loads[1].CdA.SE
			}
			f := float64(n)
			t.Logf("sd %.4f, se %.4f, of the two apart %.4f, intervals hold %.1f %%", math.Sqrt(square/f), math.Sqrt(se2/f), math.Sqrt(apart2/f), 100*hits/f)
			if low := 0.95 - 3*0.22/math.Sqrt(f); hits/f < low {
				t.Errorf("intervals hold %.1f %%", 100*hits/f)
			}
			if se2 > 0.5*apart2 {
				t.Errorf("standard error %.4f of the difference: what is shared does not cancel (%.4f apart)", math.Sqrt(se2/f), math.Sqrt(apart2/f))
			}
			if limit := 0.0068 * 1.25; math.Sqrt(se2/f) > limit {
				t.Errorf("standard error %.4f, more than 1.25 times that on a smooth road", math.Sqrt(se2/f))
			}
		})
	}
}
