package engine

import (
	"errors"
	"maps"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"sync"
	"testing"
)

// pull is an invented full-throttle pull in one gear, sampled at some rate.
type pull struct {
	rate     float64             // samples per second
	rpm      float64             // per m/s
	orders   map[float64]float64 // relative amplitude of each order
	snr      float64             // power of all orders over that of the noise
	speedErr float64             // wandering error of the known speed, m/s
}

// signal draws the pull: speed from 18 to about 38 m/s in 7 s.
func (p pull) signal(rng *rand.Rand) Signal {
	var power float64
	for _, a := range p.orders {
		power += a * a / 2
	}
	noise := math.Sqrt(power / p.snr)
	orders := slices.Sorted(maps.Keys(p.orders)) // sorted, so that a seed always gives the same pull
	phase0 := map[float64]float64{}
	for _, h := range orders {
		phase0[h] = rng.Float64() * 2 * math.Pi
	}
	var sig Signal
	var s, known, wander float64
	dt := 1 / p.rate
	for t := 0.0; t < 7; t += dt {
		v := 18 + 3.6*t - 0.1*t*t
		s += v * dt
		wander += -wander*dt/2 + p.speedErr*math.Sqrt(dt)*rng.NormFloat64()
		known += math.Max(0, v+wander) * dt
		x := noise * rng.NormFloat64()
		for _, h := range orders {
			x += p.orders[h] * math.Cos(2*math.Pi*h*p.rpm/60*s+phase0[h])
		}
		sig.T, sig.X, sig.S = append(sig.T, t), append(sig.X, x), append(sig.S, known)
	}
	return sig
}

// tally simulates n pulls with random ratios and counts the results of Find.
type tally struct{ right, wrong, refused int }

