package foreign

import (
	"context"
	"flag"
	"math"
	"testing"

	"stillair/runs"
)

var (
	rides = flag.Int("rides", 4, "how many rides of each kind")
	first = flag.Uint64("first", 1001, "seed of the first")
)

// few is the number of rides set by the flag.
func few() int { return many(0) }

// many is a number of rides, or more if set by the flag; fewer in short tests.
func many(n int) int {
	if testing.Short() {
		return 2
	}
	return max(*rides, n)
}

// each simulates and analyses a number of rides.
func each(t *testing.T, n int, ride func(w *world), judge func(seed uint64, w *world, res *runs.Result)) {
	t.Helper()
	for seed := *first; seed < *first+uint64(n); seed++ {
		w := newWorld(seed)
		w.stand(15)
		ride(w)
		w.end()
		res, err := runs.Analyse(context.Background(), w.log(), runs.Options{})
		if err != nil {
			t.Errorf("seed %d, %.0f readings a second: %v", seed, w.phone.rate, err)
			continue
		}
		judge(seed, w, res)
	}
}

// covered is the accepted run for an event; nil: none. In one gear a roll-on is also
// a pull.
func (d event) covered(res *runs.Result) *runs.Run {
	for i := range res.Runs {
		r := &res.Runs[i]
		from, to := r.Start-zero, r.End-zero
		common := math.Min(to, d.to) - math.Max(from, d.from)
		if r.Accepted() && (string(r.Kind) == d.kind || d.kind == "roll-on" && r.Kind == runs.Pull) && common > 0.3*(d.to-d.from) && common > 0.5*(to-from) {
			return r
		}
	}
	return nil
}

// found counts the events of a ride, and those in its results.
func (w *world) found(res *runs.Result) (found, ridden int) {
	for _, d := range w.events {
		if d.kind == "" {
			continue
		}
		ridden++
		if d.covered(res) != nil {
			found++
		}
	}
	return found, ridden
}

// TestCoastDays: coast-downs there and back are found, and the bands of drag area and
// rolling resistance contain the machine's values.
func TestCoastDays(t *testing.T) {
	ridden, found, held, loads := 0, 0, 0, 0
	each(t, few(), func(w *world) {
		for range 8 {
			w.roll(math.Min(0.7*w.top(), 31), w.between(6, 9))
			w.stopAndTurn(2)
		}
	}, func(seed uint64, w *world, res *runs.Result) {
		f, n := w.found(res)
		found, ridden = found+f, ridden+n
		for _, l := range res.RoadLoads {
			loads++
			if l.CdACI[0] < w.cda && w.cda < l.CdACI[1] && l.CrrCI[0] < w.crr && w.crr < l.CrrCI[1] {
				held++
			}
			t.Logf("seed %d: CdA %.3f (%.3f to %.3f) of %.3f, Crr %.4f (%.4f to %.4f) of %.4f", seed, l.CdA.X, l.CdACI[0], l.CdACI[1], w.cda, l.Crr.X, l.CrrCI[0], l.CrrCI[1], w.crr)
		}
	})
	t.Logf("%d of %d coast-downs found; of %d road loads both bands hold in %d", found, ridden, loads, held)
	if float64(found) < 0.97*float64(ridden) || float64(held) < 0.9*float64(loads)-1 || loads == 0 {
		t.Errorf("%d of %d coast-downs found; of %d road loads both bands hold in %d", found, ridden, loads, held)
	}
}

// launchTally counts the launches ridden and found, their times after one foot, and those
// whose band of 95 % holds.
type launchTally struct{ ridden, found, times, held int }

