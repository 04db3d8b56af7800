package foreign

import (
	"math"
	"testing"

	"stillair/fusion"
	"stillair/runs"
)

// mean is the true speed over a time on the log's clock, m/s.
func (w *world) mean(s fusion.Span) float64 {
	way := func(t float64) float64 {
		x := (t - zero) / pastStep
		i := int(x)
		sum := 0.0
		for k := range i {
			sum += w.past[k].v * pastStep
		}
		return sum + (x-float64(i))*pastStep*w.past[i].v
	}
	return (way(s.To) - way(s.From)) / (s.To - s.From)
}

// tally counts how often something holds.
type tally struct{ held, of int }

func (t *tally) add(v runs.Value, truth float64) {
	t.of++
	if math.Abs(v.X-truth) < 1.96*v.SE {
		t.held++
	}
}

// topSpeed is the machine's top speed in still air on a level road, m/s.
func (w *world) topSpeed() float64 {
	v := 1.0
	for last := len(w.gears) - 1; w.driven(v, 1, last) > density/2*w.cda*v*v+w.rolling(v); {
		v += 0.01
	}
	return v
}

// TestPasses rides there and back flat out over the same road: the pass is found, and
// the bands of speeds, means and half differences have their nominal coverage. The
// mean is the top speed in still air, unlike the single directions.
func TestPasses(t *testing.T) {
	var speeds, means, halves tally
	ridden, found := 0, 0
	var bias, off, oneWay float64
	each(t, many(64), func(w *world) {
		for range 2 {
			w.flatOut(5000)
			w.stopAndTurn(3)
		}
	}, func(seed uint64, w *world, res *runs.Result) {
		ridden++
		if len(res.Passes) == 0 || !res.Passes[0].Accepted() {
			t.Logf("seed %d, %.0f kW, slope %.4f: %+v", seed, w.power/1e3, w.steep, res.Passes)
			return
		}
		found++
		for _, f := range res.Passes[0].Figures {
			there, back := w.mean(f.Times[0]), w.mean(f.Times[1])
			speeds.add(f.There, there)
			speeds.add(f.Back, back)
			means.add(f.Mean, (there+back)/2)
			halves.add(f.Half, (there-back)/2)
			if f.Distance == 200 {
				top := w.topSpeed()
				bias += (f.Mean.X - (there+back)/2) / f.Mean.SE
				off += math.Abs(f.Mean.X/top - 1)
				oneWay += math.Abs(f.There.X/top - 1)
			}
		}
	})
	n := float64(found)
	t.Logf("%d of %d passes; speeds %v, means %v, halves %v; bias %.2f; off by %.2f %%, one way by %.2f %%", found, ridden, speeds, means, halves, bias/n, 100*off/n, 100*oneWay/n)
	if n < 0.9*float64(ridden) {
		t.Errorf("%d of %d passes count", found, ridden)
	}
	for _, h := range []tally{speeds, means, halves} {
		if float64(h.held) < 0.9*float64(h.of) {
			t.Errorf("%d of %d bands of 95 %% hold", h.held, h.of)
		}
	}
	if math.Abs(bias/n) > 0.4+3/math.Sqrt(n) {
		t.Errorf("means are off by %.2f standard errors on average", bias/n)
	}
	if off/n > 0.012 || oneWay/n < off/n {
		t.Errorf("means are off the top speed by %.2f %%, one direction by %.2f %%", 100*off/n, 100*oneWay/n)
	}
}

// TestNoPasses: roads that are ridden there and back without going flat out, coast-downs
// from speed, launches and roll-ons are no flying passes.
func TestNoPasses(t *testing.T) {
	tests := []struct {
		name string
		ride func(w *world)
	}{
		{"commuting", func(w *world) {
			// At a fixed part throttle a bike approaches its speed just as at full
			// throttle, and the two cannot be distinguished: here it could have gone
			// faster.
			share := w.between(0.2, 0.7)
			v := math.Min(w.between(14, 36), 0.8*math.Cbrt(share)*w.top())
			for range 4 {
				w.cruise(share, v*w.between(0.99, 1.01), w.between(800, 3000))
				w.stopAndTurn(2)
			}
		}},
		{"traffic", func(w *world) {
			for range 4 {
				for begun := w.way; w.way-begun < 4000; {
					share := w.between(0.2, 0.7)
					v := math.Min(w.between(14, 36), 0.8*math.Cbrt(share)*w.top())
					w.cruise(share, v*w.between(0.9, 1), w.between(100, 1500))
					if w.rng.IntN(3) == 0 {
						w.brake(w.between(1, 3), v*w.between(0.4, 0.9))
					}
				}
				w.stopAndTurn(2)
			}
		}},
		{"everyday", everyday},
		{"coast-downs", func(w *world) {
			for range 8 {
				w.roll(math.Min(0.7*w.top(), 31), w.between(6, 9))
				w.stopAndTurn(2)
			}
		}},
		{"launches", func(w *world) {
			for range 6 {
				w.start(math.Min(0.85*w.top(), 40), false)
				w.stopAndTurn(3.5)
			}
		}},
		{"roll-ons", func(w *world) {
			for range 6 {
				w.gear = 0
				w.accelerate(0.5, 0.4*w.top())
				w.rollOn(0.4*w.top(), 0.75*w.top())
				w.stopAndTurn(2)
			}
		}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rides, listed, counted := 0, 0, 0
			each(t, many(16), tt.ride, func(seed uint64, w *world, res *runs.Result) {
				rides++
				listed += len(res.Passes)
				for _, p := range res.Passes {
					if p.Accepted() {
						counted++
						t.Logf("seed %d: %.1f m/s, and it goes %.1f", seed, p.Figures[0].Mean.X, w.topSpeed())
					}
				}
			})
			t.Logf("%d rides: %d listed, %d counted", rides, listed, counted)
			if counted > rides/20 {
				t.Errorf("%d passes count in %d rides without any", counted, rides)
			}
		})
	}
}
