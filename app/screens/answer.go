package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// answer shows whether two setups differ; a touch opens the whole comparison.
func (s Screens) answer(a view.Answer, open func()) fyne.CanvasObject {
	k := s.Kit
	parts := []fyne.CanvasObject{k.Row(8, kit.Centre, kit.Grow(k.Text(kit.Small, kit.Muted, a.Pair), 1), k.Icon(kit.Forward, kit.Muted, 20)), s.said(a.Said)}
	for _, m := range a.Means {
		parts = append(parts, k.Text(kit.Body, kit.Plain, m))
	}
	return k.Touchable(k.Card(parts...), a.Spoken(), open)
}

// said shows a verdict: an arrow for its direction, which is never good or bad,
// and below it, in words only, how certain it is.
func (s Screens) said(v view.Said) fyne.CanvasObject {
	k := s.Kit
	lead := []fyne.CanvasObject{kit.Grow(k.Text(kit.Heading, kit.Plain, v.Verdict), 1)}
	switch v.Direction {
	case view.More:
		lead = append([]fyne.CanvasObject{k.Icon(kit.Up, kit.Plain, 24)}, lead...)
	case view.Less:
		lead = append([]fyne.CanvasObject{k.Icon(kit.Down, kit.Plain, 24)}, lead...)
	}
	return k.Column(2, k.Row(10, kit.Centre, lead...), k.Text(kit.Body, kit.Muted, v.Certainty))
}
