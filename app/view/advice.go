package view

import (
	"fmt"

	"stillair/runs"
	"stillair/sensors/finding"
)

// Advice is what a beginner reads after coast-downs: what went well, what went
// wrong, what to do better, and how many more pairs help.
type Advice struct {
	Title, Good, Pairs string
	HasGood            bool
	Wrong              []AdviceLine
	More               string
}

// AdviceLine is one thing that went wrong and what to do about it.
type AdviceLine struct{ Run, Why, Better string }

// Advice makes the coast-down advice of a ride.
func (c Context) Advice(res *runs.Result) Advice {
	t := c.Book.Advice
	a := Advice{Title: t.Title}
	all, good, lonely := 0, 0, 0
	for _, r := range res.Runs {
		if r.Kind != runs.CoastDown {
			continue
		}
		all++
		switch {
		case !r.Accepted():
			why := r.Reasons[0]
			a.Wrong = append(a.Wrong, AdviceLine{Run: c.runDetail(r), Why: c.sentence(why), Better: c.better(why)})
			continue
		case r.Pair == 0:
			lonely++
		}
		good++
	}
	if all == 0 {
		a.Good, a.More = t.None, t.NoneHint
		return a
	}
	a.HasGood, a.Good = good > 0, fmt.Sprintf(t.GoodHint, good, all)
	if lonely > 0 {
		line := AdviceLine{Run: fmt.Sprintf(t.Unpaired, lonely), Better: t.UnpairedHint}
		if lonely == 1 {
			line.Run = t.OneUnpaired
		}
		a.Wrong = append(a.Wrong, line)
	}
	c.advisePairs(&a, res)
	return a
}

func (c Context) advisePairs(a *Advice, res *runs.Result) {
	t := c.Book.Advice
	pairs := 0
	for _, l := range res.RoadLoads {
		pairs += l.Pairs
		a.Pairs = fmt.Sprintf(t.PairsDone, pairs)
		if pairs == 1 {
			a.Pairs = t.OnePair
		}
		if l.Pairs < fewest {
			a.More = c.Book.Load.OnlyOne
			continue
		}
		now, more, then := c.gain(l)
		a.More = t.MoreNot
		switch {
		case more == 1:
			a.More = fmt.Sprintf(t.OneMoreWorth, c.Number(now, 1), c.Number(then, 1))
		case more > 1:
			a.More = fmt.Sprintf(t.MoreWorth, more, c.Number(now, 1), c.Number(then, 1))
		}
	}
}

// better is the advice for a reason.
func (c Context) better(reason finding.Finding) string {
	t := c.Book.Advice
	for _, m := range []struct {
		code   finding.Code
		advice string
	}{
		{"coast.too_short", t.ShortBetter},
		{"coast.braked", t.BrakeBetter},
		{"coast.too_hard", t.EngineBetter}, {"coast.too_hard_fast", t.EngineBetter}, {"coast.too_little_fast", t.EngineBetter},
		{"coast.impossible_outcome", t.EngineBetter}, {"coast.changed_on_the_way", t.EngineBetter}, {"coast.in_gear", t.EngineBetter}, {"coast.unlike_others", t.EngineBetter}, {"coast.engine_turns", t.EngineBetter},
		{"coast.too_little", t.SlopeBetter}, {"coast.too_little_slow", t.SlopeBetter},
		{"run.no_fixes", t.FixBetter}, {"coast.bends", t.TurnBetter},
	} {
		if reason.Is(m.code) {
			return m.advice
		}
	}
	return t.OtherBetter
}
