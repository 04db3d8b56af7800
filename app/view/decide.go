package view

import (
	"fmt"

	"stillair/app/store"
	"stillair/runs"
)

// CompareAsk is what the rider chose on the screen of compared setups, and what
// the bike adds to it.
type CompareAsk struct {
	Speed    int         // place of the speed at which to say what a difference means
	LimitRPM float64     // the engine's highest speed, 1/min; +Inf where it is not known
	Fuel     *store.Fuel // nil where it was not told
}

// Decide makes the whole screen of compared setups: verdicts, what they mean
// and what limits them. across holds differences between rides; it may be empty.
func (c Context) Decide(res *runs.Result, across []runs.Comparison, ride string, ask CompareAsk) Compare {
	v := Compare{}
	if res != nil {
		v = c.Compare(res.Compared, ride)
		v.Speed, v.Speeds = ask.Speed, c.worthSpeedWords()
		at := c.WorthSpeeds()[ask.Speed]
		v.Worths, v.Steady = c.Worths(res, at, ask.Fuel), c.Steady(res, at, ask.LimitRPM)
		v.TopNote = c.noTop(res)
		for _, l := range res.RoadLoads {
			if x := c.Limits(l); x != nil {
				v.Limits = append(v.Limits, *x)
			}
		}
	}
	v.Across = c.Compare(across, "").Groups
	return v
}

func (c Context) worthSpeedWords() []string {
	var out []string
	for _, v := range c.WorthSpeeds() {
		out = append(out, c.SpeedText(v))
	}
	return out
}

// comparedPower and comparedTimes are the groups beside drag and rolling.
func (c Context) comparedPower(all []runs.Comparison) CompareGroup {
	g := CompareGroup{Title: c.Book.Worth.PowerTitle, Scale: c.Book.Compare.Scale}
	for _, x := range all {
		if x.Power != nil {
			g.Rows = append(g.Rows, c.compareRow(c.pairName(x), *x.Power))
		}
	}
	return g
}

func (c Context) comparedTimes(all []runs.Comparison) CompareGroup {
	g := CompareGroup{Title: c.Book.Worth.TimesTitle, Scale: c.Book.Compare.Scale}
	for _, x := range all {
		for _, t := range x.Times {
			if !c.otherUnit(t.Mark) {
				g.Rows = append(g.Rows, c.compareRow(c.markName(t.Mark)+": "+c.pairName(x), t.Verdict))
			}
		}
	}
	return g
}

func (c Context) pairName(x runs.Comparison) string {
	return fmt.Sprintf(c.Book.Compare.Against, c.setupName(x.B), c.setupName(x.A))
}

// comparedNotes are what weakens the comparisons, each said once.
func (c Context) comparedNotes(all []runs.Comparison) []string {
	var out []string
	seen := map[string]bool{}
	for _, x := range all {
		for _, n := range x.Notes {
			if !seen[n] {
				seen[n] = true
				out = append(out, c.say(n))
			}
		}
	}
	return out
}
