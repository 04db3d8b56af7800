package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Flow is a widget whose height follows from its width.
type Flow interface {
	fyne.CanvasObject
	HeightFor(width float32) float32
	NaturalWidth() float32 // its width if there is enough room
}

// HeightOf is the height that an object needs at a width.
func HeightOf(o fyne.CanvasObject, width float32) float32 {
	if !o.Visible() {
		return 0
	}
	if f, ok := o.(Flow); ok {
		return f.HeightFor(width)
	}
	return o.MinSize().Height
}

// WidthOf is the natural width of an object.
func WidthOf(o fyne.CanvasObject) float32 {
	if f, ok := o.(Flow); ok {
		return f.NaturalWidth()
	}
	return o.MinSize().Width
}

// arrangement places objects in a box.
type arrangement interface {
	height(objects []fyne.CanvasObject, width float32) float32
	width(objects []fyne.CanvasObject) float32
	place(objects []fyne.CanvasObject, size fyne.Size)
}

// Box is a group of objects in some arrangement.
type Box struct {
	widget.BaseWidget
	objects []fyne.CanvasObject
	how     arrangement
	label   string // for screen readers; empty: the parts speak for themselves
}

func newBox(how arrangement, objects ...fyne.CanvasObject) *Box {
	kept := objects[:0:0]
	for _, o := range objects {
		if o != nil {
			kept = append(kept, o)
		}
	}
	b := &Box{objects: kept, how: how}
	b.ExtendBaseWidget(b)
	return b
}

// HeightFor implements Flow.
func (b *Box) HeightFor(width float32) float32 { return b.how.height(b.objects, width) }

// NaturalWidth implements Flow.
func (b *Box) NaturalWidth() float32 { return b.how.width(b.objects) }

// CreateRenderer implements fyne.Widget.
func (b *Box) CreateRenderer() fyne.WidgetRenderer { return boxRenderer{b} }

// AccessibilityLabel implements fyne.Accessible.
func (b *Box) AccessibilityLabel() string { return b.label }

// AccessibilityRole implements fyne.Accessible.
func (b *Box) AccessibilityRole() fyne.AccessibleRole {
	if b.label != "" {
		return fyne.AccessibleRoleText
	}
	return fyne.AccessibleRoleContainer
}

// Spoken gives a box a single label for screen readers, in place of those of its parts.
func (b *Box) Spoken(label string) *Box {
	b.label = spoken(label)
	return b
}

type boxRenderer struct{ b *Box }

func (r boxRenderer) Layout(size fyne.Size) { r.b.how.place(r.b.objects, size) }

func (r boxRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.b.HeightFor(r.b.Size().Width))
}

func (r boxRenderer) Refresh() {
	r.Layout(r.b.Size())
	for _, o := range r.b.objects {
		o.Refresh()
	}
}

func (r boxRenderer) Objects() []fyne.CanvasObject { return r.b.objects }

func (r boxRenderer) Destroy() {}
