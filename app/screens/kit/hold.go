package kit

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/driver/mobile"
	"fyne.io/fyne/v2/widget"
)

// HoldFor is how long a finger must press for a Hold to respond: far longer than
// a tap, a swipe, or the touch of a pocket's lining (common practice: a system's
// own long press is half a second).
const HoldFor = 2 * time.Second

// holdSteps is the number of steps in which the background of a Hold fills.
const holdSteps = 8

// Hold responds to a finger that presses it for HoldFor, and not to a tap. Its
// background fills meanwhile.
type Hold struct {
	widget.BaseWidget
	inner fyne.CanvasObject
	fill  *canvas.Rectangle
	label string
	done  func()
	kit   Kit
	steps int // of the current press
	press int // counts the presses, so that a timer recognises its own
}

// hands is the state of the finger that presses a part of a kit.
type hands struct {
	holding *Hold
	after   func(time.Duration, func()) // runs a function later on the drawing goroutine
}

// Later sets the function that runs another one later on the drawing goroutine;
// without it no Hold responds.
func (k Kit) Later(after func(time.Duration, func())) { k.hands.after = after }

// HoldButton is a button that responds only to being held.
func (k Kit) HoldButton(rank Rank, symbol Symbol, label string, done func()) *Hold {
	b := k.Button(rank, symbol, label, nil)
	return k.Holdable(b.inner, label, done)
}

// Holdable makes an object respond to being held; label is what a screen reader
// says.
func (k Kit) Holdable(inner fyne.CanvasObject, label string, done func()) *Hold {
	h := &Hold{inner: inner, fill: canvas.NewRectangle(withAlpha(k.Palette.Ink, 0x55)), label: spoken(label), done: done, kit: k}
	h.fill.CornerRadius = corner
	h.fill.Hide()
	h.ExtendBaseWidget(h)
	return h
}

// Holding reports whether a finger presses a Hold. Redrawing the screen cancels
// the press.
func (k Kit) Holding() bool { return k.hands.holding != nil }

// LetGo cancels the press, for instance when another screen is drawn.
func (k Kit) LetGo() {
	if h := k.hands.holding; h != nil {
		h.up()
	}
}

func (h *Hold) down() {
	h.kit.LetGo()
	h.kit.hands.holding = h
	h.press++
	h.steps = 0
	h.step(h.press)
}

func (h *Hold) up() {
	h.press++
	if h.kit.hands.holding == h {
		h.kit.hands.holding = nil
	}
	h.fill.Hide()
	h.fill.Refresh()
}

// step fills the background by one more step, or responds.
func (h *Hold) step(press int) {
	if press != h.press {
		return
	}
	if h.steps == holdSteps {
		h.up()
		h.done()
		return
	}
	h.steps++
	h.fill.Show()
	h.fill.Resize(fyne.NewSize(h.Size().Width*float32(h.steps)/holdSteps, h.Size().Height))
	h.fill.Refresh()
	h.kit.hands.after(HoldFor/holdSteps, func() { h.step(press) })
}

// HeightFor implements Flow.
func (h *Hold) HeightFor(width float32) float32 { return HeightOf(h.inner, width) }

// NaturalWidth implements Flow.
func (h *Hold) NaturalWidth() float32 { return WidthOf(h.inner) }

// MouseDown implements desktop.Mouseable.
func (h *Hold) MouseDown(*desktop.MouseEvent) { h.down() }

// MouseUp implements desktop.Mouseable.
func (h *Hold) MouseUp(*desktop.MouseEvent) { h.up() }

// TouchDown implements mobile.Touchable.
func (h *Hold) TouchDown(*mobile.TouchEvent) { h.down() }

// TouchUp implements mobile.Touchable.
func (h *Hold) TouchUp(*mobile.TouchEvent) { h.up() }

// TouchCancel implements mobile.Touchable.
func (h *Hold) TouchCancel(*mobile.TouchEvent) { h.up() }

// AccessibilityLabel implements fyne.Accessible.
func (h *Hold) AccessibilityLabel() string { return h.label }

// HeldFor implements reading.Held.
func (h *Hold) HeldFor() time.Duration { return HoldFor }

// AccessibilityRole implements fyne.Accessible.
func (h *Hold) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleButton }

// CreateRenderer implements fyne.Widget.
func (h *Hold) CreateRenderer() fyne.WidgetRenderer { return holdRenderer{h} }

type holdRenderer struct{ h *Hold }

func (r holdRenderer) Layout(size fyne.Size) {
	put(r.h.inner, 0, 0, size.Width, size.Height)
	put(r.h.fill, 0, 0, size.Width*float32(r.h.steps)/holdSteps, size.Height)
}

func (r holdRenderer) MinSize() fyne.Size {
	return fyne.NewSize(0, r.h.HeightFor(r.h.Size().Width))
}

func (r holdRenderer) Refresh() {
	r.Layout(r.h.Size())
	r.h.inner.Refresh()
}

func (r holdRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.h.inner, r.h.fill} }

func (r holdRenderer) Destroy() {}
