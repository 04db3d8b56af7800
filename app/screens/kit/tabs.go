package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Tab is one entry of the bar.
type Tab struct {
	Symbol Symbol
	Label  string
}

// Tabs is the bar at the bottom. The current tab is marked by a line above it
// and by bold text as well as by colour.
func (k Kit) Tabs(tabs []Tab, chosen int, pick func(int)) *Box {
	cells := make([]fyne.CanvasObject, len(tabs))
	for i, t := range tabs {
		ink, style, bar := Muted, Small, k.Palette.Surface
		if i == chosen {
			ink, bar = Accent, k.Palette.Accent
		}
		words := k.tabLabel(tabs, style, ink, t.Label, i == chosen)
		mark := k.Sized(0, 4, canvas.NewRectangle(bar))
		cell := k.Column(5, mark, newBox(middle{}, k.Icon(t.Symbol, ink, 25)), words, k.Space(3))
		cells[i] = Grow(k.Touchable(cell, t.Label, func() { pick(i) }).Marked("page", i == chosen), 1)
	}
	line := canvas.NewRectangle(k.Palette.Line)
	return k.Column(0, k.Sized(0, 1, line),
		newBox(inset{}, canvas.NewRectangle(k.Palette.Surface), k.Row(0, Top, cells...)))
}

// tabLabel is one line, as small as the longest label of the bar has to be: the bar
// stays where it is at any text size, and its labels all have one size.
func (k Kit) tabLabel(tabs []Tab, s Style, ink Ink, text string, bold bool) *Box {
	t := canvas.NewText(text, k.Palette.Of(ink))
	t.TextStyle.Bold, t.Alignment = bold, fyne.TextAlignCenter
	return newBox(shrunk{k.points(s), tabs}, t)
}

// tabGap is the least space between the words of two tabs.
const tabGap = 5

type shrunk struct {
	size float32
	tabs []Tab
}

func (s shrunk) height([]fyne.CanvasObject, float32) float32 { return s.size * 1.3 }
func (s shrunk) width(objects []fyne.CanvasObject) float32   { return objects[0].MinSize().Width }
func (s shrunk) place(objects []fyne.CanvasObject, size fyne.Size) {
	t := objects[0].(*canvas.Text)
	widest := float32(0)
	for _, tab := range s.tabs {
		widest = max(widest, fyne.MeasureText(tab.Label, s.size, fyne.TextStyle{Bold: true}).Width)
	}
	t.TextSize = s.size
	if room := size.Width - tabGap; widest > room {
		t.TextSize = max(8, s.size*room/widest)
	}
	put(t, 0, 0, size.Width, size.Height)
}

// middle centres an object of fixed size horizontally.
type middle struct{}

func (middle) height(objects []fyne.CanvasObject, width float32) float32 {
	return HeightOf(objects[0], width)
}
func (middle) width(objects []fyne.CanvasObject) float32 { return WidthOf(objects[0]) }
func (middle) place(objects []fyne.CanvasObject, size fyne.Size) {
	w := min(size.Width, WidthOf(objects[0]))
	put(objects[0], (size.Width-w)/2, 0, w, size.Height)
}
