package kit

import "fyne.io/fyne/v2"

// Column stacks objects, gap apart.
func (k Kit) Column(gap float32, objects ...fyne.CanvasObject) *Box {
	return newBox(column{gap}, objects...)
}

type column struct{ gap float32 }

func (c column) height(objects []fyne.CanvasObject, width float32) float32 {
	h, n := float32(0), 0
	for _, o := range objects {
		if o.Visible() {
			h += HeightOf(o, width)
			n++
		}
	}
	return h + c.gap*float32(max(0, n-1))
}

func (c column) width(objects []fyne.CanvasObject) float32 {
	w := float32(0)
	for _, o := range objects {
		w = max(w, WidthOf(o))
	}
	return w
}

func (c column) place(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		h := HeightOf(o, size.Width)
		put(o, 0, y, size.Width, h)
		y += h + c.gap
	}
}

func put(o fyne.CanvasObject, x, y, w, h float32) {
	o.Move(fyne.NewPos(x, y))
	o.Resize(fyne.NewSize(w, h))
}

// Grow marks an object of a row that takes a share of the remaining width.
func Grow(o fyne.CanvasObject, weight float32) *Box { return newBox(grow{weight}, o) }

type grow struct{ weight float32 }

func (grow) height(objects []fyne.CanvasObject, width float32) float32 {
	return HeightOf(objects[0], width)
}
func (grow) width(objects []fyne.CanvasObject) float32 { return WidthOf(objects[0]) }
func (grow) place(objects []fyne.CanvasObject, size fyne.Size) {
	put(objects[0], 0, 0, size.Width, size.Height)
}

// Upright is the vertical alignment of the objects in a row.
type Upright int

// The alignments.
const (
	Centre Upright = iota
	Top
	Fill
)

// Row places objects side by side, each at its natural width; those marked with
// Grow share the rest.
func (k Kit) Row(gap float32, stand Upright, objects ...fyne.CanvasObject) *Box {
	return newBox(row{gap, stand}, objects...)
}

type row struct {
	gap   float32
	stand Upright
}

func weightOf(o fyne.CanvasObject) float32 {
	if b, ok := o.(*Box); ok {
		if g, ok := b.how.(grow); ok {
			return g.weight
		}
	}
	return 0
}

func (r row) widths(objects []fyne.CanvasObject, width float32) []float32 {
	ws := make([]float32, len(objects))
	left, weights := width-r.gap*float32(max(0, len(objects)-1)), float32(0)
	for i, o := range objects {
		if w := weightOf(o); w > 0 {
			weights += w
			continue
		}
		ws[i] = min(WidthOf(o), max(left, 0))
		left -= ws[i]
	}
	for i, o := range objects {
		if w := weightOf(o); w > 0 {
			ws[i] = max(0, left*w/weights)
		}
	}
	return ws
}

func (r row) height(objects []fyne.CanvasObject, width float32) float32 {
	h := float32(0)
	for i, w := range r.widths(objects, width) {
		h = max(h, HeightOf(objects[i], w))
	}
	return h
}

func (r row) width(objects []fyne.CanvasObject) float32 {
	w := r.gap * float32(max(0, len(objects)-1))
	for _, o := range objects {
		w += WidthOf(o)
	}
	return w
}

func (r row) place(objects []fyne.CanvasObject, size fyne.Size) {
	x := float32(0)
	for i, w := range r.widths(objects, size.Width) {
		h, y := size.Height, float32(0)
		if r.stand != Fill {
			h = HeightOf(objects[i], w)
		}
		if r.stand == Centre {
			y = (size.Height - h) / 2
		}
		put(objects[i], x, y, w, h)
		x += w + r.gap
	}
}

// Inset adds padding around an object: above and below, left and right.
func (k Kit) Inset(vertical, horizontal float32, o fyne.CanvasObject) *Box {
	return newBox(inset{v: vertical, h: horizontal}, o)
}

// inset adds padding around the last object; those before it fill the whole area.
type inset struct {
	v, h  float32 // above and below; left and right
	least float32 // height
	below float32 // additional padding below
}

func (in inset) height(objects []fyne.CanvasObject, width float32) float32 {
	return max(in.least, HeightOf(objects[len(objects)-1], max(0, width-2*in.h))+2*in.v+in.below)
}

func (in inset) width(objects []fyne.CanvasObject) float32 {
	return WidthOf(objects[len(objects)-1]) + 2*in.h
}

func (in inset) place(objects []fyne.CanvasObject, size fyne.Size) {
	last := len(objects) - 1
	for _, o := range objects[:last] {
		put(o, 0, 0, size.Width, size.Height)
	}
	w := max(0, size.Width-2*in.h)
	h := HeightOf(objects[last], w)
	put(objects[last], in.h, max(in.v, (size.Height-in.below-h)/2), w, h)
}

// Sized gives an object a fixed size, zero meaning its own.
func (k Kit) Sized(width, height float32, o fyne.CanvasObject) *Box {
	return newBox(sized{width, height}, o)
}

type sized struct{ w, h float32 }

func (s sized) height(objects []fyne.CanvasObject, width float32) float32 {
	if s.h > 0 {
		return s.h
	}
	return HeightOf(objects[0], width)
}

func (s sized) width(objects []fyne.CanvasObject) float32 {
	if s.w > 0 {
		return s.w
	}
	return WidthOf(objects[0])
}

func (s sized) place(objects []fyne.CanvasObject, size fyne.Size) {
	put(objects[0], 0, 0, size.Width, size.Height)
}

// Space is an empty stretch of a column.
func (k Kit) Space(height float32) *Box { return newBox(space{height}) }

type space struct{ h float32 }

func (s space) height([]fyne.CanvasObject, float32) float32 { return s.h }
func (s space) width([]fyne.CanvasObject) float32           { return 0 }
func (s space) place([]fyne.CanvasObject, fyne.Size)        {}
