package view

import (
	"fmt"
	"math"
	"time"

	"stillair/app/store"
)

// DeletedRow is a deleted ride that can still be restored.
type DeletedRow struct {
	RideRow
	Left string // how long it is kept, and how much space it takes
}

// Deleted makes the list of deleted rides as of now.
func (c Context) Deleted(list []store.Session, now time.Time) []DeletedRow {
	var rows []DeletedRow
	for _, s := range list {
		size := fmt.Sprintf(c.Book.Deleted.Size, c.Number(math.Max(0.1, float64(s.Bytes)/1e6), 1))
		rows = append(rows, DeletedRow{RideRow: c.RideRow(s), Left: join(" · ", c.daysLeft(s.About.Deleted, now), size)})
	}
	return rows
}

func (c Context) daysLeft(deleted, now time.Time) string {
	t := c.Book.Deleted
	switch days := int(math.Floor(deleted.Add(store.KeepDeleted).Sub(now).Hours() / 24)); {
	case days < 1:
		return t.Today
	case days == 1:
		return t.OneDay
	default:
		return fmt.Sprintf(t.Days, days)
	}
}