func run(t *testing.T, n int, draw func(*rand.Rand) pull, se Search) tally {
	t.Helper()
	var mu sync.Mutex
	var c tally
	var wg sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wg.Go(func() {
			for i := range next {
				rng := rand.New(rand.NewPCG(uint64(i), 11))
				p := draw(rng)
				r, err := Find(p.signal(rng), se)
				mu.Lock()
				switch {
				case errors.Is(err, ErrNoLock):
					c.refused++
				case err != nil:
					t.Error(err)
				case math.Abs(r.RPMPerMPS.X/p.rpm-1) < 0.005:
					c.right++
				default:
					c.wrong++
					t.Logf("seed %d: %.1f found, %.1f true, strength %.1f", i, r.RPMPerMPS.X, p.rpm, r.Strength)
				}
				mu.Unlock()
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wg.Wait()
	return c
}

func seeds(t *testing.T, full int) int {
	if testing.Short() {
		return full / 50
	}
	t.Parallel()
	return full
}

// TestFindsTheRatio checks the accuracy for an accelerometer at 200 Hz with
// aliased orders, and for sound downsampled to 800 Hz: within 0.5 % in 95 % of
// pulls and never a wrong lock. Engines are invented; that their vibration is
// strongest at orders 1 and 2 is common practice.
func TestFindsTheRatio(t *testing.T) {
	twin := map[float64]float64{0.5: 0.3, 1: 1, 2: 0.8, 3: 0.3}
	tests := []struct {
		name string
		p    pull
	}{
		{"vibration, 200 Hz, +6 dB", pull{rate: 200, orders: twin, snr: 4, speedErr: 0.05}},
		{"sound, 800 Hz, 0 dB", pull{rate: 800, orders: twin, snr: 1, speedErr: 0.05}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n := seeds(t, 200)
			c := run(t, n, func(rng *rand.Rand) pull {
				p := tt.p
				p.rpm = 145 + 85*rng.Float64()
				return p
			}, Search{Lowest: 2500, Highest: 9000})
			t.Logf("%+v", c)
			if c.wrong > 0 || c.right < n*95/100 {
				t.Errorf("of %d pulls %d right, %d wrong, %d refused", n, c.right, c.wrong, c.refused)
			}
		})
	}
}

// TestNeverWrong widens the range until a ratio and its half both fit, and
// makes half orders as strong as whole ones, as uneven firing does. It may then
// refuse, but must never give a wrong ratio.
func TestNeverWrong(t *testing.T) {
	uneven := map[float64]float64{0.5: 1, 1: 1, 1.5: 0.7, 2: 0.4}
	n := seeds(t, 200)
	c := run(t, n, func(rng *rand.Rand) pull {
		return pull{rate: 200, rpm: 110 + 120*rng.Float64(), orders: uneven, snr: 4, speedErr: 0.05}
	}, Search{Lowest: 1500, Highest: 9500})
	t.Logf("%+v", c)
	if c.wrong > 0 {
		t.Errorf("%d wrong locks in %d pulls", c.wrong, n)
	}
}

// TestRefuses checks that pure noise, and an engine outside the given range,
// are refused.
func TestRefuses(t *testing.T) {
	tests := []struct {
		name string
		draw func(*rand.Rand) pull
	}{
		{"noise alone", func(*rand.Rand) pull {
			return pull{rate: 200, rpm: 165, orders: map[float64]float64{1: 1e-3}, snr: 1e-6}
		}},
		{"an engine slower than known", func(*rand.Rand) pull {
			return pull{rate: 200, rpm: 90, orders: map[float64]float64{1: 1, 2: 0.8}, snr: 4}
		}},
		{"buried", func(*rand.Rand) pull {
			return pull{rate: 200, rpm: 165, orders: map[float64]float64{1: 1, 2: 1}, snr: 1e-3}
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n := seeds(t, 200)
			if c := run(t, n, tt.draw, Search{Lowest: 2500, Highest: 9000}); c.refused != n {
				t.Errorf("of %d pulls %d refused, %d right, %d wrong", n, c.refused, c.right, c.wrong)
			}
		})
	}
}

// TestPick checks the choice among the gears of an invented six-speed gearbox,
// for engines with and without an entered number of cylinders. In that gearbox a
// triple in sixth gear sounds like a twin in third, so without the number fewer
// gears are found, but none may be wrong.
func TestPick(t *testing.T) {
	gears := []float64{340, 245, 195, 165, 143, 128}
	orders := map[int]map[float64]float64{
		2: {0.5: 0.3, 1: 1, 2: 0.8},
		3: {1: 0.2, 1.5: 1, 3: 0.7, 4.5: 0.3},
		4: {1: 0.2, 2: 1, 4: 0.7},
	}
	for _, tt := range []struct {
		name             string
		cylinders, known int
		least            int // minimum percentage found
	}{
		{"twin", 2, 2, 90}, {"triple", 3, 3, 90}, {"four", 4, 4, 90},
		{"twin, not known", 2, 0, 50}, {"triple, not known", 3, 0, 30}, {"four, not known", 4, 0, 30},
	} {
		t.Run(tt.name, func(t *testing.T) {
			n := seeds(t, 100)
			right, wrong := 0, 0
			for i := range n {
				rng := rand.New(rand.NewPCG(uint64(i), 12))
				k := 2 + rng.IntN(3)
				p := pull{rate: 200, rpm: gears[k] * (1 + 0.01*rng.NormFloat64()), orders: orders[tt.cylinders], snr: 4, speedErr: 0.05}
				got, err := Pick([]Signal{p.signal(rng)}, gears, tt.known)
				switch {
				case err == nil && got == k:
					right++
				case err == nil:
					wrong++
				}
			}
			t.Logf("of %d pulls %d right, %d wrong", n, right, wrong)
			if testing.Short() && tt.known == 0 {
				tt.least = 0 // no limit for a few
			}
			if wrong > 0 || right < n*tt.least/100 {
				t.Errorf("of %d pulls %d right, %d wrong", n, right, wrong)
			}
		})
	}
}

// TestKinds checks that the search for an engine of known cylinders finds it, and
// that one for any engine never takes a triple for a twin.
func TestKinds(t *testing.T) {
	triple := map[float64]float64{1: 0.15, 1.5: 1, 3: 0.8}
	four := map[float64]float64{1: 0.15, 2: 1, 4: 0.8}
	for _, tt := range []struct {
		name   string
		orders map[float64]float64
		known  int
		least  int // minimum percentage found
	}{
		{"triple", triple, 3, 95}, {"triple, not known", triple, 0, 0},
		{"four", four, 4, 95}, {"four, not known", four, 0, 0},
	} {
		t.Run(tt.name, func(t *testing.T) {
			n := seeds(t, 200)
			se := Kind(tt.known)
			se.Lowest, se.Highest = 1100, 9500
			if tt.known > 0 {
				se.Lowest = 2500
			}
			c := run(t, n, func(rng *rand.Rand) pull {
				return pull{rate: 800, rpm: 145 + 85*rng.Float64(), orders: tt.orders, snr: 4, speedErr: 0.05}
			}, se)
			t.Logf("%+v", c)
			if c.wrong > 0 || c.right < n*tt.least/100 {
				t.Errorf("of %d pulls %d right, %d wrong, %d refused", n, c.right, c.wrong, c.refused)
			}
		})
	}
}

func TestBadInput(t *testing.T) {
	ok := pull{rate: 200, rpm: 165, orders: map[float64]float64{1: 1}, snr: 4}.signal(rand.New(rand.NewPCG(1, 1)))
	tests := []struct {
		name string
		sig  Signal
		se   Search
	}{
		{"no engine limits", ok, Search{}},
		{"limits swapped", ok, Search{Lowest: 9000, Highest: 2000}},
		{"limits too narrow for the speeds", ok, Search{Lowest: 4000, Highest: 4100}},
		{"nothing recorded", Signal{}, Search{Lowest: 1800, Highest: 9000}},
		{"lengths differ", Signal{T: []float64{1, 2}, X: []float64{1}}, Search{Lowest: 1800, Highest: 9000}},
		{"not a number", Signal{T: []float64{1}, X: []float64{math.NaN()}, S: []float64{0}}, Search{Lowest: 1800, Highest: 9000}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if r, err := Find(tt.sig, tt.se); err == nil {
				t.Errorf("gave %+v", r)
			}
		})
	}
}
