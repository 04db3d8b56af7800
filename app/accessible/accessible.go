// Package accessible describes what the app shows to a screen reader where the
// toolkit does not: in a browser the app is a single picture to it.
package accessible

import (
	"image/color"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// Whole is an object of the app that is made of others.
type Whole interface {
	Parts() []fyne.CanvasObject
}

// Field is a place to type in.
type Field interface {
	fyne.CanvasObject
	FieldName() string
	FieldValue() string
	FieldNote() string // unit, fault, hint; may be empty
	FieldLines() bool  // more than one line may stand there
	FieldKeys() string // the keyboard to show, by the browser's own names (inputmode); empty: letters
	FieldLook() Look
	SetFieldValue(string) // as if it had been typed
}

// Look is how what is typed is drawn.
type Look struct {
	Ink, Ground color.NRGBA
	Size        float32 // of the text
}

// Marked is a button that is one of a choice, or is ticked, or leads to the
// place where one is: the kinds "radio", "checkbox" and "page".
type Marked interface {
	Mark() (kind string, on bool)
}

// Held is a button that responds only to being held, and for how long.
type Held interface {
	HeldFor() time.Duration
}

// Headed is text that may be a heading, of level 1 or 2; 0: it is none.
type Headed interface {
	HeadingLevel() int
}

// Role is what kind of thing a part of the screen is.
type Role string

// The roles, by their names in the browser's own list (WAI-ARIA 1.2), where
// plain text has none.
const (
	Text     Role = ""
	Button   Role = "button"
	CheckBox Role = "checkbox"
	Radio    Role = "radio"
	TextBox  Role = "textbox"
)

// Thing is the accessible description of one part of the screen.
type Thing struct {
	Name  string
	Role  Role
	On    bool          // it is ticked, or chosen, or the current place
	Level int           // of a heading
	Held  time.Duration // for which a button must be held; 0: it responds to a tap
	Value string        // the content of a field
	Note  string        // further information about a field
	Field Field         // receives what is typed
	Pos   fyne.Position
	Size  fyne.Size
}

// Things lists the visible parts of an object in reading order. A part with
// words of its own speaks for all within it, except for what can be pressed.
// What is scrolled out of sight is left out, since it cannot be pressed.
func Things(root fyne.CanvasObject) []Thing {
	l := lister{}
	l.walk(root, fyne.Position{}, area{fyne.Position{}, root.Position().AddXY(root.Size().Width, root.Size().Height)}, false)
	return l.things
}

// area is the visible rectangle, from its upper left to its lower right
// corner.
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

// walk lists o, which lies in a parent at origin; said: its words are already
// spoken.
func (l *lister) walk(o fyne.CanvasObject, origin fyne.Position, seen area, said bool) {
	if o == nil || !o.Visible() {
		return
	}
	pos := origin.Add(o.Position())
	if f, ok := o.(Field); ok {
		l.addField(f, pos, seen)
		return
	}
	if a, ok := o.(fyne.Accessible); ok && a.AccessibilityLabel() != "" && a.AccessibilityRole() != fyne.AccessibleRoleContainer {
		thing := described(a)
		if thing.Role != Text || !said {
			thing.Pos, thing.Size = pos, o.Size()
			l.add(thing, seen)
		}
		said = true
	}
	switch o := o.(type) {
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

// described is an object's description of itself.
func described(a fyne.Accessible) Thing {
	t := Thing{Name: a.AccessibilityLabel()}
	if h, ok := a.(Headed); ok {
		t.Level = h.HeadingLevel()
	}
	if a.AccessibilityRole() != fyne.AccessibleRoleButton {
		return t
	}
	t.Role = Button
	if h, ok := a.(Held); ok {
		t.Held = h.HeldFor()
	}
	if m, ok := a.(Marked); ok {
		var kind string
		kind, t.On = m.Mark()
		if r := Role(kind); r == CheckBox || r == Radio {
			t.Role = r
		}
	}
	return t
}

// addField lists a field. Its name stands before it on the screen as well; a
// reader that says the name of the field need not say it twice.
func (l *lister) addField(f Field, pos fyne.Position, seen area) {
	if n := len(l.things); n > 0 && l.things[n-1].Role == Text && l.things[n-1].Name == f.FieldName() {
		l.things = l.things[:n-1]
	}
	l.add(Thing{Name: f.FieldName(), Role: TextBox, Value: f.FieldValue(), Note: f.FieldNote(), Field: f, Pos: pos, Size: f.Size()}, seen)
}

func (l *lister) add(t Thing, seen area) {
	if seen.holds(t.Pos.AddXY(t.Size.Width/2, t.Size.Height/2)) {
		l.things = append(l.things, t)
	}
}
