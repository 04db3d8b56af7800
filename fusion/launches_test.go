package fusion_test

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"stillair/fusion"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// sample is one measured quantity: its error and its stated standard error.
type sample struct{ err, se float64 }

// tally collects the errors of one quantity.
type tally []sample

// rms, bias and the 95th percentile of the error's size, in the unit of the
// quantity.
func (s tally) bias() float64 {
	var sum float64
	for _, x := range s {
		sum += x.err
	}
	return sum / float64(len(s))
}

func (s tally) p95() float64 {
	size := make([]float64, len(s))
	for i, x := range s {
		size[i] = math.Abs(x.err)
	}
	slices.Sort(size)
	return size[int(0.95*float64(len(s)))]
}

// normalised is the rms of the errors over their standard errors: 1 where the
// standard errors are true.
func (s tally) normalised() float64 {
	var sum float64
	for _, x := range s {
		sum += x.err * x.err / (x.se * x.se)
	}
	return math.Sqrt(sum / float64(len(s)))
}

// covered is the share of 95 % intervals that hold the truth.
func (s tally) covered() float64 {
	var in float64
	for _, x := range s {
		if math.Abs(x.err) < 1.96*x.se {
			in++
		}
	}
	return in / float64(len(s))
}

// What is measured of each launch.
const (
	hundred  = "0-100 km/h from a known start" // when 100 km/h is crossed
	rolled   = "0-100 km/h from the rollout"
	quarter  = "1/4 mile from the rollout"
	overtake = "80-120 km/h"
	lag      = "lag of the receiver"
)

// measure smooths one ride and adds the results of its launches.
func measure(tr *fusion.Track, truth *sim.Truth, add func(what string, err, se float64)) {
	add(lag, tr.Lag.Seconds-truth.Lag-truth.SmoothTau, tr.Lag.SE)
	for _, d := range truth.Of(sim.KindLaunch) {
		// The track does not contain the first movement; the rollout is counted
		// from the standstill before it.
		still := d.Start - 0.3
		all := fusion.Span{From: still, To: d.End + 2}
		if at, ok := tr.TimeAtSpeed(100*units.KMH, all); ok {
			add(hundred, at.T-truth.TimeAtSpeed(d.Start, 100*units.KMH), at.SE)
			if foot, ok := tr.TimeAtDistance(still, units.Foot, all); ok {
				dt, se := tr.Between(foot, at)
				add(rolled, dt-(truth.TimeAtSpeed(d.Start, 100*units.KMH)-d.Rollout), se)
				if end, ok := tr.TimeAtDistance(still, 1320*units.Foot, all); ok {
					dt, se := tr.Between(foot, end)
					add(quarter, dt-(truth.TimeAtDist(d.Start, 1320*units.Foot)-d.Rollout), se)
				}
			}
		}
		a, ok1 := tr.TimeAtSpeed(80*units.KMH, all)
		b, ok2 := tr.TimeAtSpeed(120*units.KMH, all)
		if ok1 && ok2 {
			dt, se := tr.Between(a, b)
			add(overtake, dt-truth.Through(d, 80*units.KMH, 120*units.KMH), se)
		}
	}
}

// launches simulates and smooths a number of rides of eight launches and collects the
// errors.
func launches(t *testing.T, rides int, change func(*sim.Scenario)) map[string]tally {
	t.Helper()
	out := map[string]tally{}
	var mu sync.Mutex
	var wg sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	for seed := range rides {
		wg.Go(func() {
			free <- struct{}{}
			defer func() { <-free }()
			sc := sim.DefaultScenario(sim.Naked())
			sc.Plan = append(sim.Launches(8, 125*units.KMH, 420), sim.Stand{Seconds: 5})
			change(&sc)
			ride, err := sim.Run(sc, uint64(seed+1))
			if err != nil {
				t.Error(err)
				return
			}
			tr, err := fusion.Smooth(ride.Log, fusion.Options{})
			if err != nil {
				t.Error(err)
				return
			}
			mu.Lock()
			defer mu.Unlock()
			measure(tr, ride.Truth, func(what string, err, se float64) { out[what] = append(out[what], sample{err, se}) })
		})
	}
	wg.Wait()
	return out
}

