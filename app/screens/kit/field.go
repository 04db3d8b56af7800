package kit

import "fyne.io/fyne/v2"

// Field is a named input field. All but Name may be empty.
type Field struct {
	Name, Text string
	Example    string // shown while the field is empty
	Unit       string
	Hint       string
	Fault      string // what is wrong with the value
	Lines      int    // 0 or 1: one line
	Keys       Keys   // the keyboard to show
	Changed    func(string)
}

// Keys is the layout of a phone's keyboard.
type Keys string

// The keyboards, by the browser's names.
const (
	Letters Keys = ""
	Decimal Keys = "decimal" // digits and a decimal sign; no minus on some phones
)

// Field makes an input field.
func (k Kit) Field(f Field) *Box {
	line := []fyne.CanvasObject{Grow(k.newEntry(f), 1)}
	if f.Unit != "" {
		line = append(line, k.Text(Body, Muted, f.Unit))
	}
	parts := []fyne.CanvasObject{k.Text(Strong, Plain, f.Name), k.Row(10, Centre, line...)}
	if f.Fault != "" {
		parts = append(parts, k.Row(8, Top, k.Icon(Caution, Warn, 18), Grow(k.Text(Small, Warn, f.Fault), 1)))
	}
	if f.Hint != "" {
		parts = append(parts, k.Text(Small, Muted, f.Hint))
	}
	return k.Column(5, parts...)
}
