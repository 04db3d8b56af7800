package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Sizes that all screens share, in Fyne's units.
const (
	corner    = 10 // radius of cards and buttons
	gutter    = 16 // between the edge of the screen and its content
	glove     = 56 // minimum height of anything to be touched
	gloveMain = 76 // of the one button that matters
)

func plate(fill, line color.Color, radius float32) *canvas.Rectangle {
	r := canvas.NewRectangle(fill)
	r.CornerRadius = radius
	if line != nil {
		r.StrokeColor, r.StrokeWidth = line, 1
	}
	return r
}

// Card groups related objects on their own surface.
func (k Kit) Card(objects ...fyne.CanvasObject) *Box {
	line := color.Color(k.Palette.Line)
	if !k.Palette.Dark {
		line = nil
	}
	return newBox(inset{v: 14, h: gutter}, plate(k.Palette.Surface, line, corner), k.Column(10, objects...))
}

// List is a card of rows with thin lines between.
func (k Kit) List(rows ...fyne.CanvasObject) *Box {
	var with []fyne.CanvasObject
	for i, r := range rows {
		if i > 0 {
			with = append(with, k.Inset(0, gutter, k.Rule()))
		}
		with = append(with, r)
	}
	return newBox(inset{}, plate(k.Palette.Surface, nil, corner), k.Column(0, with...))
}

// Rule is a thin horizontal line.
func (k Kit) Rule() *Box { return k.Sized(0, 1, canvas.NewRectangle(k.Palette.Line)) }

// ListRow is a row of a List, high enough for a glove.
func (k Kit) ListRow(o fyne.CanvasObject) *Box {
	return newBox(inset{v: 11, h: gutter, least: glove}, o)
}

// Notice is a card that must be noticed: a symbol next to the words, and a frame.
func (k Kit) Notice(symbol Symbol, ink Ink, title, text string, more ...fyne.CanvasObject) *Box {
	var words []fyne.CanvasObject
	if title != "" {
		words = append(words, k.Text(Strong, Plain, title))
	}
	if text != "" {
		words = append(words, k.Text(Body, Plain, text))
	}
	body := k.Row(12, Top, k.Icon(symbol, ink, 24), Grow(k.Column(4, append(words, more...)...), 1))
	return newBox(inset{v: 14, h: 14}, frame(k.Palette.Surface, k.Palette.Of(ink)), body)
}

func frame(fill, line color.Color) *canvas.Rectangle {
	r := plate(fill, line, corner)
	r.StrokeWidth = 2
	return r
}
