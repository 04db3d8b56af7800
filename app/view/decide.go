package view

import (
	"fmt"

	"stillair/app/store"
	"stillair/export/shown"
	"stillair/runs"
)

// CompareAsk holds the rider's choices on the screen of compared setups, and
// the data of the bike that it needs.
type CompareAsk struct {
	Speed    int         // index of the speed at which to state the effect
	LimitRPM float64     // the engine's highest speed, 1/min; +Inf if it is not known
	Fuel     *store.Fuel // nil if it was not entered
}

// Decide makes the whole screen of the compared setups of one ride: verdicts,
// their effects and their limits.
func (c Context) Decide(res *runs.Result, ride string, ask CompareAsk) Compare {
	if res == nil {
		return Compare{}
	}
	v := c.Compare(res.Compared, ride)
	v.Speed, v.Speeds = ask.Speed, c.effectSpeedWords()
	at := c.EffectSpeeds()[ask.Speed]
	v.Effects, v.Steady = c.Effects(res, at, ask.Fuel), c.Steady(res, at, ask.LimitRPM)
	v.TopNote = c.noTop(res)
	for _, l := range res.RoadLoads {
		if x := c.Limits(l); x != nil {
			v.Limits = append(v.Limits, *x)
		}
	}
	return v
}

// DecideAcross does the same for differences between rides, which are less
// certain. The power at a steady speed is stated in the air of the first ride
// for all.
func (c Context) DecideAcross(rides []runs.Named, across []runs.Comparison, ask CompareAsk) Compare {
	v := c.Compare(across, "")
	v.Weaker = true
	v.Speed, v.Speeds = ask.Speed, c.effectSpeedWords()
	at := c.EffectSpeeds()[ask.Speed]
	for _, x := range across {
		if x.Base == nil || x.Load == nil || x.Base.Check() != nil {
			continue
		}
		v.Effects = append(v.Effects, c.effectOf(x, *x.Base, at, ask.Fuel))
		if l := c.limitsOf(c.pairName(x), x.Base.CdA.X, x.Limits); l != nil {
			v.Limits = append(v.Limits, *l)
		}
	}
	v.Steady, v.TopNote = c.steadyAcross(rides, at, ask.LimitRPM)
	if len(v.Steady) > 0 {
		v.Notes = append(v.Notes, fmt.Sprintf(c.Book.Effects.SameAir, rides[0].Name))
	}
	return v
}

// steadyAcross states the power to hold v with every setup of several rides,
// all in the air of the first ride where it is known, and the top speeds.
func (c Context) steadyAcross(rides []runs.Named, v, limitRPM float64) (lines []EffectLine, note string) {
	var tops []EffectLine
	density := 0.0
	for _, ride := range rides {
		res := ride.Result
		for _, l := range res.RoadLoads {
			load := l.Load(res.Gravity)
			if density == 0 {
				density = load.Density
			}
			if load.Density = density; load.Check() != nil {
				continue
			}
			lines = append(lines, c.steadyLine(ride.Call(l.Setup), load.Power(v), load.AirShare(v)))
		}
		tops = append(tops, c.topLines(res, limitRPM, ride.Call)...)
	}
	if len(lines) > 0 && len(tops) == 0 {
		note = c.Book.Effects.NoTop
	}
	return append(lines, tops...), note
}

func (c Context) effectSpeedWords() []string {
	var out []string
	for _, v := range c.EffectSpeeds() {
		out = append(out, c.SpeedText(v))
	}
	return out
}

// comparedPower and comparedTimes are the groups in addition to drag and rolling
// resistance.
func (c Context) comparedPower(all []runs.Comparison) CompareGroup {
	g := CompareGroup{Title: c.named(namePower), Scale: c.Book.Compare.Scale}
	for _, x := range all {
		if x.Power != nil {
			g.Rows = append(g.Rows, c.compareRow(c.pairName(x), *x.Power, shown.Plain))
		}
	}
	return g
}

func (c Context) comparedTimes(all []runs.Comparison) CompareGroup {
	g := CompareGroup{Title: c.Book.Effects.TimesTitle, Scale: c.Book.Compare.Scale}
	for _, x := range all {
		for _, t := range x.Times {
			if !c.otherUnit(t.Mark) {
				g.Rows = append(g.Rows, c.compareRow(c.markName(t.Mark)+": "+c.pairName(x), t.Verdict, shown.Time))
			}
		}
	}
	return g
}

func (c Context) pairName(x runs.Comparison) string {
	return fmt.Sprintf(c.Book.Compare.Against, c.setupName(x.B), c.setupName(x.A))
}

// comparedNotes are the cautions about the comparisons, each given once, without that of
// different rides, which the screen gives above all others.
func (c Context) comparedNotes(all []runs.Comparison) []string {
	var out []string
	seen := map[string]bool{}
	for _, x := range all {
		for _, n := range x.Notes {
			if n.Is(nameOtherDay) {
				continue
			}
			if s := c.sentence(n); !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		}
	}
	return out
}
