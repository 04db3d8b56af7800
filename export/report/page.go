package report

import (
	"html/template"
	"strings"
	"time"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/finding"
)

// page is what the template shows.
type page struct {
	Style        template.CSS
	Language     shown.Language
	Title, Bike  string
	Facts        []fact
	Invented     bool
	WrittenBy    string
	Best         []best
	Compared     []comparison
	Differences  table
	Loads        []load
	LoadMeaning  []string
	Wide, Narrow figure.Figure
	Launches     []table
	LaunchPlots  []figure.Figure
	Powers       []power
	PowerPlot    figure.Figure
	RollOns      table
	Passes       table
	OtherPasses  []string // that do not count, with the reason
	Stops        table
	Remarks      []fact
	Sections     []Section
	Runs         []runRow
	Found        string // how many runs, and how many of them are rejected
	Defaults     []string
	Warnings     []string
	Notes        []string
	Protocol     *protocol
}

// fact is one line of the page's head.
type fact struct{ Name, Value string }

// table is a table of words; the first column is a heading.
type table struct {
	Header []string
	Rows   [][]string
}

// Empty reports whether there is nothing in it.
func (t table) Empty() bool { return len(t.Rows) == 0 }

// mostPlots bounds how many launches get a picture of their own.
const mostPlots = 8

func newPage(r *runs.Result, o Options) *page {
	t := newTeller(o)
	p := &page{Style: template.CSS(styleText), Language: o.Language, Bike: r.Ride.Bike, Invented: o.Invented,
		Title: o.Name, Sections: o.Sections, Facts: t.head(r, o), Best: t.bests(r)}
	if p.Title == "" {
		p.Title = t.text("title")
	}
	if o.Program != "" {
		p.WrittenBy = t.fill("written_by", finding.Text("program", o.Program))
	}
	p.Compared, p.Differences = t.comparisons(r), t.differenceTable(r)
	p.Powers, p.PowerPlot = t.powers(r), figure.Powers(r.Powers, t.book)
	for _, m := range o.Remarks {
		p.Remarks = append(p.Remarks, fact{Name: t.style.Moment(m.T - beginning(r)), Value: m.Text})
	}
	p.Loads, p.LoadMeaning = t.loads(r), t.loadMeaning(r)
	p.Wide, p.Narrow = figure.Ride(r, t.book, figure.Wide), figure.Ride(r, t.book, figure.Narrow)
	p.Launches, p.LaunchPlots = t.launchTables(r.Runs), t.launchPlots(r)
	p.RollOns, p.Stops = t.rollOnTable(r), t.stopTable(r.Runs)
	p.Passes, p.OtherPasses = t.passTable(r.Passes), t.otherPasses(r)
	p.Runs = t.runRows(r)
	p.Found = t.found(p.Runs)
	for _, name := range r.Defaults {
		p.Defaults = append(p.Defaults, t.book.Default(name, r.Ride))
	}
	p.Warnings = t.book.Sentences(r.Warnings)
	for _, n := range r.Notes {
		p.Notes = append(p.Notes, t.book.NoteSentence(n))
	}
	p.Protocol = t.protocol(o.Test)
	if r.Track != nil {
		p.Notes = append(p.Notes, t.book.Sentences(r.Track.Notes)...)
	}
	return p
}

// launchPlots draws the first of the launches that count.
func (t *teller) launchPlots(r *runs.Result) []figure.Figure {
	var out []figure.Figure
	for _, run := range r.Runs {
		if run.Kind == runs.Launch && run.Accepted() && len(out) < mostPlots {
			if f := figure.Launch(r, run, t.book); !f.Empty() {
				out = append(out, f)
			}
		}
	}
	return out
}

// found describes the number of runs, and of rejected ones.
func (t *teller) found(rows []runRow) string {
	rejected := 0
	for _, row := range rows {
		if !row.Accepted {
			rejected++
		}
	}
	if rejected == 0 {
		return t.fill("found", finding.Count("n", len(rows)))
	}
	return t.fill("found_rejected", finding.Count("n", len(rows)), finding.Count("rejected", rejected))
}

// beginning is when the ride begins, on the log's clock.
func beginning(r *runs.Result) float64 {
	if r.Track == nil || len(r.Track.T) == 0 {
		return 0
	}
	return r.Track.T[0]
}

// head describes the ride, for the head of the page.
func (t *teller) head(r *runs.Result, o Options) []fact {
	var out []fact
	add := func(key, value string) {
		if value != "" && value != "–" {
			out = append(out, fact{t.text(key), value})
		}
	}
	add("bike", r.Ride.Bike)
	if !o.Started.IsZero() {
		add("date", t.date(o.Started))
	}
	if tr := r.Track; tr != nil && len(tr.T) > 1 {
		last, top := len(tr.T)-1, 0.0
		for _, v := range tr.V {
			top = max(top, v)
		}
		add("lasted", shown.Duration(tr.T[last]-tr.T[0]))
		add("distance", t.style.Number(shown.Journey, tr.S[last]-tr.S[0], 1))
		add("fastest", t.style.Number(shown.Speed, top, 0))
		lag := finding.Time("lag", tr.Lag.Seconds)
		if tr.Lag.Found {
			add("lag", t.fill("lag_found", lag.With(tr.Lag.SE)))
		} else {
			add("lag", t.fill("lag_assumed", lag))
		}
	}
	add("mass", t.mass(r))
	add("setups", strings.Join(setupNames(r), ", "))
	return out
}

// date is a date with the time of day, in the way of the language.
func (t *teller) date(at time.Time) string {
	if t.style.Language == shown.German {
		return at.Format("2.1.2006, 15:04 MST")
	}
	return at.Format("2 January 2006, 15:04 MST")
}

func (t *teller) mass(r *runs.Result) string {
	if sd := r.Ride.MassSD; sd > 0 {
		return t.style.PlusMinus(shown.Mass, r.Ride.Mass, shown.Normal95*sd)
	}
	return t.style.Number(shown.Mass, r.Ride.Mass, 0)
}

func setupNames(r *runs.Result) []string {
	var out []string
	seen := map[string]bool{"": true}
	for _, run := range r.Runs {
		if !seen[run.Setup] {
			seen[run.Setup] = true
			out = append(out, run.Setup)
		}
	}
	return out
}
