package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Frame gives the first object all the height that those below it leave.
func (k Kit) Frame(page fyne.CanvasObject, below ...fyne.CanvasObject) *Box {
	return newBox(frameLayout{}, append([]fyne.CanvasObject{page}, below...)...)
}

type frameLayout struct{}

func (frameLayout) height(objects []fyne.CanvasObject, width float32) float32 {
	h := float32(0)
	for _, o := range objects {
		h += HeightOf(o, width)
	}
	return h
}

func (frameLayout) width(objects []fyne.CanvasObject) float32 { return WidthOf(objects[0]) }

func (frameLayout) place(objects []fyne.CanvasObject, size fyne.Size) {
	bottom := size.Height
	for i := len(objects) - 1; i > 0; i-- {
		h := HeightOf(objects[i], size.Width)
		bottom -= h
		put(objects[i], 0, bottom, size.Width, h)
	}
	put(objects[0], 0, 0, size.Width, max(0, bottom))
}

// Spread fills a whole screen and distributes the free height between its objects.
func (k Kit) Spread(objects ...fyne.CanvasObject) *Box {
	return newBox(cover{}, canvas.NewRectangle(k.Palette.Ground), newBox(spread{}, objects...))
}

// cover stacks its objects on top of each other, the last one inside the gutters.
type cover struct{}

func (cover) height(objects []fyne.CanvasObject, width float32) float32 {
	return HeightOf(objects[1], width-2*gutter) + 2*gutter
}
func (cover) width(objects []fyne.CanvasObject) float32 { return WidthOf(objects[1]) }
func (cover) place(objects []fyne.CanvasObject, size fyne.Size) {
	put(objects[0], 0, 0, size.Width, size.Height)
	put(objects[1], gutter, gutter, size.Width-2*gutter, size.Height-2*gutter)
}

type spread struct{}

func (spread) height(objects []fyne.CanvasObject, width float32) float32 {
	return column{}.height(objects, width)
}
func (spread) width(objects []fyne.CanvasObject) float32 { return column{}.width(objects) }
func (s spread) place(objects []fyne.CanvasObject, size fyne.Size) {
	s.fit(objects, size)
	shown := 0
	for _, o := range objects {
		if o.Visible() {
			shown++
		}
	}
	gap := (size.Height - s.height(objects, size.Width)) / float32(max(1, shown-1))
	column{gap: max(0, gap)}.place(objects, size)
}

// leastGap is kept between the objects of a spread as long as one can be left out.
const leastGap = 8

// fit leaves out as many of the objects that can be left out as do not fit, the last
// one first.
func (spread) fit(objects []fyne.CanvasObject, size fyne.Size) {
	for _, o := range objects {
		if isSpare(o) {
			o.Show()
		}
	}
	for i := len(objects) - 1; i >= 0; i-- {
		if isSpare(objects[i]) && (column{gap: leastGap}).height(objects, size.Width) > size.Height {
			objects[i].Hide()
		}
	}
}

// Spare marks an object of a spread that is left out where there is no room for it.
func (k Kit) Spare(o fyne.CanvasObject) *Box { return newBox(spare{}, o) }

type spare struct{ grow }

func isSpare(o fyne.CanvasObject) bool {
	b, ok := o.(*Box)
	if !ok {
		return false
	}
	_, ok = b.how.(spare)
	return ok
}

// Middle centres an object horizontally, at its natural width.
func (k Kit) Middle(o fyne.CanvasObject) *Box { return newBox(middle{}, o) }

// Bar is a strip above the tabs, for instance to undo something.
func (k Kit) Bar(objects ...fyne.CanvasObject) *Box {
	return newBox(inset{v: 4, h: gutter, least: glove}, canvas.NewRectangle(k.Palette.Sunk), k.Row(10, Centre, objects...))
}
