package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"stillair/app/accessible"
)

// Entry is a place to type in that can be described to somebody who does not see
// what stands around it.
type Entry struct {
	widget.Entry
	name, note, keys string
	look             accessible.Look
}

// newEntry makes the place of a field.
func (k Kit) newEntry(f Field) *Entry {
	var notes []string
	for _, s := range []string{f.Unit, f.Fault, f.Hint} {
		if s != "" {
			notes = append(notes, s)
		}
	}
	e := &Entry{name: f.Name, note: strings.Join(notes, ". "), keys: string(f.Keys),
		look: accessible.Look{Ink: k.Palette.Ink, Ground: k.Palette.Sunk, Size: k.points(Body)}}
	e.ExtendBaseWidget(e)
	if f.Lines > 1 {
		e.MultiLine, e.Wrapping = true, fyne.TextWrapWord
		e.SetMinRowsVisible(f.Lines)
	}
	e.SetPlaceHolder(f.Example)
	e.SetText(f.Text)
	e.OnChanged = f.Changed
	return e
}

// FieldName is what is asked for.
func (e *Entry) FieldName() string { return e.name }

// FieldValue is what stands there; empty where nothing does.
func (e *Entry) FieldValue() string { return e.Text }

// FieldNote is the unit, what is wrong with the value, and what helps to give
// it.
func (e *Entry) FieldNote() string { return e.note }

// FieldLines reports whether more than one line may stand there.
func (e *Entry) FieldLines() bool { return e.MultiLine }

// FieldKeys is the keyboard that it wants.
func (e *Entry) FieldKeys() string { return e.keys }

// FieldLook is how its text is drawn.
func (e *Entry) FieldLook() accessible.Look { return e.look }

// SetFieldValue takes what was typed elsewhere.
func (e *Entry) SetFieldValue(text string) { e.SetText(text) }

// AccessibilityLabel implements fyne.Accessible: the toolkit knows no fields,
// so name and value are one text to the system's reader.
func (e *Entry) AccessibilityLabel() string {
	if e.Text == "" {
		return e.name
	}
	return e.name + ": " + e.Text
}

// AccessibilityRole implements fyne.Accessible.
func (e *Entry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
