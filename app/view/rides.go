package view

import (
	"fmt"
	"strings"

	"stillair/app/store"
)

// RideRow is one recording in the list.
type RideRow struct {
	ID     string
	Title  string // the rider's name for it, or the date
	When   string // the date if Title is a name
	Bike   string
	Length string
	Found  string
	CutOff string // empty: it ended normally
}

// Rides makes the list of recordings.
func (c Context) Rides(list []store.Session) []RideRow {
	var rows []RideRow
	for _, s := range list {
		rows = append(rows, c.RideRow(s))
	}
	return rows
}

// RideRow makes one row of the list.
func (c Context) RideRow(s store.Session) RideRow {
	a := s.About
	r := RideRow{ID: s.ID, Title: c.Date(a.Started.Local()), Length: c.rideLength(a), Found: c.found(a)}
	if a.Name != "" {
		r.Title, r.When = a.Name, r.Title
	}
	r.Bike = a.Bike
	if a.Setup != "" {
		r.Bike = join(" · ", a.Bike, a.Setup)
	}
	if a.Stage == store.CutOff {
		r.CutOff = c.Book.Rides.CutOff
	}
	return r
}

func (c Context) rideLength(a store.About) string {
	if a.Seconds <= 0 {
		return ""
	}
	if a.Metres <= 0 {
		return c.Duration(a.Seconds)
	}
	return fmt.Sprintf(c.Book.Rides.Length, c.Duration(a.Seconds), c.Length(a.Metres))
}

func (c Context) found(a store.About) string {
	if a.Measured.IsZero() {
		return c.Book.Rides.NotAnalysed
	}
	t, f := c.Book.Rides, a.Found
	var parts []string
	add := func(n int, one, many string) {
		switch {
		case n == 1:
			parts = append(parts, one)
		case n > 1:
			parts = append(parts, fmt.Sprintf(many, n))
		}
	}
	add(f.Launches, t.OneLaunch, t.Launches)
	add(f.RollOns, t.OneRollOn, t.RollOns)
	add(f.CoastDowns, t.OneCoastDown, t.CoastDowns)
	add(f.Pairs, t.OnePair, t.Pairs)
	add(f.Passes, c.Book.Passes.OneFound, c.Book.Passes.Found)
	if parts == nil {
		return t.NothingFound
	}
	return strings.Join(parts, " · ")
}

func join(sep string, parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, sep)
}
