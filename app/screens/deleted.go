package screens

import (
	"fmt"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/view"
)

// DeletedActions are the actions for a deleted ride.
type DeletedActions struct {
	Back              func()
	BringBack, Remove func(id string)
}

// Deleted lists the deleted rides that can still be restored; sure is the ID of
// the one whose permanent removal has to be confirmed.
func (s Screens) Deleted(rows []view.DeletedRow, sure string, on DeletedActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Deleted
	body := []fyne.CanvasObject{s.small(fmt.Sprintf(t.Hint, int(store.KeepDeleted.Hours()/24)))}
	if len(rows) == 0 {
		body = append(body, k.Card(k.Text(kit.Body, kit.Plain, t.Empty)))
	}
	for _, r := range rows {
		words := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, r.Title)}
		for _, w := range []string{r.When, r.Bike, r.Length, r.Left} {
			if w != "" {
				words = append(words, k.Text(kit.Small, kit.Muted, w))
			}
		}
		remove, rank := t.Remove, kit.Quiet
		if r.ID == sure {
			remove, rank = t.Sure, kit.Usual
		}
		parts := []fyne.CanvasObject{k.Column(1, words...), k.Button(kit.Usual, kit.None, t.BringBack, func() { on.BringBack(r.ID) }),
			k.Button(rank, kit.Bin, remove, func() { on.Remove(r.ID) })}
		if r.ID == sure {
			parts = append(parts, k.Text(kit.Small, kit.Warn, t.SureHint))
		}
		body = append(body, k.Card(parts...))
	}
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, on.Back), k.Column(12, body...), nil)
}
