package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// passes draws flying passes, with their caution.
func (s Screens) passes(rows []view.PassRow) []fyne.CanvasObject {
	if len(rows) == 0 {
		return nil
	}
	k, t := s.Kit, s.C.Book.Passes
	var parts []fyne.CanvasObject
	for _, r := range rows {
		lines := []fyne.CanvasObject{s.effectLine(r.EffectLine)}
		if r.Reason != "" {
			why := t.NotCounted + ": " + r.Reason
			lines = append(lines, k.Row(6, kit.Top, k.Inset(2, 0, k.Icon(kit.Cross, kit.Warn, 15)), kit.Grow(k.Text(kit.Small, kit.Plain, why), 1)).Spoken(why))
		}
		parts = append(parts, k.Column(2, lines...))
	}
	return []fyne.CanvasObject{s.caption(t.Title), k.Card(parts...), s.small(t.Hint + " " + s.C.Names().PassesNote()), s.small(s.C.Names().TopSpeed() + " " + t.Safety)}
}
