package screens

import (
	"fmt"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// RidesActions are the actions of the list of recordings.
type RidesActions struct {
	Open          func(id string)
	Demo, Deleted func()
	Season        func() // nil: there are no rides for it
}

// Rides draws the list of recordings; deleted is how many more can be restored.
func (s Screens) Rides(rows []view.RideRow, deleted int, on RidesActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Rides
	var body []fyne.CanvasObject
	if len(rows) == 0 {
		body = append(body, k.Card(k.Text(kit.Heading, kit.Plain, t.Empty), k.Text(kit.Body, kit.Muted, t.EmptyHint)))
	}
	if on.Season != nil {
		body = append(body, k.List(s.into(kit.Season, s.C.Book.Season.Title, s.C.Book.Season.Open, on.Season)))
	}
	var list []fyne.CanvasObject
	for _, r := range rows {
		list = append(list, s.rideRow(r, on.Open))
	}
	if list != nil {
		body = append(body, k.List(list...))
	}
	more := []fyne.CanvasObject{s.into(kit.ListTab, t.Demo, "", on.Demo)}
	if deleted > 0 {
		d := s.C.Book.Deleted
		more = append(more, s.into(kit.Bin, d.Title, fmt.Sprintf(d.Open, deleted), on.Deleted))
	}
	body = append(body, k.List(more...))
	return k.NewPage(k.Head(t.Title, "", nil), k.Column(14, body...), nil)
}

func (s Screens) rideRow(r view.RideRow, open func(string)) fyne.CanvasObject {
	k := s.Kit
	lines := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, r.Title)}
	for _, words := range []string{r.When, r.Bike} {
		if words != "" {
			lines = append(lines, k.Text(kit.Small, kit.Muted, words))
		}
	}
	if r.CutOff != "" {
		lines = append(lines, k.Row(6, kit.Centre, k.Icon(kit.Caution, kit.Warn, 16), kit.Grow(k.Text(kit.Small, kit.Warn, r.CutOff), 1)))
	}
	lines = append(lines, k.Text(kit.Body, kit.Plain, r.Found))
	if r.Length != "" {
		lines = append(lines, k.Text(kit.Small, kit.Muted, r.Length))
	}
	row := k.ListRow(k.Row(12, kit.Centre, kit.Grow(k.Column(2, lines...), 1), k.Icon(kit.Forward, kit.Muted, 20)))
	return k.Touchable(row, r.Title+", "+r.Found, func() { open(r.ID) })
}
