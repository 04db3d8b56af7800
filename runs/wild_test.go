package runs

import (
	"context"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// wildness is a way in which receivers go wrong.
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

// TestWildFixes: no launch that never happened, and bands of times that hold,
// or a launch refused.
func TestWildFixes(t *testing.T) {
	t.Parallel()
	rides := seeds(10, 1)
	if n, err := strconv.Atoi(os.Getenv("WILD")); err == nil {
		rides = n
	}
	for _, w := range wildnesses() {
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
