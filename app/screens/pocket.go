package screens

import (
	"image/color"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// Pocket draws the screen of a phone that records in a pocket: dark, and nothing
// on it responds but the one place that is held to unlock it.
func (s Screens) Pocket(v view.Riding, unlock func()) fyne.CanvasObject {
	s.Kit.Palette = kit.Dark()
	s.Kit.Palette.Ground = color.NRGBA{A: 255}
	k, t := s.Kit, s.C.Book.Pocket
	state := k.Column(6, k.Text(kit.Heading, kit.Muted, t.Title).Centred(), k.Text(kit.Body, kit.Muted, t.Hint).Centred())
	parts := append([]fyne.CanvasObject{k.Space(0), k.Spare(state)}, s.troubles(v, RidingActions{})...)
	lock := k.Column(8, k.Middle(k.Icon(kit.Lock, kit.Muted, 40)), k.Text(kit.Strong, kit.Muted, t.Unlock).Centred())
	return k.Spread(append(parts, k.Holdable(k.Inset(24, 24, lock), t.Unlock, unlock), k.Space(0))...)
}

// intoPocket is the button that opens the pocket screen, if there is one.
func (s Screens) intoPocket(on RidingActions) []fyne.CanvasObject {
	if on.Pocket == nil {
		return nil
	}
	return []fyne.CanvasObject{s.Kit.Button(kit.Usual, kit.Lock, s.C.Book.Pocket.Enter, on.Pocket)}
}

// missing says which part of the ride is missing; it can be dismissed while the
// bike stands.
func (s Screens) missing(v view.Riding, on RidingActions) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Pocket
	var ways []fyne.CanvasObject
	if on.Read != nil && !v.Locked {
		ways = append(ways, k.Button(kit.Usual, kit.None, t.Read, on.Read))
	}
	words := []fyne.CanvasObject{k.Text(kit.Title, kit.Plain, v.Missing), k.Text(kit.Body, kit.Plain, v.MissingWhy)}
	if v.Standing {
		words = append(words, k.Text(kit.Body, kit.Plain, t.Kept))
	}
	return k.Notice(kit.Caution, kit.Warn, "", "", append(words, ways...)...)
}
