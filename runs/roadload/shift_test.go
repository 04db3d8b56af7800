package roadload_test

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
	"stillair/sensors/finding"
)

// windy is a test in which the mean wind may change between the runs of a
// pair.
type windy struct {
	trial
	change func(seed, pair int) float64 // m/s; nil: never
}

// changes is the result of many seeds.
type changes struct {
	cda       tally
	said      float64 // share of rides with a reported change
	elsewhere float64 // pairs with a wrongly reported change, per ride
	dropped   float64 // runs left out, per ride
	z2        float64 // mean square of the error of the second pair's change over its standard error
}

func (c windy) many(t *testing.T, n int) changes {
	t.Helper()
	var out changes
	var lock sync.Mutex
	var all sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for seed := range next {
				one := c.trial
				if c.change != nil {
					one.test.Shift = func(pair int) float64 { return c.change(seed, pair) }
				}
				runs, _ := one.ride(seed)
				e, err := roadload.Fit(runs, c.opts)
				if err != nil {
					t.Errorf("seed %d: %v", seed, err)
					continue
				}
				lock.Lock()
				out.add(c, seed, e, float64(n))
				lock.Unlock()
			}
		})
	}
	for seed := range n {
		next <- seed
	}
	close(next)
	all.Wait()
	return out
}

func (o *changes) add(c windy, seed int, e *roadload.Estimate, n float64) {
	o.cda.add(e.Loads[0].CdA, e.Loads[0].CdACI, c.test.Bike.CdA, 1)
	if finding.Any(e.Notes, "load.wind_changed") {
		o.said += 1 / n
	}
	for i, p := range e.Pairs {
		truth := 0.0
		if c.change != nil {
			truth = c.change(seed, i)
		}
		if p.WindChanged() && truth == 0 {
			o.elsewhere += 1 / n
		}
		if p.Shift.SE > 0 && i == 1 {
			z := (p.Shift.X - truth) / p.Shift.SE
			o.z2 += z * z / n
		}
	}
	for _, r := range e.Runs {
		if !r.Reason.IsZero() {
			o.dropped += 1 / n
		}
	}
}

// TestChangedWind: a mean wind that changes by 2 m/s between the two runs of
// one pair is reported on a calm day, for that pair and with the right size;
// the pair is kept, and the intervals hold. Without a change one is rarely
// reported. If it changes in every pair the intervals hold too.
func TestChangedWind(t *testing.T) {
	inOne := func(size float64) func(int, int) float64 {
		return func(_, pair int) float64 {
			if pair == 1 {
				return size
			}
			return 0
		}
	}
	inAll := func(seed, pair int) float64 {
		return rand.New(rand.NewPCG(uint64(seed), uint64(pair))).NormFloat64()
	}
	for i, c := range []struct {
		name      string
		wind      float64
		change    func(int, int) float64
		low, high float64 // share of rides with a reported change
		cover     float64 // least coverage of CdA
	}{
		{"steady, calm", 0.5, nil, 0, 0.05, 0.92},
		{"steady, light wind", 1.5, nil, 0, 0.05, 0.92},
		{"2 m/s in calm", 0.5, inOne(2), 0.95, 1, 0.91},
		{"−2 m/s in calm", 0.5, inOne(-2), 0.95, 1, 0.91},
		{"1 m/s in calm", 0.5, inOne(1), 0.7, 1, 0.91},
		{"2 m/s in light wind", 1.5, inOne(2), 0.6, 1, 0.91},
		{"1 m/s in every pair", 0.5, inAll, 0, 1, 0.89},
	} {
		t.Run(c.name, func(t *testing.T) {
			n := 150
			if testing.Short() {
				n = 8
				c.low, c.high, c.cover = c.low-0.4, c.high+0.3, c.cover-0.4
			}
			bike := loadtest.Bikes[i%len(loadtest.Bikes)]
			o := windy{trial{test: loadtest.Default(bike, c.wind), opts: loadtest.Known(c.wind), noPlaces: true, seed: uint64(70 + i)}, c.change}.many(t, n)
			f := o.cda.figure()
			t.Logf("%s: said in %.1f %%, of another pair %.3f a ride, %.3f runs left out, error of the change over its se %.2f; CdA bias %+.2f %%, sd %.2f %%, se %.2f %%, intervals hold %.1f %%",
				bike.Name, 100*o.said, o.elsewhere, o.dropped, math.Sqrt(o.z2), 100*f.bias, 100*f.sd, 100*f.se, 100*f.cover)
			if o.said < c.low || o.said > c.high+1e-9 { // shares add up to 1 except for rounding
				t.Errorf("said in %.1f %%, want %.0f to %.0f %%", 100*o.said, 100*c.low, 100*c.high)
			}
			if o.elsewhere > 0.15 || o.dropped > 0.15 {
				t.Errorf("said of another pair %.3f times a ride, %.3f runs left out", o.elsewhere, o.dropped)
			}
			if f.cover < c.cover {
				t.Errorf("intervals hold %.1f %%, want %.0f %% and more", 100*f.cover, 100*c.cover)
			}
		})
	}
}
