package report

import (
	"fmt"
	"slices"
	"strings"

	"stillair/export/shown"
	"stillair/runs"
	"stillair/sensors/finding"
)

// markOrder is the order in which a launch passes its marks, as riders read
// them.
var markOrder = []string{"60 ft", "0-60 km/h", "0-60 mph", "0-100 km/h", "330 ft", "1/8 mile", "0-100 mph", "1000 ft", "1/4 mile", "1 km"}

// mostAbreast is how many launches fit beside each other on paper.
const mostAbreast = 5

// launchTables has the accepted launches, spread evenly over as many tables as it takes
// for them to fit beside each other.
func (t *teller) launchTables(all []runs.Run) (out []table) {
	var launches []runs.Run
	for _, r := range all {
		if r.Kind == runs.Launch && r.Accepted() {
			launches = append(launches, r)
		}
	}
	tables := max(1, (len(launches)+mostAbreast-1)/mostAbreast)
	abreast := max(1, (len(launches)+tables-1)/tables)
	for some := range slices.Chunk(launches, abreast) {
		if made := t.launchTable(some); !made.Empty() {
			out = append(out, made)
		}
	}
	return out
}

// launchTable has a row for each mark and a column for each launch: after the rollout,
// and from first movement.
func (t *teller) launchTable(launches []runs.Run) table {
	out := table{Header: []string{t.text("mark")}}
	reached := map[string]bool{}
	for _, r := range launches {
		out.Header = append(out.Header, t.fill("run_seconds", finding.Count("run", r.ID)))
		for _, m := range r.Marks {
			reached[m.Name] = true
		}
	}
	for _, name := range markOrder {
		if !reached[name] {
			continue
		}
		row := []string{name}
		for _, r := range launches {
			row = append(row, t.launchCell(r, name))
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// launchCell is the text of one mark of one launch; its lines are separated by
// "\n".
func (t *teller) launchCell(r runs.Run, name string) string {
	i := slices.IndexFunc(r.Marks, func(m runs.Mark) bool { return m.Name == name })
	if i < 0 {
		return "–"
	}
	m := r.Marks[i]
	time, rolledOut := m.Headline()
	lines := []string{t.seconds(time)}
	if rolledOut {
		lines = append(lines, t.text("moving")+" "+t.seconds(m.Time))
	}
	if m.Speed.Known() {
		lines = append(lines, t.fill("at", finding.Speed("speed", m.Speed.X)))
	}
	return strings.Join(lines, "\n")
}

// rollOnTable has a row for each accepted roll-on and a column for each pair of
// speeds.
func (t *teller) rollOnTable(r *runs.Result) table {
	all := r.Runs
	var names []string
	for _, run := range all {
		for _, m := range run.Marks {
			if run.Kind == runs.RollOn && run.Accepted() && !slices.Contains(names, m.Name) {
				names = append(names, m.Name)
			}
		}
	}
	out := table{Header: append([]string{t.text("run")}, names...)}
	for _, run := range all {
		if run.Kind != runs.RollOn || !run.Accepted() || len(run.Marks) == 0 {
			continue
		}
		row := []string{fmt.Sprint(run.ID)}
		if heading := t.style.Heading(run.BearingDeg); heading != "–" {
			row[0] += ", " + strings.ReplaceAll(heading, " ", "\u00a0")
		}
		if gear := r.Gear(run); gear != "" {
			row[0] += ", " + strings.ReplaceAll(t.fill("gear", finding.Text("gear", gear)), " ", "\u00a0")
		}
		for _, name := range names {
			cell := "–"
			for _, m := range run.Marks {
				if m.Name == name {
					cell = t.seconds(m.Time) + " s"
				}
			}
			row = append(row, cell)
		}
		out.Rows = append(out.Rows, row)
	}
	return out
}

// stopTable has a row for each mark of each accepted stop.
func (t *teller) stopTable(all []runs.Run) table {
	out := table{Header: []string{t.text("run"), t.text("speed"), t.text("time"), t.text("way")}}
	for _, r := range all {
		if r.Kind != runs.Stop || !r.Accepted() {
			continue
		}
		for _, m := range r.Marks {
			out.Rows = append(out.Rows, []string{fmt.Sprint(r.ID), m.Name, t.seconds(m.Time) + " s", t.style.PlusMinus(shown.Distance, m.Distance.X, half(m.Distance))})
		}
	}
	return out
}

// runRow is one run in the list of all.
type runRow struct {
	ID        int
	Kind      string
	Setup     string
	When      string
	Speeds    string
	Heading   string
	Accepted  bool
	Outcome   string   // in a word or two
	Sentences []string // reasons or cautions
	Pair      string
}

func (t *teller) runRows(r *runs.Result) []runRow {
	start := beginning(r)
	unit := t.style.Unit(shown.Speed)
	var out []runRow
	for _, run := range r.Runs {
		row := runRow{ID: run.ID, Kind: t.book.Kind(run.Kind), Setup: run.Setup, When: t.style.Moment(run.Start - start),
			Speeds:   fmt.Sprintf("%s → %s %s", t.style.Fixed(run.FromMPS/unit.SI, 0), t.style.Fixed(run.ToMPS/unit.SI, 0), unit.Name),
			Accepted: run.Accepted(), Outcome: t.text("counts")}
		if run.Pair > 0 {
			row.Pair = t.fill("pair", finding.Count("pair", run.Pair))
		}
		if h := t.style.Heading(run.BearingDeg); h != "–" {
			row.Heading = h
		}
		switch {
		case !run.Accepted():
			row.Outcome, row.Sentences = t.text("rejected"), t.book.Sentences(run.Reasons)
		case len(run.Cautions) > 0:
			row.Outcome, row.Sentences = t.text("counts_caution"), t.book.Sentences(run.Cautions)
		}
		out = append(out, row)
	}
	return out
}
