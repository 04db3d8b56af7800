package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"stillair/app/accessible"
)

// Entry is an input field that a screen reader can describe without what stands
// around it.
type Entry struct {
	widget.Entry
	name, note, keys string
	look             accessible.Look
}

// newEntry makes the input of a field.
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

// FieldName is the name of the value.
func (e *Entry) FieldName() string { return e.name }

// FieldValue is the text in the field; it may be empty.
func (e *Entry) FieldValue() string { return e.Text }

// FieldNote is the unit, what is wrong with the value, and a hint.
func (e *Entry) FieldNote() string { return e.note }

// FieldLines reports whether the field has more than one line.
func (e *Entry) FieldLines() bool { return e.MultiLine }

// FieldKeys is the keyboard to show.
func (e *Entry) FieldKeys() string { return e.keys }

// FieldLook is the style of its text.
func (e *Entry) FieldLook() accessible.Look { return e.look }

// SetFieldValue takes a text that was typed elsewhere.
func (e *Entry) SetFieldValue(text string) { e.SetText(text) }

// AccessibilityLabel implements fyne.Accessible: the toolkit has no role for
// fields, so the system's screen reader gets name and value as one text.
func (e *Entry) AccessibilityLabel() string {
	if e.Text == "" {
		return e.name
	}
	return e.name + ": " + e.Text
}

// AccessibilityRole implements fyne.Accessible.
func (e *Entry) AccessibilityRole() fyne.AccessibleRole { return fyne.AccessibleRoleText }
