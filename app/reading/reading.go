// Package reading tells a screen reader what the app shows, where the toolkit
// does not: in a browser the app is one picture to it.
package reading

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Whole is an object of the app that is made of others.
type Whole interface {
	Parts() []fyne.CanvasObject
}

// Thing is what a reader says of one part of the screen.
type Thing struct {
	Name  string
	Press bool // it can be pressed
	Pos   fyne.Position
	Size  fyne.Size
}

// Things lists what is to be seen of an object, in the order of reading. A
// part with words of its own speaks for all within it, but for what can be
// pressed. What is scrolled out of sight is left out, since it cannot be
// pressed.
func Things(root fyne.CanvasObject) []Thing {
	l := lister{}
	l.walk(root, fyne.Position{}, area{fyne.Position{}, root.Position().AddXY(root.Size().Width, root.Size().Height)}, false)
	return l.things
}

// area is what can be seen: from its upper left to its lower right corner.
type area struct{ from, to fyne.Position }

func (a area) holds(p fyne.Position) bool {
	return p.X >= a.from.X && p.X <= a.to.X && p.Y >= a.from.Y && p.Y <= a.to.Y
}

func (a area) within(pos fyne.Position, size fyne.Size) area {
	return area{
		fyne.NewPos(max(a.from.X, pos.X), max(a.from.Y, pos.Y)),
		fyne.NewPos(min(a.to.X, pos.X+size.Width), min(a.to.Y, pos.Y+size.Height)),
	}
}

type lister struct{ things []Thing }

// walk lists o, which lies in a parent at origin; said tells that its words
// are spoken already.
func (l *lister) walk(o fyne.CanvasObject, origin fyne.Position, seen area, said bool) {
	if o == nil || !o.Visible() {
		return
	}
	pos := origin.Add(o.Position())
	if a, ok := o.(fyne.Accessible); ok && a.AccessibilityLabel() != "" && a.AccessibilityRole() != fyne.AccessibleRoleContainer {
		press := a.AccessibilityRole() == fyne.AccessibleRoleButton
		if press || !said {
			l.add(Thing{Name: a.AccessibilityLabel(), Press: press, Pos: pos, Size: o.Size()}, seen)
		}
		said = true
	}
	switch o := o.(type) {
	case *widget.Entry:
		l.add(Thing{Name: l.entryName(o), Press: true, Pos: pos, Size: o.Size()}, seen)
	case *container.Scroll:
		l.walk(o.Content, pos, seen.within(pos, o.Size()), said)
	case *fyne.Container:
		for _, part := range o.Objects {
			l.walk(part, pos, seen, said)
		}
	case Whole:
		for _, part := range o.Parts() {
			l.walk(part, pos, seen, said)
		}
	}
}

// entryName names a field by the words before it, and tells what is in it.
func (l *lister) entryName(e *widget.Entry) string {
	name, in := e.PlaceHolder, e.Text
	if n := len(l.things); n > 0 && !l.things[n-1].Press {
		name = l.things[n-1].Name
	}
	if in != "" {
		name += ": " + in
	}
	return name
}

func (l *lister) add(t Thing, seen area) {
	if seen.holds(t.Pos.AddXY(t.Size.Width/2, t.Size.Height/2)) {
		l.things = append(l.things, t)
	}
}
