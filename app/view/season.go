package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"stillair/app/store"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/sensors/finding"
)

// Season is the screen of the joint result of all rides of a bike: the answer,
// what each part costs, the figures of each setup, means of both directions,
// and the rides.
type Season struct {
	Bikes   []string // to choose from
	Bike    int      // the chosen one
	Lead    Answer
	Left    []string // rides that are left out, with the reason
	Notes   []string // contradictions between the rides
	Parts   CompareGroup
	Counted string // the setup that parts are compared with
	Setups  []SeasonSetup
	TwoWays []EffectLine
	Passes  []PassRow
	Battery []EffectLine // of an electric bike: energy per distance and range, by setup
	Steady  string       // at which speed
	Drive   string       // the share of the battery's energy that reaches the road
	Rides   []SeasonRide
}

// SeasonSetup holds all figures of one setup.
type SeasonSetup struct {
	Title   string
	Figures []SeasonFigure
}

// SeasonFigure is the repeatability of one figure of a setup.
type SeasonFigure struct {
	Name    string
	Reading Reading // the mean
	Words   []string
	Plot    Plot // of each ride; without lines: too few
}

// SeasonRide is one ride in the list.
type SeasonRide struct {
	ID, Title, When string
	Words           []string
	Spoken          string
}

// SeasonAsk is the data that a season is shown from.
type SeasonAsk struct {
	Season *results.SeasonDocument // its rides named by their IDs
	Bike   int
	Rides  []store.Session
	Loads  []SetupLoad // the latest of each setup
	Garage []store.Bike
	Left   []Left
}

// SetupLoad is the road load of one setup of a bike.
type SetupLoad struct {
	Bike, Setup string
	Load        effect.Load
}

// Left is a ride that is not in the season.
type Left struct {
	Ride store.Session
	Why  error
}

// Empty reports whether there is no season yet.
func (v Season) Empty() bool { return len(v.Bikes) == 0 }

// Season makes the screen of a season.
func (c Context) Season(ask SeasonAsk) Season {
	v := Season{Bike: ask.Bike}
	for _, l := range ask.Left {
		v.Left = append(v.Left, fmt.Sprintf(c.Book.Season.Left, c.RideRow(l.Ride).Title, c.Error(l.Why)))
	}
	for _, b := range ask.Season.Bikes {
		v.Bikes = append(v.Bikes, cmp.Or(b.Bike, c.Book.Season.NoBike))
	}
	if v.Empty() {
		return v
	}
	b := ask.Season.Bikes[ask.Bike]
	v.Setups = c.seasonSetups(b)
	v.Lead = c.seasonLead(b, v.Setups)
	if b.Budget != nil {
		c.seasonParts(&v, b.Budget)
	}
	c.seasonBattery(&v, b.Bike, ask)
	called := map[string]RideRow{}
	for _, s := range ask.Rides {
		called[s.ID] = c.RideRow(s)
	}
	v.TwoWays = c.seasonTwoWays(b.TwoWay, called)
	v.Passes = c.seasonPasses(b.Passes, called)
	for _, r := range slices.Backward(b.Rides) {
		v.Rides = append(v.Rides, c.seasonRide(r, called[r.Ride]))
	}
	return v
}

// seasonLead is the answer of a season: what the parts cost, the most costly
// first, or, without a comparison, what was measured.
func (c Context) seasonLead(b results.SeasonBike, setups []SeasonSetup) Answer {
	t := c.Book.Season
	if b.Budget == nil || len(b.Budget.Effects) == 0 {
		a := Answer{Means: []string{t.OneSetup + " " + t.NameParts}}
		if len(setups) > 0 && len(setups[0].Figures) > 0 {
			f := setups[0].Figures[0]
			a.Pair, a.Verdict = join(" · ", setups[0].Title, f.Name), f.Reading.Spoken()
			a.Certainty = strings.Join(f.Words, " ")
		}
		return a
	}
	var sure, unclear []results.SeasonEffect
	for _, e := range b.Budget.Effects {
		switch e.Verdict().Finding {
		case compare.Differs:
			sure = append(sure, e)
		case compare.CannotTell:
			unclear = append(unclear, e)
		}
	}
	slices.SortStableFunc(sure, func(a, b results.SeasonEffect) int {
		return cmp.Compare(math.Abs(b.Verdict().Percent), math.Abs(a.Verdict().Percent))
	})
	a := Answer{Pair: t.MostDrag, Said: Said{Verdict: t.NoneSure}}
	for i, e := range sure {
		said := c.partSaid(e)
		if i == 0 {
			a.Said = said
			a.Verdict = c.partName(e) + ": " + said.Verdict
			continue
		}
		a.Means = append(a.Means, c.partName(e)+": "+said.Verdict)
	}
	if len(unclear) > 0 {
		var names []string
		for _, e := range unclear {
			names = append(names, c.partName(e))
		}
		a.Means = append(a.Means, fmt.Sprintf(t.Unclear, strings.Join(names, " · ")))
	}
	return a
}

