package runs

import (
	"math"
	"slices"
	"testing"

	"stillair/runs/power"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
)

// calmPulls is a ride of pulls in fourth gear on a calm day.
func calmPulls(b sim.Bike, pairs int) sim.Scenario {
	sc := sim.DefaultScenario(b)
	sc.Wind.SD = 0.5
	sc.Plan = sim.Pulls(pairs, 4)
	return sc
}

// split is six pairs of pulls of one ride in two curves of three pairs each.
type split struct{ a, b *power.Curve }

// splits makes the curves of the ten ways to split a ride of six pairs.
func splits(t *testing.T, seed uint64) []split {
	ride, result := rideAndResult(t, calmPulls(sim.Naked(), 6), seed)
	if ride == nil {
		return nil
	}
	known := settle(ride.Log)
	load, _ := loadOf(result, ride.Log, known, "")
	bike := power.Bike{Load: load, MassSD: known.ride.MassSD, RotatingMass: known.ride.RotatingMass}
	pulls := pairPulls(pullsOf(result, ride.Log, known.ride))
	curve := func(belongs func(power.Pull) bool) *power.Curve {
		c, err := power.NewCurve(slices.DeleteFunc(slices.Clone(pulls), func(p power.Pull) bool { return !belongs(p) }),
			bike, dayOf(result, known), math.NaN(), math.NaN())
		if err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
		return c
	}
	var out []split
	for second := 2; second < 6; second++ {
		for third := second + 1; third <= 6; third++ {
			first := func(p power.Pull) bool { return slices.Contains([]int{1, second, third}, p.Pair) }
			out = append(out, split{curve(first), curve(func(p power.Pull) bool { return !first(p) })})
		}
	}
	return out
}

// differences counts comparisons.
type differences struct{ n, shown, mean, square, said float64 }

func (d *differences) add(t *testing.T, a, b *power.Curve) {
	if a == nil || b == nil {
		return
	}
	c, err := power.Compare(a, b)
	if err != nil {
		t.Error(err)
		return
	}
	d.n, d.mean = d.n+1, d.mean+c.Mean.X
	d.square, d.said = d.square+c.Mean.X*c.Mean.X, d.said+c.Mean.SE*c.Mean.SE
	if c.Mean.TwoSided(c.DoF) < 0.05 {
		d.shown++
	}
}

// TestPowerDifferenceOfWholeRides compares, from the log, three pairs of pulls
// with three pairs on calm days. For one ride all ten ways to split six pairs
// are used: their differences then agree exactly with the scatter of the pairs,
// unless the curves of three pairs depend on each other.
func TestPowerDifferenceOfWholeRides(t *testing.T) {
	t.Parallel()
	rides := batch.All(20, 2)
	equal := make([][]split, rides)
	parallel(rides, func(i int) { equal[i] = splits(t, uint64(i)+3000) })
	t.Run("equal, one ride", func(t *testing.T) {
		var d differences
		for _, ride := range equal {
			for _, s := range ride {
				d.add(t, s.a, s.b)
			}
		}
		d.equal(t, 0.03, 0.07)
		if ratio := d.square / d.said; ratio < 0.9 || ratio > 1.1 {
			t.Errorf("the differences' variance is %.2f of what was said", ratio)
		}
	})
	t.Run("equal, two rides", func(t *testing.T) {
		var d differences
		for i, x := range equal {
			for _, y := range equal[:i] {
				if x != nil && y != nil {
					d.add(t, x[0].a, y[0].a)
					d.add(t, x[0].a, y[0].b)
					d.add(t, x[0].b, y[0].a)
					d.add(t, x[0].b, y[0].b)
				}
			}
		}
		d.equal(t, 0.02, 0.09)
	})
	t.Run("4 % more engine", func(t *testing.T) { moreEngine(t, equal[:len(equal)/2]) })
}

// equal checks how often curves of the same engine were called different.
func (d *differences) equal(t *testing.T, low, high float64) {
	share := d.shown / d.n
	t.Logf("%.0f comparisons: false alarm in %.1f %%, variance %.2f of what was said", d.n, 100*share, d.square/d.said)
	if !testing.Short() && (share < low || share > high) {
		t.Errorf("false alarm in %.1f %%", 100*share)
	}
}

// moreEngine compares with rides whose engine has 4 % more power, which must be
// seen in nine of ten.
func moreEngine(t *testing.T, equal [][]split) {
	b := sim.Naked()
	for k := range b.Engine.Torque {
		b.Engine.Torque[k].Nm *= 1.04
	}
	stronger := make([]*power.Curve, len(equal))
	parallel(len(equal), func(i int) {
		_, result := rideAndResult(t, calmPulls(b, 3), uint64(i)+500)
		if result != nil && len(result.Powers) == 1 {
			stronger[i] = result.Powers[0].Curve
		}
	})
	var d differences
	for i, s := range equal {
		if s != nil {
			d.add(t, s[0].a, stronger[i])
		}
	}
	t.Logf("%.0f comparisons: seen in %.1f %%, %.2f %% on average", d.n, 100*d.shown/d.n, 100*d.mean/d.n)
	if d.n < 0.9*float64(len(equal)) || d.shown/d.n < 0.9 || math.Abs(d.mean/d.n-0.04) > 0.008 {
		t.Errorf("seen in %.1f %% of %.0f comparisons, as %.2f %% on average", 100*d.shown/d.n, d.n, 100*d.mean/d.n)
	}
}
