package view

import (
	"fmt"
	"math"

	"stillair/runs"
	"stillair/runs/compare"
)

// Compare is the screen of compared setups. Whoever compares fills it with a
// line for each difference; without any it tells how to get one.
type Compare struct {
	Groups []CompareGroup
	Note   string
	Notes  []string // what weakens the comparison

	Speeds  []string // at which to say what it means; Speed is the place of the chosen one
	Speed   int
	Worths  []Worth
	Steady  []WorthLine
	TopNote string // what a top speed would need; empty where one is known
	Limits  []Limits
	Across  []CompareGroup // between rides, which is weaker
}

// CompareGroup is one quantity compared.
type CompareGroup struct {
	Title string
	Scale string
	Rows  []CompareRow
}

// CompareRow is one difference: in words first, then as a band around no
// change.
type CompareRow struct {
	Pair    string // "panniers on, against panniers off"
	Verdict string // the answer, in a sentence
	Grade   Grade  // Fine: a difference is shown; Absent: none is; Waiting: it cannot be told yet
	Band    Interval
}

// Empty reports whether there is nothing to compare yet.
func (v Compare) Empty() bool { return len(v.Groups) == 0 && len(v.Across) == 0 }

// Compare makes the screen of compared setups from what the analysis says.
func (c Context) Compare(all []runs.Comparison, ride string) Compare {
	t := c.Book.Compare
	v := Compare{Note: ride, Notes: c.comparedNotes(all)}
	drag, roll := CompareGroup{Title: t.DragTitle, Scale: t.Scale}, CompareGroup{Title: t.RollTitle, Scale: t.Scale}
	for _, x := range all {
		pair := c.pairName(x)
		if x.CdA != nil {
			drag.Rows = append(drag.Rows, c.compareRow(pair, *x.CdA))
		}
		if x.Crr != nil {
			roll.Rows = append(roll.Rows, c.compareRow(pair, *x.Crr))
		}
	}
	for _, g := range []CompareGroup{drag, roll, c.comparedPower(all), c.comparedTimes(all)} {
		if len(g.Rows) > 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	return v
}

func (c Context) setupName(name string) string {
	if name == "" {
		return c.Book.Ready.SetupNone
	}
	return name
}

func (c Context) compareRow(pair string, v compare.Verdict) CompareRow {
	t := c.Book.Compare
	r := CompareRow{Pair: pair}
	lo, hi := v.CIPercent[0], v.CIPercent[1]
	switch {
	case v.Finding == compare.Differs && v.Percent > 0:
		r.Grade, r.Verdict = Fine, fmt.Sprintf(t.MoreBy, c.Number(v.Percent, 1), c.Number(lo, 1), c.Number(hi, 1))
	case v.Finding == compare.Differs:
		r.Grade, r.Verdict = Fine, fmt.Sprintf(t.LessBy, c.Number(-v.Percent, 1), c.Number(-hi, 1), c.Number(-lo, 1))
	case v.Finding == compare.NoneShown:
		r.Grade, r.Verdict = Absent, fmt.Sprintf(t.NoneShown, c.Number(math.Ceil(v.Unlikely), 0))
	case v.Beyond:
		r.Verdict = t.CalmerDay
	case v.MorePairs == 1:
		r.Verdict = t.OneMorePair
	default:
		r.Verdict = fmt.Sprintf(t.MorePairs, v.MorePairs)
	}
	most := max(5, math.Ceil(max(math.Abs(lo), math.Abs(hi))/5)*5)
	r.Band = Interval{Low: -most, High: most, LowText: c.Number(-most, 0), HighText: "+" + c.Number(most, 0),
		Best: v.Percent, From: lo, To: hi, ShowZero: true, Spoken: pair + ": " + r.Verdict}
	return r
}

// GearNamed names a gear as the bike's file does, which need not be a number.
func (c Context) GearNamed(name string) string {
	return capital(fmt.Sprintf(c.Book.Power.GearKnown, name))
}

// GearName names a gear by its number.
func (c Context) GearName(n int) string { return fmt.Sprintf(c.Book.Bikes.Gear, n) }
