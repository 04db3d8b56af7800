package roadload_test

import (
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
	"stillair/sensors/sim/batch"
)

// figure is the statistics of the estimates of one quantity over many seeds;
// everything but the coverage is relative to the truth.
type figure struct{ bias, sd, se, bound, cover float64 }

// tally collects a figure.
type tally struct{ n, sum, square, se2, bound2, hits float64 }

func (t *tally) add(v measure.Value, ci [2]float64, truth, boundVar float64) {
	d := v.X/truth - 1
	t.n++
	t.sum, t.square = t.sum+d, t.square+d*d
	t.se2 += v.SE * v.SE / (truth * truth)
	t.bound2 += boundVar / (truth * truth)
	if ci[0] <= truth && truth <= ci[1] {
		t.hits++
	}
}

// join adds another tally.
func (t *tally) join(o tally) {
	t.n, t.sum, t.square = t.n+o.n, t.sum+o.sum, t.square+o.square
	t.se2, t.bound2, t.hits = t.se2+o.se2, t.bound2+o.bound2, t.hits+o.hits
}

func (t *tally) figure() figure {
	return figure{
		bias: t.sum / t.n, sd: math.Sqrt((t.square - t.sum*t.sum/t.n) / (t.n - 1)),
		se: math.Sqrt(t.se2 / t.n), bound: math.Sqrt(t.bound2 / t.n), cover: t.hits / t.n,
	}
}

// trial is a test to be simulated with many seeds.
type trial struct {
	test     loadtest.Test
	opts     roadload.Options
	rough    float64 // standard deviation of the road's slope; 0: smooth
	noPlaces bool    // fixes without positions
	seed     uint64
}

// ride makes the runs of one seed, with the true noise for the bound.
func (c trial) ride(seed int) ([]roadload.Run, roadload.Options) {
	r := rand.New(rand.NewPCG(uint64(seed), c.seed))
	test := c.test
	if c.rough > 0 {
		test.Road = loadtest.Rough(r, c.rough, 150)
	}
	runs := test.Ride(r)
	for i := range runs {
		if c.noPlaces {
			runs[i].Pos = nil
		}
	}
	truth := c.opts
	truth.Noise = test.Noise
	truth.Noise.RoadSD, truth.Noise.RoadLength = c.rough, 150
	if a := test.Altitude; a.SD > 0 {
		truth.Noise.AltSD, truth.Noise.AltWalk = a.WhiteSD, a.SD*math.Sqrt(2/a.Time)
	}
	return runs, truth
}

// many fits n seeds of a trial on all cores.
func (c trial) many(t *testing.T, n int) (cda, crr tally) {
	t.Helper()
	var lock sync.Mutex
	var all sync.WaitGroup
	next := make(chan int)
	bike := c.test.Bike
	for range runtime.GOMAXPROCS(0) {
		all.Go(func() {
			for seed := range next {
				runs, truth := c.ride(seed)
				e, err := roadload.Fit(runs, c.opts)
				if err != nil {
					t.Errorf("seed %d: %v", seed, err)
					continue
				}
				bound, err := roadload.Bound(runs, []roadload.Design{{CdA: bike.CdA, Crr: bike.Crr}}, truth)
				if err != nil {
					t.Errorf("seed %d: %v", seed, err)
					continue
				}
				l := e.Loads[0]
				lock.Lock()
				cda.add(l.CdA, l.CdACI, bike.CdA, bound.At(0, 0))
				crr.add(l.Crr, l.CrrCI, bike.Crr, bound.At(1, 1))
				lock.Unlock()
			}
		})
	}
	for seed := range n {
		next <- seed
	}
	close(next)
	all.Wait()
	return cda, crr
}

// limits are the limits of a figure.
type limits struct{ cdaBias, crrBias, overBound, low, high float64 }

func (l limits) hold(t *testing.T, cda, crr figure) {
	t.Helper()
	t.Logf("CdA: bias %+.2f %%, sd %.2f %%, se %.2f %%, bound %.2f %%, intervals hold %.1f %%", 100*cda.bias, 100*cda.sd, 100*cda.se, 100*cda.bound, 100*cda.cover)
	t.Logf("Crr: bias %+.2f %%, sd %.2f %%, se %.2f %%, bound %.2f %%, intervals hold %.1f %%", 100*crr.bias, 100*crr.sd, 100*crr.se, 100*crr.bound, 100*crr.cover)
	if math.Abs(cda.bias) > l.cdaBias || math.Abs(crr.bias) > l.crrBias {
		t.Errorf("bias %.4f and %.4f, allowed %.4f and %.4f", cda.bias, crr.bias, l.cdaBias, l.crrBias)
	}
	if cda.sd > l.overBound*cda.bound || crr.sd > l.overBound*crr.bound {
		t.Errorf("sd %.3f and %.3f of the bound, allowed %.2f", cda.sd/cda.bound, crr.sd/crr.bound, l.overBound)
	}
	for _, f := range []figure{cda, crr} {
		if f.cover < l.low || f.cover > l.high {
			t.Errorf("intervals hold %.1f %%, allowed %.0f to %.0f %%", 100*f.cover, 100*l.low, 100*l.high)
		}
	}
}

