package view

import (
	"fmt"
	"math"
	"strings"

	"stillair/app/relabel"
	"stillair/export/shown"
)

// Relabel is the screen of the setups of a ride.
type Relabel struct {
	Setups []RelabelRow
	Halts  []string
}

// RelabelRow is one setup; Ask is an open question about it.
type RelabelRow struct{ Name, Detail, Ask string }

// Relabel makes the list of the setups of a ride.
func (c Context) Relabel(table *relabel.Table) Relabel {
	t := c.Book.Relabel
	since := func(at float64) string { // whole seconds, as they are entered
		whole, _ := strings.CutSuffix(shown.Moment(math.Round(at-table.From)), ".0")
		return whole
	}
	var v Relabel
	for i, s := range table.Setups {
		weight := t.NoWeight
		switch {
		case !math.IsNaN(s.Mass):
			weight = c.Mass(s.Mass)
		case !math.IsNaN(table.Mass):
			weight = fmt.Sprintf(t.AsRide, c.Mass(table.Mass))
		}
		row := RelabelRow{Name: c.setupName(s.Name), Detail: join(" · ", fmt.Sprintf(t.Span, since(s.From), since(table.End(i))), weight, s.Tyres, s.Notes)}
		if table.Weighs(i) {
			row.Ask = t.AskWeight
		}
		v.Setups = append(v.Setups, row)
	}
	for _, h := range table.Halts {
		v.Halts = append(v.Halts, fmt.Sprintf(t.Halt, since(h.From), since(h.To)))
	}
	return v
}

// RelabelFault says why a time is not accepted.
func (c Context) RelabelFault(err error) string {
	t := c.Book.Relabel
	switch err {
	case relabel.ErrNoTime:
		return t.NoTime
	case relabel.ErrOutside:
		return t.Outside
	}
	return t.Taken
}
