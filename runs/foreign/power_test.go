package foreign

import (
	"math"
	"slices"
	"testing"

	"stillair/runs"
	"stillair/runs/compare"
)

// coastPairs are coast-downs there and back.
func (w *world) coastPairs(n int) {
	for range 2 * n {
		w.roll(math.Min(0.7*w.top(), 31), w.between(6, 9))
		w.stopAndTurn(2)
	}
}

// pulls are, in any order, pulls at full throttle in two gears, each there and
// back, and as many accelerations at part throttle in the same gears.
func (w *world) pulls() {
	type what struct {
		gear           int
		from, to, part float64
	}
	var all []what
	for _, gear := range []int{len(w.gears) - 3, len(w.gears) - 2} {
		limit := w.limitRPM / w.gears[gear]
		low, high := w.between(0.3, 0.4)*limit, w.between(0.88, 0.97)*math.Min(limit, 44)
		all = append(all, what{gear, low, high, 1}, what{gear, low, w.between(0.85, 1) * high, 1}, what{gear, low, 0.85 * high, w.between(0.35, 0.75)})
	}
	w.rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	for _, p := range all {
		for range 2 {
			w.gear = 0
			w.accelerate(0.5, p.from)
			w.pull(p.gear, p.from, p.to, p.part)
			w.stopAndTurn(2.5)
		}
	}
}

// during is the rider's action during most of a run; the zero event if none was
// recorded.
func (w *world) during(r runs.Run) event {
	for _, d := range w.events {
		if math.Min(r.End-zero, d.to)-math.Max(r.Start-zero, d.from) > 0.6*(r.End-r.Start) {
			return d
		}
	}
	return event{}
}

// untrue are the accepted runs of some kinds that the rider did not ride.
func (w *world) untrue(res *runs.Result, kinds ...runs.Kind) (n int) {
	for _, r := range res.Runs {
		if slices.Contains(kinds, r.Kind) && r.Accepted() && w.during(r).kind == "" {
			n++
		}
	}
	return n
}

// peaks collects the errors of the highest points of curves.
type peaks struct {
	n, held, mixed int
	sum, squares   float64
}

func (p *peaks) add(t *testing.T, seed uint64, w *world, res *runs.Result) {
	for _, c := range res.Powers {
		first := w.during(res.Runs[c.Curve.Pulls[0]-1])
		if slices.ContainsFunc(c.Curve.Pulls, func(id int) bool {
			d := w.during(res.Runs[id-1])
			return d.kind == "" || d.gear != first.gear
		}) {
			p.mixed++
			t.Logf("seed %d, %.0f kW: part throttle or two gears in the curve of pulls %v", seed, w.power/1e3, c.Curve.Pulls)
			continue
		}
		want := 0.0
		for _, v := range c.Curve.Speed {
			want = math.Max(want, w.driven(v, 1, first.gear)*v)
		}
		_, top, _ := c.Curve.Peak()
		off, se := top.X/want-1, top.SE/want
		p.n++
		p.sum, p.squares = p.sum+off, p.squares+off*off
		if math.Abs(off) < 1.96*se {
			p.held++
		}
		if math.Abs(off) > 5*se {
			t.Errorf("seed %d, %.0f kW: peak %.2f ± %.2f kW, in truth %.2f", seed, w.power/1e3, top.X/1e3, top.SE/1e3, want/1e3)
		}
	}
}

