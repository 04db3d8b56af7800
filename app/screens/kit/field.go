package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Field is a named place to type in. All but Name may be empty.
type Field struct {
	Name, Text string
	Example    string // shown while nothing is typed in
	Unit       string
	Hint       string
	Fault      string // what is wrong with what stands there
	Lines      int    // 0 or 1: one line
	Changed    func(string)
}

// Field makes a place to type in.
func (k Kit) Field(f Field) *Box {
	e := widget.NewEntry()
	if f.Lines > 1 {
		e = widget.NewMultiLineEntry()
		e.Wrapping = fyne.TextWrapWord
		e.SetMinRowsVisible(f.Lines)
	}
	e.SetPlaceHolder(f.Example)
	e.SetText(f.Text)
	e.OnChanged = f.Changed
	return k.field(f.Name, e, f.Unit, f.Hint, f.Fault)
}

func (k Kit) field(name string, e *widget.Entry, unit, hint, fault string) *Box {
	line := []fyne.CanvasObject{Grow(e, 1)}
	if unit != "" {
		line = append(line, k.Text(Body, Muted, unit))
	}
	parts := []fyne.CanvasObject{k.Text(Strong, Plain, name), k.Row(10, Centre, line...)}
	if fault != "" {
		parts = append(parts, k.Row(8, Top, k.Icon(Caution, Warn, 18), Grow(k.Text(Small, Warn, fault), 1)))
	}
	if hint != "" {
		parts = append(parts, k.Text(Small, Muted, hint))
	}
	return k.Column(5, parts...)
}
