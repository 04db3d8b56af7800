package plan

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/runs/measure"
)

// TestRollOnByHand is textbook mechanics: under a steady force F, with hardly any
// drag, a roll-on takes M·Δv/F. A head wind w adds ρ·CdA·v·w to the resistance,
// so it costs ∫ρ·CdA·v·w dt/F = ρ·CdA·w·s/F with s the distance between the
// speeds, and a slope θ costs m·g·θ·Δt/F.
func TestRollOnByHand(t *testing.T) {
	l := effect.Load{CdA: measure.Value{X: 0.01}, Mass: 300, Density: 1.2, Gravity: 9.81}
	c := DefaultPush(RollOns, l, 2)
	c.FromMPS, c.ToMPS, c.Power, c.RotatingMass, c.GradeSD = 20, 30, 60e3, 10, 0
	force := 60e3 / 2 / 30.0
	q := PushQuestion{Push: RollOns, Setups: 2, Change: 0.2}
	p, err := q.push(c)
	if err != nil {
		t.Fatal(err)
	}
	run, err := p.ride(nil)
	if err != nil {
		t.Fatal(err)
	}
	took := 310 * 10 / force
	if got := p.took(run); math.Abs(got/took-1) > 0.01 {
		t.Errorf("took %.3f s, want %.3f", got, took)
	}
	var wind, slope repeat
	if err := p.weather(&wind); err != nil {
		t.Fatal(err)
	}
	if want := 1.2 * 0.01 * 2 * (25 * took) / force; math.Abs(wind.wind/want-1) > 0.03 {
		t.Errorf("a wind of 2 m/s costs %.5f s, want %.5f", wind.wind, want)
	}
	p.c.Noise.WindSD, p.c.GradeSD = 0, 0.002
	if err := p.weather(&slope); err != nil {
		t.Fatal(err)
	}
	if want := 300 * 9.81 * 0.002 * took / force; math.Abs(slope.slope/want-1) > 0.03 {
		t.Errorf("a slope of 0.2 %% costs %.5f s, want %.5f", slope.slope, want)
	}
}

// TestLaunchTakes checks that the power of a planned bike agrees with its time.
func TestLaunchTakes(t *testing.T) {
	for _, mark := range []string{"0-100 km/h", "0-60 mph", "1/4 mile"} {
		for _, takes := range []float64{3, 5, 12, 15} {
			q := PushQuestion{Push: Launches, Mark: mark, Setups: 2, Change: 0.2}
			c := DefaultPush(Launches, naked(), 1)
			if c.Takes = takes; (mark == "1/4 mile") != (takes > 10) {
				continue
			}
			p, err := q.push(c)
			if err != nil {
				t.Fatal(err)
			}
			run, err := p.ride(nil)
			if err != nil {
				t.Fatal(err)
			}
			if got := p.took(run); math.Abs(got-takes) > 0.02*takes {
				t.Errorf("%s took %.2f s, want %.2f", mark, got, takes)
			}
		}
	}
}

// TestTestOfRepeats compares the chance of a test whose repeats vary with the
// wind, and whose scatter is never taken below their own uncertainty, with
// simulated tests.
func TestTestOfRepeats(t *testing.T) {
	const n, draws = 8, 4000
	for _, c := range []struct{ swing, own, change float64 }{{0, 0, 2}, {1.5, 0, 2}, {0, 1, 1.5}, {1, 1.2, 2.5}} {
		rng := rand.New(rand.NewPCG(5, 6))
		seen := 0.0
		for range draws {
			var of [2][]measure.Value
			for k := range of {
				for i := range n {
					x := c.change*float64(k) + rng.NormFloat64() + c.swing*float64(1-2*(i%2))
					of[k] = append(of[k], measure.Value{X: x, SE: c.own})
				}
			}
			d, err := compare.Repeated(of[0], of[1])
			if err != nil {
				t.Fatal(err)
			}
			if d.Delta.TwoSided(d.DoF) < 0.05 {
				seen += 1.0 / draws
			}
		}
		test := student{dof: 2*n - 2, level: 0.05, beyond: c.swing * c.swing * n / (n - 1), least: c.own}
		if got := test.chance(c.change / math.Sqrt(2.0/n)); math.Abs(got-seen) > 0.03 {
			t.Errorf("%+v: calculated %.3f, drawn %.3f", c, got, seen)
		}
	}
}