// loose are the limits for a few seeds: wider by three or four standard
// deviations of chance.
func (l limits) loose(n int) limits {
	root := math.Sqrt(float64(n))
	return limits{l.cdaBias + 3*0.03/root, l.crrBias + 3*0.05/root, l.overBound * (1 + 4/(math.Sqrt2*root)),
		l.low - 4*0.25/root, 1}
}

// run checks a trial with the full number of seeds, or in a short run with a few.
func (c trial) run(t *testing.T, full, short int, l limits) (cda, crr figure) {
	t.Helper()
	n := batch.Size(full, full)
	if testing.Short() {
		n, l = short, l.loose(short)
	}
	a, r := c.many(t, n)
	cda, crr = a.figure(), r.figure()
	l.hold(t, cda, crr)
	return cda, crr
}

// TestSmoothRoad: five opposite pairs from 110 to 30 km/h on a road that is
// known to be smooth reach the bound and their intervals hold, in light wind
// and in calm air, for three bikes.
func TestSmoothRoad(t *testing.T) {
	for i, b := range loadtest.Bikes {
		for _, wind := range []float64{0.5, 1.5} {
			t.Run(b.Name+map[float64]string{0.5: " calm", 1.5: " light wind"}[wind], func(t *testing.T) {
				c := trial{test: loadtest.Default(b, wind), opts: loadtest.KnownSmooth(wind), noPlaces: true, seed: uint64(i)}
				cda, crr := c.run(t, 1000, 6, limits{0.003, 0.01, 1.10, 0.93, 0.97})
				if wind == 1.5 && !testing.Short() && (cda.sd > 0.016 || crr.sd > 0.027) {
					t.Errorf("sd %.4f and %.4f, allowed 0.016 and 0.027", cda.sd, crr.sd)
				}
			})
		}
	}
}

// TestRoadUnknown: if the road is unknown and the fixes have no positions, the
// same smooth road might be a rough one. The intervals allow for that and are a
// little wide.
func TestRoadUnknown(t *testing.T) {
	for i, b := range loadtest.Bikes {
		for _, wind := range []float64{0.5, 1.5} {
			t.Run(b.Name+map[float64]string{0.5: " calm", 1.5: " light wind"}[wind], func(t *testing.T) {
				full := 200
				if i == 0 {
					full = 600 // with 200 the ratio to the bound is uncertain by 5 %, as much as the margin: 1.15 and 1.06 with the same code
				}
				c := trial{test: loadtest.Default(b, wind), opts: loadtest.Known(wind), noPlaces: true, seed: uint64(i)}
				c.run(t, full, 2, limits{0.004, 0.01, 1.15, 0.93, 0.99})
			})
		}
	}
}

// TestGusts: a day twice as gusty as expected, or half, is recognised: the
// intervals hold for every bike, with a margin for few seeds, and for the three
// together. The road is known to be smooth.
func TestGusts(t *testing.T) {
	for _, c := range []struct {
		name   string
		factor float64
	}{{"half", 0.5}, {"twice", 2}} {
		t.Run(c.name, func(t *testing.T) {
			n, l := batch.Size(300, 300), limits{0.005, 0.01, 1.10, 0.92, 0.97}
			if testing.Short() {
				n = 4
				l = l.loose(3 * n)
			}
			var cda, crr tally
			for i, bike := range loadtest.Bikes {
				r := trial{test: loadtest.Default(bike, 1.5), opts: loadtest.KnownSmooth(1.5), noPlaces: true, seed: uint64(10 + i)}
				r.test.Noise.GustSD *= c.factor
				a, b := r.many(t, n)
				for _, one := range []figure{a.figure(), b.figure()} {
					if chance := 2 * 0.22 / math.Sqrt(float64(n)); one.cover < l.low-chance || one.cover > l.high+chance {
						t.Errorf("%s: intervals hold %.1f %%", bike.Name, 100*one.cover)
					}
				}
				cda.join(a)
				crr.join(b)
			}
			l.hold(t, cda.figure(), crr.figure())
		})
	}
}