// add counts the launches of a ride and calls more with each that was found. No time may
// be off by five standard errors.
func (n *launchTally) add(t *testing.T, seed uint64, w *world, res *runs.Result, more func(d event, r *runs.Run)) {
	t.Helper()
	for _, d := range w.events {
		n.ridden++
		r := d.covered(res)
		if r == nil {
			continue
		}
		n.found++
		more(d, r)
		for _, m := range r.Marks {
			at := d.passed[m.Name]
			if at == 0 {
				continue
			}
			n.times++
			z := (m.Rollout.X - (at - d.rolled)) / m.Rollout.SE
			if math.Abs(z) < 1.96 {
				n.held++
			}
			if math.Abs(z) > 5 {
				t.Errorf("seed %d: %s %.3f ± %.3f s after one foot, in truth %.3f", seed, m.Name, m.Rollout.X, m.Rollout.SE, at-d.rolled)
			}
		}
	}
}

// judge fails if too few launches are found, or too few bands hold.
func (n *launchTally) judge(t *testing.T) {
	t.Helper()
	t.Logf("%d of %d launches found; of %d times after one foot %d held", n.found, n.ridden, n.times, n.held)
	if float64(n.found) < 0.97*float64(n.ridden) || float64(n.held) < 0.88*float64(n.times) {
		t.Errorf("%d of %d launches found; of %d times after one foot %d held", n.found, n.ridden, n.times, n.held)
	}
}

// TestLaunches: launches with five kinds of clutch engagement, a third of them out
// of a creep, are found, and none of their times is off by five standard errors.
func TestLaunches(t *testing.T) {
	var n launchTally
	each(t, few(), func(w *world) {
		for i := range 6 {
			w.start(math.Min(0.85*w.top(), 40), i%3 == 2)
			w.stopAndTurn(3.5)
			w.accelerate(0.4, 12)
			w.brake(2.5, 0)
		}
	}, func(seed uint64, w *world, res *runs.Result) { n.add(t, seed, w, res, func(event, *runs.Run) {}) })
	n.judge(t)
}

// TestEngineBraking: roll-ons with the throttle closed in gear in between are found,
// and give no road load.
func TestEngineBraking(t *testing.T) {
	ridden, found := 0, 0
	each(t, few(), func(w *world) {
		for range 6 {
			w.gear = 0
			w.accelerate(0.5, 0.4*w.top())
			w.rollOn(0.4*w.top(), 0.75*w.top())
			w.letGo(len(w.gears)-1, 0.35*w.top())
			w.stopAndTurn(2)
		}
	}, func(seed uint64, w *world, res *runs.Result) {
		f, n := w.found(res)
		found, ridden = found+f, ridden+n
		for _, l := range res.RoadLoads {
			t.Errorf("seed %d, %.0f kW: CdA %.3f and Crr %.4f, and nobody rolled freely", seed, w.power/1e3, l.CdA.X, l.Crr.X)
		}
	})
	t.Logf("%d of %d roll-ons found", found, ridden)
	if float64(found) < 0.97*float64(ridden) {
		t.Errorf("%d of %d roll-ons found", found, ridden)
	}
}

// TestEveryday: town and country at part throttle give no road load.
func TestEveryday(t *testing.T) {
	each(t, few(), everyday, func(seed uint64, w *world, res *runs.Result) {
		for _, l := range res.RoadLoads {
			t.Errorf("seed %d, %.0f kW: CdA %.3f and Crr %.4f, and nobody rolled freely", seed, w.power/1e3, l.CdA.X, l.Crr.X)
		}
	})
}

func everyday(w *world) {
	for range 12 {
		v := math.Min(w.between(8, 28), 0.7*w.top())
		w.gear = 0
		w.accelerate(w.between(0.15, 0.5), v)
		w.hold(v, w.between(4, 25))
		if w.rng.IntN(2) == 0 {
			w.yaw = w.between(-0.15, 0.15) * 8 / math.Max(8, w.v)
			w.hold(v, w.between(2, 6))
			w.yaw = 0
		}
		low := w.v * w.between(0.3, 0.7)
		switch w.rng.IntN(3) {
		case 0:
			w.letGo(w.gearFor(w.v), low)
		case 1:
			w.brake(w.between(0.8, 3), low)
		default:
			w.letGo(w.gearFor(w.v), low)
			w.brake(w.between(1, 3), 0)
			w.stand(w.between(3, 15))
		}
	}
}