// TestPullDays: a rider who entered no gear pulls in two, with part throttle between
// them. The highest power of each curve agrees with the engine's, and nothing at part
// throttle counts as a run.
func TestPullDays(t *testing.T) {
	ridden, found, rode, clean := 0, 0, 0, 0
	var p peaks
	each(t, few(), func(w *world) {
		w.coastPairs(3)
		w.pulls()
	}, func(seed uint64, w *world, res *runs.Result) {
		f, n := w.found(res)
		found, ridden, rode = found+f, ridden+n, rode+1
		if part := w.untrue(res, runs.Pull, runs.RollOn); part == 0 {
			clean++
		} else {
			t.Logf("seed %d, %.0f kW: %d runs at part throttle", seed, w.power/1e3, part)
		}
		p.add(t, seed, w, res)
	})
	n := float64(p.n)
	t.Logf("%d of %d runs found, %d of %d rides without one at part throttle; %d curves, %d of them mixed; peak %+.2f %% off in the mean, sd %.2f %%, %d held",
		found, ridden, clean, rode, p.n+p.mixed, p.mixed, 100*p.sum/n, 100*math.Sqrt(p.squares/n), p.held)
	if p.n == 0 || math.Abs(p.sum/n) > 0.01+2*math.Sqrt(p.squares)/n || float64(p.held) < 0.9*n-1-math.Sqrt(0.09*n) {
		t.Errorf("of %d curves %d held, %+.2f %% off in the mean", p.n, p.held, 100*p.sum/n)
	}
}

// changed is a ride with three pulls there and three back in one gear with each of two
// setups, of which the second has more power by a given share, and part throttle with
// both. It returns the increase at the road, which is smaller if the tyres slip.
func (w *world) changes(more float64) float64 {
	gear := len(w.gears) - 2
	limit := w.limitRPM / w.gears[gear]
	low, high := 0.33*limit, 0.93*math.Min(limit, 44)
	power := [2]float64{}
	for k, name := range []string{"before", "after"} {
		w.becomes(name)
		if k == 0 {
			w.coastPairs(3)
		} else {
			w.power *= 1 + more
		}
		for v := low; v < high; v += 0.1 {
			power[k] += w.driven(v, 1, gear) * v
		}
		for range 6 {
			w.gear = 0
			w.accelerate(0.5, low)
			w.pull(gear, low, high, 1)
			w.stopAndTurn(2.5)
		}
		w.gear = 0
		w.accelerate(0.5, low)
		w.pull(gear, low, 0.9*high, w.between(0.4, 0.75))
		w.stopAndTurn(2.5)
	}
	return power[1]/power[0] - 1
}

// TestStronger: an increase of 4 % in power after a change is found, and none if
// there is none.
func TestStronger(t *testing.T) {
	for _, tt := range []struct {
		name string
		more float64
	}{
		{"as much", 0},
		{"4 % more", 0.04},
	} {
		t.Run(tt.name, func(t *testing.T) {
			rode, compared, held, seen, strong, more := 0, 0, 0, 0, 0, 0.0
			each(t, few(), func(w *world) { more = w.changes(tt.more) }, func(seed uint64, w *world, res *runs.Result) {
				rode++
				if more > 0.9*tt.more {
					strong++
				}
				for _, c := range res.Compared {
					if c.Power == nil {
						continue
					}
					compared++
					if c.Power.CI[0] < more && more < c.Power.CI[1] {
						held++
					}
					if c.Power.Finding == compare.Differs && (tt.more == 0 || more > 0.9*tt.more) {
						seen++
					}
					t.Logf("seed %d, %.0f kW: %+.2f %% (%.2f to %.2f), in truth %.2f", seed, w.power/1e3, 100*c.Power.Delta.X, 100*c.Power.CI[0], 100*c.Power.CI[1], 100*more)
				}
			})
			n := float64(rode)
			if tt.more > 0 {
				n = float64(strong)
			}
			slack := 1 + math.Sqrt(0.16*n) // one standard deviation of a count of a fifth, and one
			t.Logf("of %d rides %d compared, the band holds in %d, a difference is seen in %d", rode, compared, held, seen)
			switch {
			case float64(held) < 0.9*float64(compared)-slack, tt.more > 0 && float64(seen) < 0.8*n-slack, tt.more == 0 && float64(seen) > 0.07*n+slack:
				t.Errorf("of %d rides %d compared, the band holds in %d, a difference is seen in %d", rode, compared, held, seen)
			}
		})
	}
}
