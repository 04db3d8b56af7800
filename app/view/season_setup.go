package view

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"stillair/export/plot"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
)

// inSeason leaves out the marks of the other system of units, and all marks of a
// launch but the representative ones.
func (c Context) inSeason(kind, mark string) bool {
	if kind == string(runs.Launch) {
		return slices.Contains(c.headlines(runs.Launch), mark)
	}
	return !c.otherUnit(mark)
}

// seasonMark is a mark's name, with a note if its clock began after one foot.
func (c Context) seasonMark(mark string, rollout bool) string {
	if rollout {
		return c.markName(mark) + " " + c.Book.Run.AfterFoot
	}
	return c.markName(mark)
}

// seasonSetups gathers the figures of each setup, in the order of the season;
// the setup with most rides first, since the rider knows it best.
func (c Context) seasonSetups(b results.SeasonBike) []SeasonSetup {
	var out []SeasonSetup
	at := map[string]int{}
	most := map[string]int{}
	for _, f := range b.Figures {
		if f.Mean.X == nil || f.MeanCI == nil || f.Best == nil || f.Typical == nil || f.Kind != "" && !c.inSeason(f.Kind, f.Figure) {
			continue
		}
		name := c.setupName(f.Setup)
		if _, there := at[name]; !there {
			at[name] = len(out)
			out = append(out, SeasonSetup{Title: name})
		}
		if f.Kind == "" {
			most[name] = max(most[name], f.N)
		}
		s := &out[at[name]]
		s.Figures = append(s.Figures, c.seasonFigure(b, f))
	}
	slices.SortStableFunc(out, func(a, b SeasonSetup) int { return most[b.Title] - most[a.Title] })
	return out
}

// seasonFigure describes the repeatability of a figure.
func (c Context) seasonFigure(b results.SeasonBike, f results.SeasonFigure) SeasonFigure {
	t := c.Book.Season
	q, decimals := shown.Time, 2
	out := SeasonFigure{}
	n := c.count(f.N, t.OneRide, t.Rides)
	switch {
	case f.Figure == "CdA" && f.Kind == "":
		q, decimals, out.Name = shown.Area, 3, c.Names().DragArea()
		if c.System == shown.Imperial {
			decimals = 2
		}
		out.Plot = c.seasonPlot(b.Rides, f.Setup)
	case f.Figure == "Crr" && f.Kind == "":
		q, decimals, out.Name = shown.Plain, 4, c.Names().Rolling()
	default:
		out.Name, n = join(", ", c.kindName(runs.Kind(f.Kind)), c.seasonMark(f.Figure, f.Rollout), c.gearWords(f.Gear)), c.count(f.N, t.OneRun, t.Runs)
	}
	write := func(x float64) string { return strings.TrimSpace(c.style().Number(q, x, decimals)) }
	out.Reading = c.reading(q, *f.Mean.X, (f.MeanCI[1]-f.MeanCI[0])/2)
	out.Words = []string{fmt.Sprintf(t.Mean, n) + "."}
	if f.N > 1 {
		out.Words = append(out.Words, fmt.Sprintf(t.Best, write(*f.Best), write(*f.Typical))+".")
	}
	if f.Spread != nil && f.Own != nil {
		out.Words = append(out.Words, fmt.Sprintf(t.Repeats, write(*f.Spread), write(*f.Own)))
	}
	if f.TrendP != nil && f.Trend.X != nil && f.TrendCI != nil {
		out.Words = append(out.Words, c.trend(f, q)+".")
	}
	return out
}

// shownTrend is the p-value below which a trend is reported.
const shownTrend = 0.05

// leastP is the smallest p-value that is written as a number.
const leastP = 0.001

func (c Context) trend(f results.SeasonFigure, q shown.Quantity) string {
	t := c.Book.Season
	luck := fmt.Sprintf(t.Luck, c.Number(*f.TrendP, 3))
	if *f.TrendP < leastP {
		luck = fmt.Sprintf(t.NoLuck, c.Number(leastP, 3))
	}
	if *f.TrendP >= shownTrend {
		return fmt.Sprintf(t.NoTrend, luck)
	}
	r := c.reading(q, *f.Trend.X, (f.TrendCI[1]-f.TrendCI[0])/2)
	if *f.Trend.X > 0 {
		r.Number = "+" + r.Number
	}
	return fmt.Sprintf(t.Trend, r.Spoken(), luck)
}

// seasonPlot shows the drag area of a setup ride by ride, each with its 95 %
// band and with the part of that which a trend has to exceed; without lines if
// fewer than two rides have a date.
func (c Context) seasonPlot(rides []results.SeasonRide, setup string) Plot {
	area, t := c.style().Unit(shown.Area), c.Book.Season
	var p Plot
	var first, last time.Time
	low, high := math.Inf(1), math.Inf(-1)
	for _, r := range rides {
		for _, l := range r.Loads {
			if r.Started == nil || l.Setup != setup || l.CdA.X == nil || l.CdA.SE == nil {
				continue
			}
			if last = *r.Started; first.IsZero() {
				first = last
			}
			day, x, half := last.Sub(first).Hours()/24, *l.CdA.X/area.SI, shown.Normal95**l.CdA.SE/area.SI
			own := half
			if l.CdAByRide != nil {
				own = shown.Normal95 * *l.CdAByRide / area.SI
			}
			bar := func(half float64) Line { return Line{X: []float64{day, day}, Y: []float64{x - half, x + half}} }
			whole, part := bar(half), bar(own)
			whole.Dash, whole.Tone = plot.Thin, 1
			if len(p.Lines) == 0 {
				whole.Name, part.Name = t.Band, t.ByRide
			}
			p.Lines = append(p.Lines, whole, part)
			p.Marks = append(p.Marks, PlotMark{X: day, Y: x})
			low, high = min(low, x-half), max(high, x+half)
		}
	}
	span := last.Sub(first).Hours() / 24
	if len(p.Marks) < 2 || !(span > 0) {
		return Plot{}
	}
	p.X = Axis{Label: c.named(nameDate), Min: -0.06 * span, Max: 1.06 * span, Ticks: []plot.Tick{{At: 0, Text: c.day(first)}, {At: span, Text: c.day(last)}}}
	p.Y = c.axisOf(fmt.Sprintf(t.DragOver, area.Name), low, high, 3)
	p.Spoken = c.Names().DragArea() + " " + c.count(len(p.Marks), t.OneRide, t.Rides)
	return p
}

// day is a date without its year, as the language writes it.
func (c Context) day(t time.Time) string {
	t = t.Local()
	return fmt.Sprintf(c.Book.Season.Day, t.Day(), c.Book.Months[t.Month()-1])
}
