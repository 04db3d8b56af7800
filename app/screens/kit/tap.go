package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/driver/mobile"
	"fyne.io/fyne/v2/widget"
)

// Touch makes an object respond to a tap, and show that it is being touched.
type Touch struct {
	widget.BaseWidget
	inner  fyne.CanvasObject
	veil   *canvas.Rectangle
	label  string
	tapped func()
	down   *bool // the kit's flag for it
	mark   string
	on     bool
}

// Touchable wraps an object; label is what a screen reader says.
func (k Kit) Touchable(inner fyne.CanvasObject, label string, tapped func()) *Touch {
	t := &Touch{inner: inner, veil: canvas.NewRectangle(withAlpha(k.Palette.Ink, 0x22)), label: spoken(label), tapped: tapped, down: k.touched}
	t.veil.CornerRadius = corner
	t.veil.Hide()
	t.ExtendBaseWidget(t)
	return t
}

// Marked sets the kind of the object, one of a choice ("radio"), tickable
// ("checkbox") or a link to a place ("page"), and whether it is chosen, ticked
// or the current place.
func (t *Touch) Marked(kind string, on bool) *Touch {
	t.mark, t.on = kind, on
	return t
}

// Mark implements reading.Marked.
func (t *Touch) Mark() (kind string, on bool) { return t.mark, t.on }

// HeightFor implements Flow.
func (t *Touch) HeightFor(width float32) float32 { return HeightOf(t.inner, width) }

// NaturalWidth implements Flow.
func (t *Touch) NaturalWidth() float32 { return WidthOf(t.inner) }

// Tapped implements fyne.Tappable.
func (t *Touch) Tapped(*fyne.PointEvent) {
	if t.tapped != nil {
		t.tapped()
	}
}

// press shows that a finger is down, and records it.
func (t *Touch) press(down bool) {
	*t.down = down
	if down {
		t.veil.Show()
	} else {
		t.veil.Hide()
	}
}

// MouseDown implements desktop.Mouseable.
func (t *Touch) MouseDown(*desktop.MouseEvent) { t.press(true) }

// MouseUp implements desktop.Mouseable.
func (t *Touch) MouseUp(*desktop.MouseEvent) { t.press(false) }

// TouchDown implements mobile.Touchable.
func (t *Touch) TouchDown(*mobile.TouchEvent) { t.press(true) }

// TouchUp implements mobile.Touchable.
func (t *Touch) TouchUp(*mobile.TouchEvent) { t.press(false) }

// TouchCancel implements mobile.Touchable.
func (t *Touch) TouchCancel(*mobile.TouchEvent) { t.press(false) }

// AccessibilityLabel implements fyne.Accessible.
func (t *Touch) AccessibilityLabel() string { return t.label }

// AccessibilityRole implements fyne.Accessible.
func (t *Touch) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer implements fyne.Widget.
func (t *Touch) CreateRenderer() fyne.WidgetRenderer { return touchRenderer{t} }

type touchRenderer struct{ t *Touch }

func (r touchRenderer) Layout(size fyne.Size) {
	put(r.t.inner, 0, 0, size.Width, size.Height)
	put(r.t.veil, 0, 0, size.Width, size.Height)
}

func (r touchRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.t.HeightFor(r.t.Size().Width))
}

func (r touchRenderer) Refresh() {
	r.Layout(r.t.Size())
	r.t.inner.Refresh()
}

func (r touchRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.t.inner, r.t.veil}
}

func (r touchRenderer) Destroy() {}
