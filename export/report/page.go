package report

import (
	"html/template"
	"strings"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
)

// page is what the template shows.
type page struct {
	Style        template.CSS
	Title, Bike  string
	Facts        []fact
	Invented     bool
	Program      string
	Best         []best
	Compared     []comparison
	Differences  table
	Loads        []load
	LoadMeaning  []string
	Wide, Narrow figure.Figure
	Launches     table
	LaunchPlots  []figure.Figure
	Powers       []power
	PowerPlot    figure.Figure
	RollOns      table
	Stops        table
	Remarks      []fact
	Sections     []Section
	Runs         []runRow
	Rejected     int
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
	p := &page{Style: template.CSS(styleText), Bike: r.Ride.Bike, Invented: o.Invented, Program: o.Program,
		Title: o.Name, Sections: o.Sections, Facts: facts(r, o), Best: bests(r, o.Units)}
	if p.Title == "" {
		p.Title = "A ride measured"
	}
	p.Compared, p.Differences = comparisons(r, o.Units), differenceTable(r)
	p.Powers, p.PowerPlot = powers(r, o.Units), figure.Powers(r.Powers, o.Units)
	for _, m := range o.Remarks {
		p.Remarks = append(p.Remarks, fact{Name: shown.Moment(m.T - beginning(r)), Value: m.Text})
	}
	p.Loads = loads(r, o.Units)
	p.LoadMeaning = loadMeaning(r)
	p.Wide, p.Narrow = figure.Ride(r, o.Units, figure.Wide), figure.Ride(r, o.Units, figure.Narrow)
	p.Launches = launchTable(r.Runs, o.Units)
	for _, run := range r.Runs {
		if run.Kind == runs.Launch && run.Accepted() && len(p.LaunchPlots) < mostPlots {
			if f := figure.Launch(r, run, o.Units); !f.Empty() {
				p.LaunchPlots = append(p.LaunchPlots, f)
			}
		}
	}
	p.RollOns = rollOnTable(r)
	p.Stops = stopTable(r.Runs, o.Units)
	p.Runs = runRows(r, o.Units)
	for _, row := range p.Runs {
		if !row.Accepted {
			p.Rejected++
		}
	}
	for _, name := range r.Defaults {
		p.Defaults = append(p.Defaults, shown.Default(name, r.Ride, o.Units))
	}
	for _, text := range r.Warnings {
		p.Warnings = append(p.Warnings, words.ForMachines().Sentence(text))
	}
	for _, n := range r.Notes {
		p.Notes = append(p.Notes, words.ForMachines().Note(n))
	}
	p.Protocol = newTeller(o).protocol(o.Test)
	if r.Track != nil {
		for _, text := range r.Track.Notes {
			p.Notes = append(p.Notes, words.ForMachines().Sentence(text))
		}
	}
	return p
}

// beginning is when the ride begins, on the log's clock.
func beginning(r *runs.Result) float64 {
	if r.Track == nil || len(r.Track.T) == 0 {
		return 0
	}
	return r.Track.T[0]
}

// facts are what the ride was, for the head of the page.
func facts(r *runs.Result, o Options) []fact {
	var out []fact
	add := func(name, value string) {
		if value != "" && value != "–" {
			out = append(out, fact{name, value})
		}
	}
	add("Bike", r.Ride.Bike)
	if !o.Started.IsZero() {
		add("Date", o.Started.Format("2 January 2006, 15:04 MST"))
	}
	if t := r.Track; t != nil && len(t.T) > 1 {
		last, top := len(t.T)-1, 0.0
		for _, v := range t.V {
			top = max(top, v)
		}
		add("Lasted", shown.Duration(t.T[last]-t.T[0]))
		add("Distance", distanceWords(t.S[last]-t.S[0], o.Units))
		add("Fastest", o.Units.Number(shown.Speed, top, 0))
		if t.Lag.Found {
			add("Receiver's lag", shown.PlusMinus(t.Lag.Seconds, shown.Normal95*t.Lag.SE)+" s, found from the ride")
		} else {
			add("Receiver's lag", shown.Fixed(t.Lag.Seconds, 2)+" s, assumed: the ride says too little")
		}
	}
	add("Mass as ridden", massWords(r, o.Units))
	add("Setups", strings.Join(setupNames(r), ", "))
	return out
}

func massWords(r *runs.Result, u shown.System) string {
	if sd := r.Ride.MassSD; sd > 0 {
		return u.PlusMinus(shown.Mass, r.Ride.Mass, shown.Normal95*sd)
	}
	return u.Number(shown.Mass, r.Ride.Mass, 0)
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

// setupWords names a setup, also one without a name.
func setupWords(name string) string {
	if name == "" {
		return "as ridden"
	}
	return name
}
