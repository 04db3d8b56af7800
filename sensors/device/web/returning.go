//go:build js

package web

import "syscall/js"

func returning() js.Value { return js.Global().Get("stillairReturning") }

// WentBack registers a function that is called for each screen that the rider
// goes back with the browser's own button or gesture.
func WentBack(back func()) {
	returning().Call("went", js.FuncOf(func(js.Value, []js.Value) any {
		back()
		return nil
	}))
}

// Deep sets the number of screens there are to go back, and whether leaving the
// page would cut off a recording.
func Deep(screens int, recording bool) { returning().Call("deep", screens, recording) }
