//go:build js

package web

import (
	"encoding/json"
	"syscall/js"
)

// Thing is something on the screen, as a screen reader is told of it.
type Thing struct {
	Name  string  `json:"name"`
	Role  string  `json:"role"`  // of WAI-ARIA: button, textbox; empty: plain text
	Value string  `json:"value"` // what stands in a textbox
	Note  string  `json:"note"`  // what there is to say of it besides
	Lines bool    `json:"lines"` // it takes more than one line
	X     float32 `json:"x"`     // CSS pixels
	Y     float32 `json:"y"`
	W     float32 `json:"w"`
	H     float32 `json:"h"`
}

// Show tells screen readers what is on the screen now, in the order of
// reading.
func Show(things []Thing) error {
	b, err := json.Marshal(things)
	if err != nil {
		return err
	}
	js.Global().Get("stillairReading").Call("show", string(b))
	return nil
}

// PixelRatio is how many of the screen's pixels make a CSS pixel.
func PixelRatio() float64 { return js.Global().Get("devicePixelRatio").Float() }
