package view

import (
	"fmt"
	"math"

	"stillair/export/shown"
	"stillair/runs"
)

// StopRow is the shortest stopping distance from one speed.
type StopRow struct {
	Name    string
	Reading Reading
	Words   string // the number of stops
}

// stops are the shortest stopping distances from every initial speed, of the
// stops that count.
func (c Context) stops(all []runs.Run) []StopRow {
	var marks []runs.Mark
	for _, r := range all {
		if r.Kind == runs.Stop && r.Accepted() {
			marks = append(marks, r.Marks...)
		}
	}
	best, count := map[string]runs.Mark{}, map[string]int{}
	var order []string
	for _, m := range c.ownMarks(marks) {
		if math.IsNaN(m.Distance.X) {
			continue
		}
		if count[m.Name] == 0 {
			order = append(order, m.Name)
		}
		count[m.Name]++
		if had, ok := best[m.Name]; !ok || m.Distance.X < had.Distance.X {
			best[m.Name] = m
		}
	}
	var out []StopRow
	for _, name := range order {
		d := best[name].Distance
		row := StopRow{Name: c.markName(name), Reading: c.of(shown.Distance, d)}
		if count[name] > 1 {
			row.Words = fmt.Sprintf(c.Book.Power.StopRow, count[name])
		}
		out = append(out, row)
	}
	return out
}
