package accessible

import (
	"encoding/json"
	"fmt"
	"image/color"
)

// onPage is a thing as the page's script takes it. Lengths are CSS pixels.
type onPage struct {
	Name   string  `json:"name"`
	Role   Role    `json:"role"`
	On     bool    `json:"on"`    // ticked, chosen, or, for a button, it leads to the current place
	Level  int     `json:"level"` // of a heading; 0: none
	Held   int64   `json:"held"`  // ms for which a button must be held; 0: it responds to a tap
	X      float32 `json:"x"`
	Y      float32 `json:"y"`
	W      float32 `json:"w"`
	H      float32 `json:"h"`
	Value  string  `json:"value"` // the content of a field
	Note   string  `json:"note"`  // further information about it
	Key    string  `json:"key"`   // the page's name for a field
	Lines  bool    `json:"lines"` // it has more than one line
	Keys   string  `json:"keys"`  // its keyboard: an inputmode of HTML; empty: letters
	Points float32 `json:"points"`
	Ink    string  `json:"ink"` // colours of CSS
	Ground string  `json:"ground"`
}

// Page writes things for the page's script; scale is how many CSS pixels one
// of the toolkit's units has.
func Page(things []Thing, scale float32) ([]byte, error) {
	out := []onPage{}
	for _, t := range things {
		x := onPage{Name: t.Name, Role: t.Role, On: t.On, Level: t.Level, Held: t.Held.Milliseconds(), Value: t.Value, Note: t.Note,
			X: t.Pos.X * scale, Y: t.Pos.Y * scale, W: t.Size.Width * scale, H: t.Size.Height * scale}
		if f := t.Field; f != nil {
			look := f.FieldLook()
			x.Key, x.Lines, x.Keys, x.Points = Key(f), f.FieldLines(), f.FieldKeys(), look.Size*scale
			x.Ink, x.Ground = css(look.Ink), css(look.Ground)
		}
		out = append(out, x)
	}
	return json.Marshal(out)
}

// Key names a field as long as it is on the screen.
func Key(f Field) string { return fmt.Sprintf("%p", f) }

func css(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }
