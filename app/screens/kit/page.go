package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Page is a whole screen: a fixed head, a body that scrolls, a fixed foot. Head
// and foot may be nil.
type Page struct {
	widget.BaseWidget
	ground     *canvas.Rectangle
	head, foot fyne.CanvasObject
	flow       *pageFlow
	scroll     *container.Scroll
}

// NewPage makes a page; body is placed between the gutters.
func (k Kit) NewPage(head, body, foot fyne.CanvasObject) *Page {
	p := &Page{ground: canvas.NewRectangle(k.Palette.Ground), head: head, foot: foot, flow: &pageFlow{}}
	p.scroll = container.NewVScroll(container.New(p.flow, newBox(inset{v: 6, h: gutter, below: gutter}, body)))
	p.ExtendBaseWidget(p)
	return p
}

// ScrollTo scrolls the body to a position, to restore it after rebuilding.
func (p *Page) ScrollTo(y float32) { p.scroll.ScrollToOffset(fyne.NewPos(0, y)) }

// Scrolled is how far the body is scrolled.
func (p *Page) Scrolled() float32 { return p.scroll.Offset.Y }

// pageFlow gives the scrolled content the width of the page.
type pageFlow struct{ width float32 }

func (f *pageFlow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(0, HeightOf(objects[0], f.width))
}

func (f *pageFlow) Layout(objects []fyne.CanvasObject, _ fyne.Size) {
	put(objects[0], 0, 0, f.width, HeightOf(objects[0], f.width))
}

// CreateRenderer implements fyne.Widget.
func (p *Page) CreateRenderer() fyne.WidgetRenderer { return pageRenderer{p} }

type pageRenderer struct{ p *Page }

func (r pageRenderer) Layout(size fyne.Size) {
	p := r.p
	put(p.ground, 0, 0, size.Width, size.Height)
	top, bottom := float32(0), size.Height
	if p.head != nil {
		top = HeightOf(p.head, size.Width)
		put(p.head, 0, 0, size.Width, top)
	}
	if p.foot != nil {
		h := HeightOf(p.foot, size.Width)
		bottom -= h
		put(p.foot, 0, bottom, size.Width, h)
	}
	p.flow.width = size.Width
	put(p.scroll, 0, top, size.Width, max(0, bottom-top))
}

func (r pageRenderer) MinSize() fyne.Size { return fyne.NewSize(240, 240) }

func (r pageRenderer) Refresh() {
	r.Layout(r.p.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r pageRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.p.ground, r.p.scroll}
	for _, o := range []fyne.CanvasObject{r.p.head, r.p.foot} {
		if o != nil {
			objects = append(objects, o)
		}
	}
	return objects
}

func (r pageRenderer) Destroy() {}

// Head is the top of a screen: its title and the way back. Back may be nil;
// more are buttons at its end.
func (k Kit) Head(title, backLabel string, back func(), more ...fyne.CanvasObject) *Box {
	var parts []fyne.CanvasObject
	if back != nil {
		parts = append(parts, k.SymbolButton(Back, backLabel, back))
	}
	style, side := Title, float32(gutter)
	if back != nil {
		style, side = Heading, 4
	}
	words := k.Text(style, Plain, title)
	words.level = 1
	parts = append(parts, Grow(words, 1))
	parts = append(parts, more...)
	if back == nil && k.Scale < 1.2 { // large words need the room
		parts = append(parts, k.breeze())
	}
	return newBox(inset{v: 6, h: side, least: 60}, canvas.NewRectangle(k.Palette.Ground), k.Row(4, Centre, parts...))
}

// SymbolButton is a touchable symbol; label is for screen readers.
func (k Kit) SymbolButton(s Symbol, label string, tapped func()) *Touch {
	return k.Touchable(newBox(fixed2{48, 26}, k.Icon(s, Accent, 26)), label, tapped)
}

// fixed2 is a square with something smaller centred in it.
type fixed2 struct{ field, inner float32 }

func (f fixed2) height([]fyne.CanvasObject, float32) float32 { return f.field }
func (f fixed2) width([]fyne.CanvasObject) float32           { return f.field }
func (f fixed2) place(objects []fyne.CanvasObject, size fyne.Size) {
	put(objects[0], (size.Width-f.inner)/2, (size.Height-f.inner)/2, f.inner, f.inner)
}

// Foot is the bottom of a screen, for its main button.
func (k Kit) Foot(objects ...fyne.CanvasObject) *Box {
	return newBox(inset{v: 10, h: gutter}, canvas.NewRectangle(k.Palette.Ground), k.Column(8, objects...))
}

// Hidden is the height of the body that does not fit.
func (p *Page) Hidden() float32 {
	return max(0, p.scroll.Content.MinSize().Height-p.scroll.Size().Height)
}
