package view

import (
	"fmt"

	"stillair/runs"
	"stillair/runs/compare"
)

// Direction is the direction of a difference, if one is shown. It says neither
// how certain that is nor whether it is good.
type Direction int

// The directions.
const (
	NoDirection Direction = iota
	More
	Less
)

// Said is a verdict in words. What it says and how certain that is are
// separate; no sign or colour mixes them.
type Said struct {
	Direction Direction
	Verdict   string // "11.0 % more", "Not clear yet"
	Certainty string // "Sure (95 %: 6.4 to 15.6 %)", or the estimate, its band and what would help
}

// Answer is whether two setups differ, for the top of a ride's results.
type Answer struct {
	Pair string
	Said
	Means []string // the effect at the rider's speed, and on fuel
}

// Spoken is the answer as a screen reader says it.
func (a Answer) Spoken() string {
	return join(". ", append([]string{a.Pair + ": " + a.Verdict, a.Certainty}, a.Means...)...)
}

// Answers says of every two setups of a ride whether they differ: in drag if it
// was measured, else in power.
func (c Context) Answers(res *runs.Result, ask CompareAsk) []Answer {
	t := c.Book.Compare
	var out []Answer
	for _, x := range res.Compared {
		a := Answer{Pair: c.pairName(x)}
		switch {
		case x.CdA != nil:
			a.Said, a.Means = c.said(*x.CdA, t.MoreDrag, t.LessDrag), c.means(res, x, ask)
		case x.Power != nil:
			a.Said = c.said(*x.Power, t.MorePower, t.LessPower)
		default:
			continue
		}
		out = append(out, a)
	}
	return out
}

// toTell says what would make a difference clear.
type toTell struct{ one, many, beyond string }

// said puts a verdict in words; more and less are the texts of a difference that
// is shown. The estimate and its band are always given.
func (c Context) said(v compare.Verdict, more, less string) Said {
	t := c.Book.Compare
	return c.saidOf(v, more, less, toTell{t.OneMorePair, t.MorePairs, t.CalmerDay})
}

func (c Context) saidOf(v compare.Verdict, more, less string, next toTell) Said {
	t := c.Book.Compare
	lo, hi := v.CIPercent[0], v.CIPercent[1]
	estimate := fmt.Sprintf(t.Estimate, c.withSign(v.Percent), c.withSign(lo), c.withSign(hi))
	switch {
	case v.Finding == compare.Differs && v.Percent > 0:
		return Said{More, fmt.Sprintf(more, c.Number(v.Percent, 1)), fmt.Sprintf(t.Sure, c.Number(lo, 1), c.Number(hi, 1))}
	case v.Finding == compare.Differs:
		return Said{Less, fmt.Sprintf(less, c.Number(-v.Percent, 1)), fmt.Sprintf(t.Sure, c.Number(-hi, 1), c.Number(-lo, 1))}
	case v.Finding == compare.NoneShown:
		return Said{Verdict: t.NoneMatters, Certainty: estimate}
	case v.Beyond:
		return Said{Verdict: t.NeverClear, Certainty: estimate + ". " + next.beyond}
	case v.MorePairs == 1:
		return Said{Verdict: t.NotClear, Certainty: estimate + ". " + next.one}
	}
	return Said{Verdict: t.NotClear, Certainty: estimate + ". " + fmt.Sprintf(next.many, v.MorePairs)}
}

// withSign writes a percentage with its sign.
func (c Context) withSign(x float64) string {
	s := c.Number(x, 1)
	if x > 0 {
		return "+" + s
	}
	return s
}

// means says what a difference costs in power and fuel at the rider's speed.
func (c Context) means(res *runs.Result, x runs.Comparison, ask CompareAsk) []string {
	load, err := res.LoadOf(x.A)
	if x.Load == nil || err != nil || load.Check() != nil {
		return nil
	}
	v := c.EffectSpeeds()[ask.Speed]
	lines := c.costs(*x.Load, load, v)[:1]
	if ask.Fuel != nil {
		lines = append(lines, c.fuelLines(*x.Load, load, *ask.Fuel)[0])
	} else {
		lines = append(lines, c.aboutFuel(*x.Load, load, v))
	}
	var out []string
	for _, l := range lines {
		out = append(out, l.Name+": "+l.Reading.Spoken())
	}
	return out
}
