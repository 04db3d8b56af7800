package shell

import (
	"math"
	"strings"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// form keeps what is typed into a screen until it is saved, and what is wrong
// with it.
type form struct {
	c       view.Context
	inputs  map[string]*input
	faults  map[string]string
	trouble string
}

// input is one field: typed by the rider, taken over into its place by check.
type input struct {
	field kit.Field
	typed string
	take  func(typed string) (fault string)
}

func newForm(c view.Context) *form {
	return &form{c: c, inputs: map[string]*input{}, faults: map[string]string{}}
}

func (f *form) add(key string, field kit.Field, typed string, take func(string) string) {
	if f.inputs[key] == nil {
		f.inputs[key] = &input{field: field, typed: typed, take: take}
	}
}

// text is a field of words. The key "name" must not stay empty.
func (f *form) text(key, name, hint, example string, into *string) {
	f.add(key, kit.Field{Name: name, Hint: hint, Example: example}, *into, func(typed string) string {
		*into = strings.TrimSpace(typed)
		if key == "name" && *into == "" {
			return f.c.Book.Bikes.NoName
		}
		return ""
	})
}

// number is a field of a quantity; empty is nil.
func (f *form) number(key, name, hint string, into **float64, q view.Quantity) {
	f.add(key, kit.Field{Name: name, Hint: hint, Unit: q.Unit, Keys: keysFor(q)}, f.c.Write(*into, q), func(typed string) string {
		p, err := f.c.Read(typed, q)
		if err != nil {
			return f.c.Fault(err, q)
		}
		*into = p
		return ""
	})
}

// keysFor is the keyboard for a quantity. That of figures alone has no minus on
// some phones.
func keysFor(q view.Quantity) kit.Keys {
	if q.Low < 0 {
		return kit.Letters
	}
	return kit.Decimal
}

// numberWas is a field of a quantity that shows what was recorded while nothing
// is typed in; was is in the unit that the quantity keeps, NaN for nothing.
func (f *form) numberWas(key, name, hint string, into **float64, q view.Quantity, was float64) {
	f.number(key, name, hint, into, q)
	if !math.IsNaN(was) {
		f.inputs[key].field.Example = f.c.Write(&was, q)
	}
}

// fields gives the named fields as they stand now.
func (f *form) fields(keys ...string) []kit.Field {
	var out []kit.Field
	for _, key := range keys {
		in := f.inputs[key]
		field := in.field
		field.Text, field.Fault = in.typed, f.faults[key]
		field.Changed = func(typed string) { in.typed = typed }
		out = append(out, field)
	}
	return out
}

// check takes everything over and reports whether all of it can be.
func (f *form) check() bool {
	f.faults, f.trouble = map[string]string{}, ""
	for key, in := range f.inputs {
		if fault := in.take(in.typed); fault != "" {
			f.faults[key] = fault
		}
	}
	return len(f.faults) == 0
}
