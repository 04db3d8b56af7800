//go:build js

package web

import "syscall/js"

func returning() js.Value { return js.Global().Get("stillairReturning") }

// WentBack has back called for each screen that the rider goes back by the
// browser's own means.
func WentBack(back func()) {
	returning().Call("went", js.FuncOf(func(js.Value, []js.Value) any {
		back()
		return nil
	}))
}

// Deep tells the browser how many screens there are to go back, and whether a
// recording would be cut off by leaving the page.
func Deep(screens int, recording bool) { returning().Call("deep", screens, recording) }
