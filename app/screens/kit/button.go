package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
)

// Rank is the importance of a button on its screen.
type Rank int

// The ranks of a button.
const (
	Main  Rank = iota // the one thing to do here
	Usual             // a further action
	Quiet             // possible
)

// Button is a text in a touchable area. Symbol may be None.
func (k Kit) Button(rank Rank, symbol Symbol, label string, tapped func()) *Touch {
	ink, style, least := Accent, Strong, float32(glove)
	fill, line := color.Color(color.Transparent), color.Color(nil)
	switch rank {
	case Main:
		ink, style, least, fill = OnAccent, Heading, gloveMain, k.Palette.Accent
	case Usual:
		line, fill = k.Palette.Accent, k.Palette.Surface
	}
	words := k.Text(style, ink, label)
	var inner fyne.CanvasObject = words.Centred()
	if symbol != None {
		inner = k.centred(k.Icon(symbol, ink, 24*min(k.Scale, 1.3)), k.Text(style, ink, label))
	}
	b := newBox(inset{v: 8, h: gutter, least: least}, plate(fill, line, corner), inner)
	return k.Touchable(b, label, tapped)
}

// centred centres a symbol and a text in a row, as one unit.
func (k Kit) centred(symbol fyne.CanvasObject, words *Prose) *Box {
	return newBox(centre{10}, symbol, words)
}

type centre struct{ gap float32 }

func (c centre) textWidth(objects []fyne.CanvasObject, width float32) float32 {
	return min(WidthOf(objects[1]), width-WidthOf(objects[0])-c.gap)
}

func (c centre) height(objects []fyne.CanvasObject, width float32) float32 {
	return max(HeightOf(objects[0], width), HeightOf(objects[1], c.textWidth(objects, width)))
}

func (c centre) width(objects []fyne.CanvasObject) float32 {
	return WidthOf(objects[0]) + c.gap + WidthOf(objects[1])
}

func (c centre) place(objects []fyne.CanvasObject, size fyne.Size) {
	iw, tw := WidthOf(objects[0]), c.textWidth(objects, size.Width)
	ih, th := HeightOf(objects[0], iw), HeightOf(objects[1], tw)
	x := (size.Width - iw - c.gap - tw) / 2
	put(objects[0], x, (size.Height-ih)/2, iw, ih)
	put(objects[1], x+iw+c.gap, (size.Height-th)/2, tw, th)
}

// Switch offers a choice of one from a few; the chosen one is marked with a
// tick as well as by its background.
func (k Kit) Switch(options []string, chosen int, pick func(int)) *Box {
	cells := make([]fyne.CanvasObject, len(options))
	for i, o := range options {
		ink, fill := Plain, color.Color(color.Transparent)
		if i == chosen {
			ink, fill = OnAccent, k.Palette.Accent
		}
		var inner fyne.CanvasObject = k.Text(Body, ink, o).Centred()
		if i == chosen {
			inner = k.centred(k.Icon(Tick, ink, 16), k.Text(Strong, ink, o))
		}
		cell := newBox(inset{v: 4, h: 4, least: 48}, plate(fill, nil, corner-2), inner)
		cells[i] = k.Touchable(cell, o, func() { pick(i) }).Marked("radio", i == chosen)
	}
	return newBox(inset{v: 3, h: 3}, plate(k.Palette.Sunk, nil, corner), newBox(sideBySide{}, cells...))
}

// sideBySide shares the width between its objects in proportion to their needs;
// if they need more than there is, it stacks them.
type sideBySide struct{}

func (sideBySide) width(objects []fyne.CanvasObject) float32 { return row{}.width(objects) }

func (s sideBySide) height(objects []fyne.CanvasObject, width float32) float32 {
	h := float32(0)
	for _, o := range objects {
		h = max(h, HeightOf(o, WidthOf(o)))
	}
	if s.width(objects) > width {
		return h * float32(len(objects))
	}
	return h
}

func (s sideBySide) place(objects []fyne.CanvasObject, size fyne.Size) {
	if s.width(objects) > size.Width {
		column{}.place(objects, size)
		return
	}
	more, x := (size.Width-s.width(objects))/float32(len(objects)), float32(0)
	for _, o := range objects {
		w := WidthOf(o) + more
		put(o, x, 0, w, size.Height)
		x += w
	}
}
