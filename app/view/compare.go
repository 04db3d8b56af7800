package view

import (
	"math"
	"strconv"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/compare"
)

// Compare is the screen of compared setups, with a line for each difference;
// without any, it says how to get one.
type Compare struct {
	Groups []CompareGroup
	Note   string
	Notes  []string // what weakens the comparison

	Speeds  []string // to state the effect at; Speed is the index of the chosen one
	Speed   int
	Effects []Effect
	Steady  []EffectLine
	TopNote string // what is missing for a top speed; empty if one is known
	Limits  []Limits
	Weaker  bool // between rides
}

// CompareGroup is one quantity compared.
type CompareGroup struct {
	Title string
	Scale string
	Rows  []CompareRow
}

// CompareRow is one difference: first in words, then as a band around zero.
type CompareRow struct {
	Pair string // "panniers on, against panniers off"
	Said
	Delta Reading // the difference in its own unit
	Band  Interval
}

// Empty reports whether there is nothing to compare yet.
func (v Compare) Empty() bool { return len(v.Groups) == 0 }

// Compare makes the screen of compared setups from the results of the analysis.
func (c Context) Compare(all []runs.Comparison, ride string) Compare {
	t := c.Book.Compare
	v := Compare{Note: ride, Notes: c.comparedNotes(all)}
	drag, roll := CompareGroup{Title: c.named(nameDragArea), Scale: t.Scale}, CompareGroup{Title: c.named(nameRolling), Scale: t.Scale}
	for _, x := range all {
		pair := c.pairName(x)
		if x.CdA != nil {
			drag.Rows = append(drag.Rows, c.compareRow(pair, *x.CdA, shown.Area))
		}
		if x.Crr != nil {
			roll.Rows = append(roll.Rows, c.compareRow(pair, *x.Crr, shown.Plain))
		}
	}
	for _, g := range []CompareGroup{drag, roll, c.comparedPower(all), c.comparedTimes(all)} {
		if len(g.Rows) > 0 {
			oneScale(c, g.Rows)
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

// compareRow is one verdict; q is the quantity compared.
func (c Context) compareRow(pair string, v compare.Verdict, q shown.Quantity) CompareRow {
	t := c.Book.Compare
	r := CompareRow{Pair: pair}
	if v.CI[0] < v.CI[1] {
		r.Delta = c.reading(q, v.Delta.X, (v.CI[1]-v.CI[0])/2)
		if v.Delta.X > 0 {
			r.Delta.Number = "+" + r.Delta.Number
		}
	}
	r.Said = c.said(v, t.MoreBy, t.LessBy)
	r.Band = Interval{Best: v.Percent, From: v.CIPercent[0], To: v.CIPercent[1], ShowZero: true,
		Spoken: join(". ", pair+": "+r.Verdict, r.Certainty, r.Delta.Spoken())}
	return r
}

// oneScale draws the bands of a group to one scale, so that they can be
// compared.
func oneScale(c Context, rows []CompareRow) {
	most := 5.0
	for _, r := range rows {
		for _, end := range []float64{r.Band.From, r.Band.To} {
			if !math.IsNaN(end) && !math.IsInf(end, 0) {
				most = max(most, math.Ceil(math.Abs(end)/5)*5)
			}
		}
	}
	for i := range rows {
		b := &rows[i].Band
		b.Low, b.High, b.LowText, b.HighText = -most, most, c.Number(-most, 0), "+"+c.Number(most, 0)
	}
}

// GearNamed names a gear as the bike's file does; the name need not be a number.
func (c Context) GearNamed(name string) string { return capital(c.gear(name)) }

// GearName names a gear by its number.
func (c Context) GearName(n int) string { return c.GearNamed(strconv.Itoa(n)) }