func TestWhatHelpsPushes(t *testing.T) {
	for _, q := range []PushQuestion{{Push: Pulls, Change: 0.04}, {Push: Launches, Mark: "1/4 mile", Change: 0.2}, {Push: RollOns, Change: 0.3}} {
		q.Setups, q.MaxPair, q.Chance = 2, 2, 0.8
		smallest := func(change func(*PushConditions)) float64 {
			c := DefaultPush(q.Push, naked(), 1.5)
			change(&c)
			p, err := MakePush(q, c)
			if err != nil {
				t.Fatal(err)
			}
			if p.Chance < q.Chance && len(p.Advice) == 0 {
				t.Errorf("%s: nothing is advised", q.Push)
			}
			return p.Smallest
		}
		base := smallest(func(*PushConditions) {})
		for name, change := range map[string]func(*PushConditions){
			"calm":   func(c *PushConditions) { *c = DefaultPush(q.Push, naked(), 0.5) },
			"spread": func(c *PushConditions) { c.Spread /= 2 },
			"fixes":  func(c *PushConditions) { c.FixRate = 10 },
		} {
			if got := smallest(change); got >= base {
				t.Errorf("%s, %s: %.4f, not below %.4f", q.Push, name, got, base)
			}
		}
		r, err := q.repeat(DefaultPush(q.Push, naked(), 1.5))
		if err != nil {
			t.Fatal(err)
		}
		if two, four := q.lay(r, 2), q.lay(r, 4); four.Smallest >= two.Smallest || four.Seconds <= two.Seconds {
			t.Errorf("%s: four pairs see %.4f in %.0f s, two %.4f in %.0f s", q.Push, four.Smallest, four.Seconds, two.Smallest, two.Seconds)
		}
	}
}

func TestBadPushes(t *testing.T) {
	ok := func(p Push) PushConditions { return DefaultPush(p, naked(), 1) }
	with := func(p Push, change func(*PushConditions)) PushConditions {
		c := ok(p)
		change(&c)
		return c
	}
	tests := []struct {
		name string
		q    PushQuestion
		c    PushConditions
		says string
	}{
		{"one setup", PushQuestion{Push: Pulls, Setups: 1, Change: 0.1}, ok(Pulls), "plan.setups"},
		{"no change", PushQuestion{Push: Pulls, Setups: 2}, ok(Pulls), "plan.change_of_power"},
		{"no time", PushQuestion{Push: RollOns, Setups: 2}, ok(RollOns), "plan.change_of_time"},
		{"no such mark", PushQuestion{Push: Launches, Mark: "0-7 km/h", Setups: 2, Change: 0.1}, ok(Launches), "0-7 km/h"},
		{"certainty", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1, Chance: 1}, ok(Pulls), "chance"},
		{"one pair", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1, MaxPair: 1}, ok(Pulls), "plan.few_pairs"},
		{"narrow", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1}, with(Pulls, func(c *PushConditions) { c.ToMPS = c.FromMPS + 1 }), "plan.speeds_short"},
		{"no power", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1}, with(Pulls, func(c *PushConditions) { c.Power = 0 }), "power"},
		{"too weak", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1}, with(Pulls, func(c *PushConditions) { c.Power = 8e3 }), "plan.too_weak"},
		{"too quick", PushQuestion{Push: Launches, Mark: "0-100 km/h", Setups: 2, Change: 0.1}, with(Launches, func(c *PushConditions) { c.Takes = 0.2 }), "plan.no_bike_takes"},
		{"no mass", PushQuestion{Push: RollOns, Setups: 2, Change: 0.1}, with(RollOns, func(c *PushConditions) { c.Load.Mass = 0 }), "mass"},
		{"no fixes", PushQuestion{Push: RollOns, Setups: 2, Change: 0.1}, with(RollOns, func(c *PushConditions) { c.FixRate = 0 }), "plan.no_rate"},
		{"wild repeats", PushQuestion{Push: Pulls, Setups: 2, Change: 0.1}, with(Pulls, func(c *PushConditions) { c.Spread = 0.9 }), "plan.spread"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := MakePush(tt.q, tt.c)
			if err == nil || !strings.Contains(err.Error(), tt.says) {
				t.Errorf("got %v, want a word about %q", err, tt.says)
			}
		})
	}
}