// TestLaunches measures launches of an invented bike through invented phones
// and receivers against the simulator's truth. The limits are on 95 % of the
// errors, in seconds. Marks of a run may be better than these: package marks
// also uses that the acceleration within one gear is smooth.
func TestLaunches(t *testing.T) {
	filtered := func(sc *sim.Scenario) { sc.Phone.Accel.CutOffHz = 50 }
	cases := []struct {
		name   string
		change func(*sim.Scenario)
		limits map[string]float64
	}{
		{name: "6 m/s² of vibration, sampled without a filter", change: func(*sim.Scenario) {},
			limits: map[string]float64{hundred: 0.07, rolled: 0.07, quarter: 0.04, overtake: 0.11, lag: 0.03}},
		{name: "6 m/s² of vibration, filtered at half the sampling rate", change: filtered,
			limits: map[string]float64{hundred: 0.045, rolled: 0.045, quarter: 0.035, overtake: 0.075, lag: 0.03}},
		{name: "hardly any vibration", change: func(sc *sim.Scenario) { sc.Phone.Shake.RMS = 0.5 },
			limits: map[string]float64{hundred: 0.035, rolled: 0.035, quarter: 0.035, overtake: 0.04, lag: 0.03}},
		{name: "10 Hz fixes", change: func(sc *sim.Scenario) { sc.Receiver.Rate = 10 },
			limits: map[string]float64{hundred: 0.045, rolled: 0.045, quarter: 0.035, overtake: 0.06, lag: 0.03}},
		{name: "18 m/s² of vibration", change: func(sc *sim.Scenario) { sc.Phone.Shake.RMS = 18 },
			limits: map[string]float64{hundred: 0.18, rolled: 0.18, quarter: 0.08, overtake: 0.28, lag: 0.06}},
		{name: "60 Hz motion", change: func(sc *sim.Scenario) { sc.Phone = sim.BrowserPhone() },
			limits: map[string]float64{hundred: 0.10, rolled: 0.12, quarter: 0.07, overtake: 0.2, lag: 0.05}},
		{name: "no gyroscope", change: func(sc *sim.Scenario) { sc.Phone.Gyro.Absent = true },
			limits: map[string]float64{hundred: 0.07, rolled: 0.07, quarter: 0.04, overtake: 0.11, lag: 0.03}},
		{name: "a receiver that smooths", change: func(sc *sim.Scenario) { sc.Receiver.SmoothTau = 0.4 },
			limits: map[string]float64{hundred: 0.075, rolled: 0.075, quarter: 0.045, overtake: 0.115, lag: 0.04}},
		{name: "drop-outs of the receiver", change: func(sc *sim.Scenario) { sc.Receiver.DropsPerHour, sc.Receiver.DropMean = 40, 15 }},
	}
	rides := 26
	if testing.Short() {
		rides, cases = 2, cases[:1]
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := launches(t, rides, c.change)
			for _, what := range []string{hundred, rolled, quarter, overtake, lag} {
				s := got[what]
				if len(s) == 0 {
					t.Fatalf("%s: nothing measured", what)
				}
				t.Logf("%-30s n %3d: bias %+.4f, 95 %% within %.4f s, errors %.2f of what is said, intervals hold %.1f %%",
					what, len(s), s.bias(), s.p95(), s.normalised(), 100*s.covered())
				if testing.Short() {
					continue
				}
				if limit, ok := c.limits[what]; ok && s.p95() > limit {
					t.Errorf("%s: 95 %% within %.4f s, want %.3f", what, s.p95(), limit)
				}
				if math.Abs(s.bias()) > 0.03 {
					t.Errorf("%s: bias %+.4f s", what, s.bias())
				}
				if z := s.normalised(); what != lag && (z < 0.7 || z > 1.25) {
					t.Errorf("%s: errors are %.2f times their standard error", what, z)
				}
			}
		})
	}
}
