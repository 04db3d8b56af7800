package runs

import (
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

var wildRides = flag.Int("wild", 0, "rides of each case of TestWildFixes, where more than usual")

// wildness is a kind of receiver fault.
type wildness struct {
	name  string
	spoil func(log *sensors.Log, truth *sim.Truth, rng *rand.Rand)
}

func wildnesses() []wildness {
	oneEach := func(least, most float64) func(*sensors.Log, *sim.Truth, *rand.Rand) {
		return func(log *sensors.Log, truth *sim.Truth, rng *rand.Rand) {
			for _, d := range truth.Of(sim.KindLaunch) {
				at := d.Start + 1 + 3.5*rng.Float64() + truth.Lag
				best := 0
				for i, f := range log.Fixes {
					if math.Abs(f.T-at) < math.Abs(log.Fixes[best].T-at) {
						best = i
					}
				}
				by := least + (most-least)*rng.Float64()
				if rng.IntN(2) == 0 {
					by = -by
				}
				log.Fixes[best].Speed = math.Max(0, log.Fixes[best].Speed+by)
			}
		}
	}
	return []wildness{
		{"as it comes", func(*sensors.Log, *sim.Truth, *rand.Rand) {}},
		{"one fix off by 3 to 5 m/s in each launch", oneEach(3, 5)},
		{"one fix off by 5 to 10 m/s in each launch", oneEach(5, 10)},
		{"one fix in 20 wild, sd 15 m/s", func(log *sensors.Log, _ *sim.Truth, rng *rand.Rand) {
			for i := range log.Fixes {
				if rng.IntN(20) == 0 {
					log.Fixes[i].Speed = math.Abs(log.Fixes[i].Speed + 15*rng.NormFloat64())
				}
			}
		}},
		{"three old fixes at the start, begun while riding", func(log *sensors.Log, truth *sim.Truth, rng *rand.Rand) {
			from := truth.Of(sim.KindLaunch)[0].Start + 4
			begin := 0
			for log.Fixes[begin].T < from {
				begin++
			}
			log.Fixes = log.Fixes[begin:]
			for i := range 3 {
				log.Fixes[i].Speed = 0
			}
			for log.Motion[0].T < from {
				log.Motion = log.Motion[1:]
			}
		}},
		{"the speed stands at 0 for three fixes on the way, then jumps", func(log *sensors.Log, _ *sim.Truth, rng *rand.Rand) {
			for range 3 {
				at := rng.IntN(len(log.Fixes) - 3)
				for i := at; i < at+3; i++ {
					log.Fixes[i].Speed = 0
				}
			}
		}},
	}
}

// TestWildFixes: no false launch, and bands of times that hold, or a rejected
// launch.
func TestWildFixes(t *testing.T) {
	t.Parallel()
	rides := max(batch.Size(5, 1), *wildRides)
	cases := wildnesses()
	if testing.Short() {
		cases = []wildness{cases[1], cases[3]}
	}
	for _, w := range cases {
		errs := newErrors()
		kept, all, missed, lies := 0, 0, 0, 0
		parallel(rides, func(i int) {
			sc := sim.DefaultScenario(sim.Bikes()[i%len(sim.Bikes())])
			sc.Plan = append(sim.Launches(4, 110*units.KMH, 300), sim.Stand{Seconds: 5})
			ride, err := sim.Run(sc, fresh+uint64(i))
			if err != nil {
				t.Error(err)
				return
			}
			w.spoil(ride.Log, ride.Truth, rand.New(rand.NewPCG(uint64(i), 7)))
			result, err := Analyse(context.Background(), ride.Log, Options{})
			if err != nil {
				t.Errorf("seed %d: %v", i, err)
				return
			}
			errs.mu.Lock()
			defer errs.mu.Unlock()
			for _, r := range result.Runs {
				if r.Kind != Launch || !r.Accepted() {
					continue
				}
				real := false
				for _, d := range ride.Truth.Of(sim.KindLaunch) {
					real = real || math.Abs(r.Start-d.Start) < 1
				}
				if !real {
					lies++
					t.Errorf("%s, seed %d: a launch at %.2f s that never happened: %+v", w.name, i, r.Start, r.Marks[:1])
				}
			}
			for _, d := range ride.Truth.Of(sim.KindLaunch) {
				if d.Start < ride.Log.Begin() {
					continue
				}
				all++
				run, ok := launchAt(result, d.Start)
				switch {
				case !ok:
					missed++
				case run.Accepted():
					kept++
					errs.mu.Unlock()
					addMarks(errs, ride.Truth, d, run)
					errs.mu.Lock()
				}
			}
		})
		t.Logf("%s: %d of %d launches kept, %d not found, %d lies", w.name, kept, all, missed, lies)
		for _, mark := range []string{"0-60 km/h from the rollout", "0-100 km/h from the rollout", "0-100 km/h from first movement", "80-120 km/h"} {
			if len(errs.of[mark]) < 2 {
				continue
			}
			s := errs.spread(mark)
			t.Logf("    %s: %v", mark, s)
			if s.coveredLess(0.92) {
				t.Errorf("%s, %s: %v", w.name, mark, s)
			}
		}
	}
}

// TestJoinedRecordings: two recordings in one file, the second begun while riding,
// and an accelerometer with almost no signal, give no launch.
func TestJoinedRecordings(t *testing.T) {
	for seed := range uint64(batch.Size(3, 1)) {
		sc := sim.DefaultScenario(sim.Bikes()[seed%3])
		sc.Plan = append(sim.Launches(3, 110*units.KMH, 300), sim.Stand{Seconds: 5})
		for _, gap := range []float64{0.01, 1, 5} {
			ride, err := sim.Run(sc, fresh+seed)
			if err != nil {
				t.Fatal(err)
			}
			last := ride.Truth.Of(sim.KindLaunch)[2].Start
			from := last - 1
			log := ride.Log
			log.Motion = joined(log.Motion, from, gap, func(m *sensors.Motion) *float64 { return &m.T })
			log.Fixes = joined(log.Fixes, from+0.2, gap, func(f *sensors.Fix) *float64 { return &f.T })
			noLaunch(t, log, from-5, fmt.Sprintf("seed %d, joined with a gap of %.2f s", seed, gap))
		}
		ride, err := sim.Run(sc, fresh+seed)
		if err != nil {
			t.Fatal(err)
		}
		for i := range ride.Log.Motion {
			ride.Log.Motion[i].Force = r3.Scale(0.02, ride.Log.Motion[i].Force)
		}
		noLaunch(t, ride.Log, 0, fmt.Sprintf("seed %d, a dead accelerometer", seed))
	}
}

// joined removes five seconds from a time on and shifts what follows forward,
// except for a gap.
func joined[S any](all []S, from, gap float64, at func(*S) *float64) []S {
	const cut = 5.0
	out := make([]S, 0, len(all))
	for _, x := range all {
		t := at(&x)
		switch {
		case *t >= from && *t < from+cut:
			continue
		case *t >= from+cut:
			*t -= cut - gap
		}
		out = append(out, x)
	}
	return out
}

// noLaunch checks that there is no accepted launch after a time.
func noLaunch(t *testing.T, log *sensors.Log, after float64, what string) {
	t.Helper()
	result, err := Analyse(context.Background(), log, Options{})
	if err != nil {
		t.Errorf("%s: %v", what, err)
		return
	}
	for _, r := range result.Runs {
		if r.Kind == Launch && r.Start > after && r.Accepted() {
			t.Errorf("%s: a launch at %.2f s that never happened: %+v", what, r.Start, r.Marks)
		}
	}
}