// partName is a part, with the one that it replaces.
func (c Context) partName(e results.SeasonEffect) string {
	if e.Instead != "" {
		return fmt.Sprintf(c.Book.Compare.Against, e.Part, e.Instead)
	}
	return e.Part
}

func (c Context) partSaid(e results.SeasonEffect) Said {
	t, s := c.Book.Compare, c.Book.Season
	return c.saidOf(e.Verdict(), t.MoreDrag, t.LessDrag, toTell{s.OneMoreRide, s.MoreRides, s.SideBySide})
}

// seasonParts fills in the drag budget.
func (c Context) seasonParts(v *Season, b *results.SeasonBudget) {
	t := c.Book.Season
	v.Parts = CompareGroup{Title: t.PartsTitle, Scale: c.Book.Compare.Scale}
	for _, e := range b.Effects {
		if e.Percent == nil || e.PercentCI == nil {
			continue
		}
		r := CompareRow{Pair: c.partName(e) + ", " + c.count(e.Rides, t.OneRide, t.Rides), Said: c.partSaid(e)}
		// The band of all parts together, as in the verdict.
		r.Delta = c.reading(shown.Area, *e.CdA.X, (e.PercentCI[1]-e.PercentCI[0])/200**b.BaseCdA.X)
		if *e.CdA.X > 0 {
			r.Delta.Number = "+" + r.Delta.Number
		}
		r.Band = Interval{Best: *e.Percent, From: e.PercentCI[0], To: e.PercentCI[1], ShowZero: true,
			Spoken: join(". ", r.Pair+": "+r.Verdict, r.Certainty, r.Delta.Spoken())}
		v.Parts.Rows = append(v.Parts.Rows, r)
	}
	oneScale(c, v.Parts.Rows)
	if b.BaseCdA.X != nil && b.BaseCdA.SE != nil {
		v.Counted = fmt.Sprintf(t.PartsHint, c.setupName(b.Base), c.reading(shown.Area, *b.BaseCdA.X, shown.Normal95**b.BaseCdA.SE).Spoken()) + " " + t.NameParts
	}
	if b.Widened != nil && *b.Widened > 1 {
		v.Notes = append(v.Notes, c.sentence(finding.New("season.disagree", finding.Num("times", *b.Widened))))
	}
}

func (c Context) count(n int, one, many string) string {
	if n == 1 {
		return one
	}
	return fmt.Sprintf(many, n)
}

// seasonTwoWays returns the best mean of both directions for each mark, setup
// and gear, and the number of means.
func (c Context) seasonTwoWays(all []results.SeasonTwoWay, called map[string]RideRow) []EffectLine {
	t := c.Book.Season
	best, count := map[string]results.SeasonTwoWay{}, map[string]int{}
	var order []string
	for _, w := range all {
		if w.Mean.X == nil || w.Mean.SE == nil || w.Apart == nil || !c.inSeason(w.Kind, w.Mark) {
			continue
		}
		name := join(" · ", c.seasonMark(w.Mark, w.Rollout), c.setupName(w.Setup), c.gearWords(w.Gear))
		had, there := best[name]
		if !there {
			order = append(order, name)
		}
		if count[name]++; !there || *w.Mean.X < *had.Mean.X {
			best[name] = w
		}
	}
	var out []EffectLine
	for _, name := range order {
		w, of := best[name], ""
		if count[name] > 1 {
			of = fmt.Sprintf(t.BestOf, count[name])
		}
		out = append(out, EffectLine{Name: name, Reading: c.reading(shown.Time, *w.Mean.X, shown.Normal95**w.Mean.SE),
			Words: join(" · ", of, fmt.Sprintf(t.Apart, w.Runs[0], w.Runs[1], c.Duration(*w.Apart)), called[w.Ride].Title)})
	}
	return out
}

func (c Context) gearWords(gear string) string {
	if gear == "" {
		return ""
	}
	return c.GearNamed(gear)
}

func (c Context) seasonRide(r results.SeasonRide, row RideRow) SeasonRide {
	t := c.Book.Season
	out := SeasonRide{ID: r.Ride, Title: cmp.Or(row.Title, r.Ride), When: row.When}
	for _, l := range r.Loads {
		if l.CdA.X != nil && l.CdA.SE != nil {
			out.Words = append(out.Words, c.setupName(l.Setup)+": CdA "+c.reading(shown.Area, *l.CdA.X, shown.Normal95**l.CdA.SE).Spoken())
		}
	}
	if r.DensityAltitude != nil {
		out.Words = append(out.Words, fmt.Sprintf(t.Density, c.style().Number(shown.Distance, 10*math.Round(*r.DensityAltitude/10), 0)))
	}
	out.Spoken = join(", ", append([]string{out.Title, out.When}, out.Words...)...)
	return out
}
