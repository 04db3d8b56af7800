package report

import (
	"fmt"
	"slices"
	"strings"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
)

// markOrder is the order in which a launch passes its marks, as riders read
// them.
var markOrder = []string{"60 ft", "0-60 km/h", "0-60 mph", "0-100 km/h", "330 ft", "1/8 mile", "0-100 mph", "1000 ft", "1/4 mile", "1 km"}

// launchTable has a row for each mark and two columns for each accepted
// launch: after the rollout, and from first movement.
func launchTable(all []runs.Run, u shown.System) table {
	t := table{Header: []string{"mark"}}
	var launches []runs.Run
	reached := map[string]bool{}
	for _, r := range all {
		if r.Kind == runs.Launch && r.Accepted() {
			launches = append(launches, r)
			t.Header = append(t.Header, fmt.Sprintf("run %d, s", r.ID))
			for _, m := range r.Marks {
				reached[m.Name] = true
			}
		}
	}
	for _, name := range markOrder {
		if !reached[name] || len(launches) == 0 {
			continue
		}
		row := []string{name}
		for _, r := range launches {
			row = append(row, launchCell(r, name, u))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// launchCell says one mark of one launch; its lines are parted by "\n".
func launchCell(r runs.Run, name string, u shown.System) string {
	i := slices.IndexFunc(r.Marks, func(m runs.Mark) bool { return m.Name == name })
	if i < 0 {
		return "–"
	}
	m := r.Marks[i]
	time, rolledOut := m.Headline()
	lines := []string{seconds(time)}
	if rolledOut {
		lines = append(lines, "moving "+seconds(m.Time))
	}
	if m.Speed.Known() {
		lines = append(lines, "at "+u.Number(shown.Speed, m.Speed.X, 1))
	}
	return strings.Join(lines, "\n")
}

// rollOnTable has a row for each accepted roll-on and a column for each pair of
// speeds.
func rollOnTable(r *runs.Result) table {
	all := r.Runs
	var names []string
	for _, run := range all {
		for _, m := range run.Marks {
			if run.Kind == runs.RollOn && run.Accepted() && !slices.Contains(names, m.Name) {
				names = append(names, m.Name)
			}
		}
	}
	t := table{Header: append([]string{"run"}, names...)}
	for _, run := range all {
		if run.Kind != runs.RollOn || !run.Accepted() || len(run.Marks) == 0 {
			continue
		}
		row := []string{fmt.Sprint(run.ID)}
		if heading := shown.Heading(run.BearingDeg); heading != "–" {
			row[0] += ", " + strings.ReplaceAll(heading, " ", "\u00a0")
		}
		if gear := r.Gear(run); gear != "" {
			row[0] += ", gear\u00a0" + gear
		}
		for _, name := range names {
			cell := "–"
			for _, m := range run.Marks {
				if m.Name == name {
					cell = seconds(m.Time) + " s"
				}
			}
			row = append(row, cell)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// stopTable has a row for each mark of each accepted stop.
func stopTable(all []runs.Run, u shown.System) table {
	t := table{Header: []string{"run", "speed", "time", "distance"}}
	for _, r := range all {
		if r.Kind != runs.Stop || !r.Accepted() {
			continue
		}
		for _, m := range r.Marks {
			t.Rows = append(t.Rows, []string{fmt.Sprint(r.ID), m.Name, seconds(m.Time) + " s", u.PlusMinus(shown.Distance, m.Distance.X, half(m.Distance))})
		}
	}
	return t
}

// runRow is one run in the list of all.
type runRow struct {
	ID         int
	Kind       string
	Setup      string
	When       string
	Speeds     string
	Heading    string
	Accepted   bool
	Outcome    string   // in a word or two
	Sentences  []string // reasons or cautions
	PairNumber int
}

func runRows(r *runs.Result, u shown.System) []runRow {
	start := beginning(r)
	unit := u.First(shown.Speed)
	var out []runRow
	for _, run := range r.Runs {
		row := runRow{ID: run.ID, Kind: string(run.Kind), Setup: run.Setup, When: shown.Moment(run.Start - start),
			Speeds:   fmt.Sprintf("%s → %s %s", shown.Fixed(run.FromMPS/unit.SI, 0), shown.Fixed(run.ToMPS/unit.SI, 0), unit.Name),
			Accepted: run.Accepted(), Outcome: "counts", PairNumber: run.Pair}
		if h := shown.Heading(run.BearingDeg); h != "–" {
			row.Heading = h
		}
		switch {
		case !run.Accepted():
			row.Outcome, row.Sentences = "rejected", words.ForMachines().Sentences(run.Reasons)
		case len(run.Cautions) > 0:
			row.Outcome, row.Sentences = "counts, with a caution", words.ForMachines().Sentences(run.Cautions)
		}
		out = append(out, row)
	}
	return out
}
