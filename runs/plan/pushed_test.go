package plan_test

import (
	"context"
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/plan"
	"stillair/runs/power"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// each calls a function for 0 to n−1 on all cores.
func each(n int, work func(i int)) {
	next := make(chan int)
	var wg sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				work(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wg.Wait()
}

// loadOf is the plan's input for an invented bike.
func loadOf(sc sim.Scenario) effect.Load {
	return effect.Load{CdA: measure.Value{X: sc.Bike.CdA}, Crr: measure.Value{X: sc.Bike.Crr}, K: sc.Bike.CrrSlope,
		Mass: sc.Bike.Mass, Density: sc.Air.Density, Gravity: sc.Road.Gravity}
}

// timed is a test of launches or roll-ons with an invented bike, ridden A B B A;
// B is heavier, which makes it slower.
type timed struct {
	push   plan.Push
	mark   string
	pairs  int       // for each setup
	wind   float64   // m/s
	mass   float64   // ratio of B's to A's
	varies float64   // standard deviation of the weight of repeats, as a share of A's mass
	rides  int       // number of simulated tests
	acts   []sim.Act // of one repeat
	truth  func(*sim.Truth, sim.Event) float64
}

// scenario is a ride of the test. Differences between repeats are simulated as
// weight added and removed under the same setup name.
func (c timed) scenario(seed uint64) sim.Scenario {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Wind.SD = c.wind
	sc.Bike.LiftAccel = 12 // never reached, so that weight matters at all speeds
	rng := rand.New(rand.NewPCG(seed, 31))
	put := func(name string, mass float64, pairs int) {
		for i := range 2 * pairs {
			m := (mass + c.varies*rng.NormFloat64()) * sc.Bike.Mass
			sc.Plan = append(sc.Plan, sim.Change{Setup: sim.Setup{Name: name, Mass: m}, Seconds: 6})
			if i%2 == 0 {
				sc.Plan = append(sc.Plan, sim.NewWind{})
			}
			sc.Plan = append(sc.Plan, c.acts...)
		}
	}
	put("A", 1, c.pairs/2)
	put("B", c.mass, c.pairs)
	put("A", 1, c.pairs/2)
	return sc
}

// seen simulates the test and returns whether the comparison calls a difference.
func (c timed) seen(t *testing.T, seed uint64) bool {
	ride, err := sim.Run(c.scenario(seed), seed)
	if err != nil {
		t.Error(err)
		return false
	}
	res, err := runs.Analyse(context.Background(), ride.Log, runs.Options{})
	if err != nil {
		t.Error(err)
		return false
	}
	for _, cmp := range res.Compared {
		for _, x := range cmp.Times {
			if x.Mark == c.mark {
				return x.Verdict.Finding == compare.Differs
			}
		}
	}
	return false
}

func launched(truth *sim.Truth, d sim.Event) float64 {
	for _, m := range truth.Marks(d) {
		if m.Name == "0-100 km/h" {
			return m.Rollout
		}
	}
	return math.NaN()
}

func rolledOn(truth *sim.Truth, d sim.Event) float64 {
	return truth.Through(d, 80*units.KMH, 120*units.KMH)
}

// still is the bike's true mean in A and B, and the spread of its rider's
// repeats, without wind.
func (c timed) still(t *testing.T) (a, b, spread float64) {
	c.wind = 0
	alike := c
	alike.varies = 0
	of := alike.truths(t, 2)
	a, _ = meanAndSD(of["A"])
	b, _ = meanAndSD(of["B"])
	n := uint64(30)
	if testing.Short() {
		n = 3
	}
	of = c.truths(t, n)
	_, sa := meanAndSD(of["A"])
	_, sb := meanAndSD(of["B"])
	return a, b, math.Sqrt((sa*sa + sb*sb) / 2)
}

// truths are the true times of some rides by setup.
func (c timed) truths(t *testing.T, rides uint64) map[string][]float64 {
	of := map[string][]float64{}
	for seed := range rides {
		ride, err := sim.Run(c.scenario(seed+900), seed+900)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range ride.Truth.Events {
			if d.Kind == sim.KindLaunch || d.Kind == sim.KindRollOn {
				of[d.Setup] = append(of[d.Setup], c.truth(ride.Truth, d))
			}
		}
	}
	return of
}

func meanAndSD(x []float64) (mean, sd float64) {
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		sd += (v - mean) * (v - mean) / float64(len(x)-1)
	}
	return mean, math.Sqrt(sd)
}

// TestPlannedTimes compares the planned chance for launches and roll-ons with
// simulated tests, from the log of a phone to the verdict.
func TestPlannedTimes(t *testing.T) {
	if !testing.Short() {
		t.Parallel()
	}
	more, few := batch.All(120, 2), batch.All(80, 2)
	launch := sim.Launches(1, 115*units.KMH, 0)
	rollOn := sim.RollOns(1, 0, 75*units.KMH, 125*units.KMH)
	cases := []timed{
		{push: plan.Launches, mark: "0-100 km/h", rides: more, pairs: 2, wind: 1.5, mass: 1.06, varies: 0.03, acts: launch, truth: launched},
		{push: plan.Launches, mark: "0-100 km/h", rides: more, pairs: 4, wind: 1.5, mass: 1.03, varies: 0.02, acts: launch, truth: launched},
		{push: plan.RollOns, mark: "80-120 km/h", rides: few, pairs: 4, wind: 1, mass: 1.045, varies: 0.01, acts: rollOn, truth: rolledOn},
	}
	if testing.Short() {
		cases = cases[2:]
	} else { // a chance needs all rides, so fewer seeds mean fewer cases
		cases = cases[:batch.Size(len(cases), len(cases))]
	}
	for _, c := range cases {
		a, b, spread := c.still(t)
		sc := c.scenario(0)
		k := plan.DefaultPush(c.push, loadOf(sc), c.wind)
		k.Takes, k.Spread, k.GradeSD, k.Grip = a, spread, 0, 12
		p, err := plan.MakePush(plan.PushQuestion{Push: c.push, Mark: c.mark, Setups: 2, Change: b - a, Chance: 0.999, MaxPair: c.pairs}, k)
		if err != nil {
			t.Fatal(err)
		}
		seen := make([]float64, c.rides)
		each(c.rides, func(i int) {
			if c.seen(t, uint64(i)) {
				seen[i] = 1
			}
		})
		got, _ := meanAndSD(seen)
		t.Logf("%d pairs of %s, wind %.1f m/s: %.2f s and %.2f s, repeats differ by %.3f s: planned %.0f %% (± %.3f s), simulated %.0f %%",
			p.Pairs, c.push, c.wind, a, b, spread, 100*p.Chance, p.SE, 100*got)
		if !testing.Short() && math.Abs(got-p.Chance) > 0.08 {
			t.Errorf("planned %.1f %%, simulated %.1f %%", 100*p.Chance, 100*got)
		}
	}
}

// TestPlannedPower does the same for pulls: curves of rides with an unchanged
// engine are compared with those of rides with a stronger one.
func TestPlannedPower(t *testing.T) {
	if !testing.Short() {
		t.Parallel()
	}
	n := batch.All(20, 2)
	for _, c := range []struct {
		pairs  int
		wind   float64
		change float64
	}{{2, 1.5, 0.03}, {2, 0.5, 0.015}} {
		var of [2][]*power.Curve
		for k := range of {
			of[k] = make([]*power.Curve, n)
			each(n, func(i int) { of[k][i] = pulled(t, c.pairs, c.wind, c.change*float64(k), uint64(2*i+k)+500) })
		}
		var count, seen float64
		for i := range n {
			for j := range n {
				if a, b := of[0][i], of[1][j]; a != nil && b != nil {
					d, err := power.Compare(a, b)
					if err != nil {
						t.Fatal(err)
					}
					count++
					if d.Mean.TwoSided(d.DoF) < 0.05 {
						seen++
					}
				}
			}
		}
		sc := sim.DefaultScenario(sim.Naked())
		k := plan.DefaultPush(plan.Pulls, loadOf(sc), c.wind)
		k.FromMPS, k.ToMPS, k.Power, k.Spread, k.GradeSD = 12, 46, 50e3, 0, 0.005
		p, err := plan.MakePush(plan.PushQuestion{Push: plan.Pulls, Setups: 2, Change: c.change, Chance: 0.999, MaxPair: c.pairs}, k)
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("%d pairs of pulls, wind %.1f m/s, %.0f %% more engine: planned %.0f %% (± %.2f %%), simulated %.0f %% of %.0f",
			p.Pairs, c.wind, 100*c.change, 100*p.Chance, 100*p.SE, 100*seen/count, count)
		if !testing.Short() && math.Abs(seen/count-p.Chance) > 0.08 {
			t.Errorf("planned %.1f %%, simulated %.1f %%", 100*p.Chance, 100*seen/count)
		}
	}
}

// pulled is the power curve of a ride of pulls in fourth gear, nil if there is
// none.
func pulled(t *testing.T, pairs int, wind, more float64, seed uint64) *power.Curve {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Wind.SD = wind
	for k := range sc.Bike.Engine.Torque {
		sc.Bike.Engine.Torque[k].Nm *= 1 + more
	}
	for range pairs {
		sc.Plan = append(append(sc.Plan, sim.NewWind{}), sim.Pulls(1, 4)...)
	}
	ride, err := sim.Run(sc, seed)
	if err != nil {
		t.Error(err)
		return nil
	}
	res, err := runs.Analyse(context.Background(), ride.Log, runs.Options{})
	if err != nil || len(res.Powers) != 1 {
		return nil
	}
	return res.Powers[0].Curve
}
