// Package screens draws the views of package view. Each function makes one
// screen from a view and the actions that its buttons call; it keeps no state
// and knows neither recorder nor storage. Nothing here needs a window system,
// so every screen can be drawn, and compared with its golden picture, anywhere.
package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
	"stillair/runs"
)

// Screens makes screens in one look and one language.
type Screens struct {
	Kit kit.Kit
	C   view.Context
}

// Place is one of the tabs at the bottom.
type Place int

// The tabs, in order.
const (
	PlaceRide Place = iota
	PlaceResults
	PlaceBikes
	PlaceCompare
	PlaceMore
)

// WithTabs puts the bar under a screen; bar is a strip above it, or nil.
func (s Screens) WithTabs(page fyne.CanvasObject, at Place, pick func(Place), bar fyne.CanvasObject) fyne.CanvasObject {
	t := s.C.Book.Common
	tabs := s.Kit.Tabs([]kit.Tab{
		{Symbol: kit.RideTab, Label: t.TabRide}, {Symbol: kit.ListTab, Label: t.TabResults}, {Symbol: kit.BikeTab, Label: t.TabBikes},
		{Symbol: kit.PairTab, Label: t.TabCompare}, {Symbol: kit.MoreTab, Label: t.TabMore},
	}, int(at), func(i int) { pick(Place(i)) })
	return s.Kit.Frame(page, bar, tabs)
}

// UndoBar is a strip with a button to undo something.
func (s Screens) UndoBar(what string, undo func()) fyne.CanvasObject {
	return s.Kit.Bar(kit.Grow(s.Kit.Text(kit.Body, kit.Plain, what), 1),
		s.Kit.Button(kit.Quiet, kit.None, s.C.Book.Common.Undo, undo))
}

// grade returns the symbol and ink of a grade.
func grade(g view.Grade) (kit.Symbol, kit.Ink) {
	switch g {
	case view.Fine:
		return kit.Tick, kit.Good
	case view.Doubtful:
		return kit.Caution, kit.Warn
	case view.Bad:
		return kit.Cross, kit.Warn
	case view.Absent:
		return kit.Missing, kit.Muted
	}
	return kit.Wait, kit.Muted
}

func kindSymbol(k runs.Kind) kit.Symbol {
	switch k {
	case runs.Launch:
		return kit.SLaunch
	case runs.RollOn:
		return kit.SRollOn
	case runs.Pull:
		return kit.SPull
	case runs.CoastDown:
		return kit.SCoast
	}
	return kit.SStop
}

// caption is the heading of a part of a screen.
func (s Screens) caption(text string) fyne.CanvasObject {
	return s.Kit.Inset(0, 2, s.Kit.Text(kit.Heading, kit.Plain, text))
}

// small is a paragraph in small type between cards.
func (s Screens) small(text string) fyne.CanvasObject {
	if text == "" {
		return nil
	}
	return s.Kit.Inset(0, 2, s.Kit.Text(kit.Small, kit.Muted, text))
}

// into is a row that opens another screen: a symbol, a title, a text below it.
func (s Screens) into(symbol kit.Symbol, title, words string, tapped func()) fyne.CanvasObject {
	return s.Kit.Touchable(s.Kit.ListRow(s.intoBody(symbol, title, words)), title+", "+words, tapped)
}

func (s Screens) intoBody(symbol kit.Symbol, title, words string, more ...fyne.CanvasObject) fyne.CanvasObject {
	k := s.Kit
	text := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, title)}
	if words != "" {
		text = append(text, k.Text(kit.Small, kit.Muted, words))
	}
	text = append(text, more...)
	parts := []fyne.CanvasObject{kit.Grow(k.Column(1, text...), 1), k.Icon(kit.Forward, kit.Muted, 20)}
	if symbol != kit.None {
		parts = append([]fyne.CanvasObject{k.Icon(symbol, kit.Accent, 28)}, parts...)
	}
	return k.Row(14, kit.Centre, parts...)
}
