package plan

import (
	"errors"
	"fmt"
	"math"

	"stillair/runs/roadload"
	"stillair/runs/worth"
)

// Conditions is what the test is expected to meet.
type Conditions struct {
	Load         worth.Load // rough road load, mass and air of the bike
	RotatingMass float64    // kg
	FromMPS      float64    // where a coast-down begins, m/s
	ToMPS        float64    // where it ends, m/s
	FixRate      float64    // fixes a second
	BreakSeconds float64    // between runs: turning round and getting up to speed, s
	ChangeTime   float64    // for changing the setup, s
	Noise        roadload.Options
}

// DefaultConditions is an everyday test of a bike: 110 to 30 km/h, a phone
// that gives one fix a second, a minute between runs. windSD is the
// standard deviation of a pair's mean wind along the road, m/s.
func DefaultConditions(l worth.Load, windSD float64) Conditions {
	return Conditions{
		Load: l, RotatingMass: 0.04 * l.Mass,
		FromMPS: 110 / 3.6, ToMPS: 30 / 3.6, FixRate: 1,
		BreakSeconds: 60, ChangeTime: 300,
		Noise: roadload.DefaultOptions(windSD),
	}
}

// Question is what the rider wants to know about the setups.
type Question struct {
	Setups  int     // how many, at least 2
	CdA     float64 // the relative change of drag area that matters: 0.02 is 2 %
	Chance  float64 // how likely the test shall be to see it; 0: 0.8
	MaxPair int     // most pairs a setup that the rider will ride; 0: 8
}

// FromTopSpeed turns a change of top speed dv that matters, at a top speed of
// v (both m/s), into a relative change of drag area: on the same power, to
// first order.
func FromTopSpeed(l worth.Load, v, dv float64) float64 {
	one := worth.Change{}
	one.CdA.X = l.CdA.X
	return math.Abs(dv / one.Speed(l, v).X)
}

// Plan is a test and how likely it is to succeed. Differences are in the terms
// of the question: relative for drag and power, in s for times.
type Plan struct {
	Pairs      int     // opposite pairs for each setup
	Blocks     []Block // in the order of riding
	RoadLength float64 // m, with the way to get up to speed and to stop
	Seconds    float64 // the whole test, s
	SE         float64 // standard error of the difference as the comparison will say it
	Chance     float64 // of seeing the change that matters
	Smallest   float64 // change that is seen with the chance asked for
	Enough     bool    // Chance is as asked for
	Advice     []Advice
}

// Block is some pairs with one setup, before it is changed.
type Block struct {
	Setup int // from 0
	Pairs int
}

// Advice is one thing that would help a plan that is not enough.
type Advice struct {
	Change   string  // in plain words
	Chance   float64 // of seeing the change that matters, with it
	Smallest float64 // change seen with the chance asked for, with it
}

// Make finds the smallest test that answers the question.
func Make(q Question, c Conditions) (*Plan, error) {
	if err := check(&q, c); err != nil {
		return nil, err
	}
	p, err := fewest(q.MaxPair, func(n int) (*Plan, error) { return lay(q, c, n) })
	if err == nil && !p.Enough {
		p.Advice = advise(q, c)
	}
	return p, err
}

// fewest is the test of the fewest pairs that is enough, or that of the most.
func fewest(most int, lay func(pairs int) (*Plan, error)) (p *Plan, err error) {
	for n := 2; n <= most; n += 2 {
		if p, err = lay(n); err != nil || p.Enough {
			return p, err
		}
	}
	return p, nil
}

func check(q *Question, c Conditions) error {
	if q.Chance == 0 {
		q.Chance = 0.8
	}
	if q.MaxPair == 0 {
		q.MaxPair = 8
	}
	switch {
	case q.Setups < 2:
		return errors.New("a comparison needs at least two setups")
	case !(q.CdA > 0 && q.CdA < 1):
		return fmt.Errorf("a change of %.3g of the drag cannot be planned for: give one between 0 and 100 %%", q.CdA)
	case !(q.Chance > 0.05 && q.Chance < 1):
		return fmt.Errorf("a chance of %.3g cannot be planned for: give one between 5 and 100 %%", q.Chance)
	case q.MaxPair < 2:
		return errors.New("at least two pairs a setup are needed: scatter cannot be judged from one")
	case !(c.ToMPS > 0) || c.FromMPS < c.ToMPS+5:
		return fmt.Errorf("from %.0f to %.0f km/h is too little to tell drag from rolling: give at least 20 km/h", c.FromMPS*3.6, c.ToMPS*3.6)
	case !(c.FixRate > 0):
		return errors.New("the rate of fixes is not given")
	}
	return c.Load.Check()
}

// lay plans n pairs a setup.
func lay(q Question, c Conditions, n int) (*Plan, error) {
	p := &Plan{Pairs: n, Blocks: order(q.Setups, n)}
	d := newDesign(c, p.Blocks)
	se, err := d.relativeSE(q.Setups)
	if err != nil {
		return nil, err
	}
	se *= learning(n)
	p.SE = se
	test := student{dof: freedom(q.Setups, n), level: level(q.Setups)}
	p.Chance = test.chance(q.CdA / se)
	p.Smallest = se * test.needed(q.Chance)
	p.Enough = p.Chance >= q.Chance
	p.RoadLength = d.roadLength()
	p.Seconds = d.seconds
	return p, nil
}

// order is there and back through the setups, with half the pairs each time.
func order(setups, pairs int) []Block {
	var b []Block
	add := func(s int) {
		if n := len(b); n > 0 && b[n-1].Setup == s {
			b[n-1].Pairs += pairs / 2
			return
		}
		b = append(b, Block{Setup: s, Pairs: pairs / 2})
	}
	for s := range setups {
		add(s)
	}
	for s := setups - 1; s >= 0; s-- {
		add(s)
	}
	return b
}

// advise tries what a rider can do and keeps what helps.
func advise(q Question, c Conditions) []Advice {
	calm := c
	calm.Noise = roadload.DefaultOptions(c.Noise.WindSD / 2)
	fast := c
	fast.FromMPS += 20 / 3.6
	more := q
	more.MaxPair = 2 * q.MaxPair
	often := c
	often.FixRate = 10
	tries := []struct {
		words string
		q     Question
		c     Conditions
	}{
		{"a calmer day, with half the wind", q, calm},
		{fmt.Sprintf("starting at %.0f km/h, where law and road allow it", fast.FromMPS*3.6), q, fast},
		{fmt.Sprintf("%d pairs a setup instead of %d", more.MaxPair, q.MaxPair), more, c},
		{"a receiver with ten fixes a second", q, often},
	}
	var out []Advice
	now, err := lay(q, c, q.MaxPair)
	if err != nil {
		return nil
	}
	for _, t := range tries {
		p, err := lay(t.q, t.c, t.q.MaxPair)
		if err == nil && p.Smallest < 0.95*now.Smallest {
			out = append(out, Advice{Change: t.words, Chance: p.Chance, Smallest: p.Smallest})
		}
	}
	return out
}
