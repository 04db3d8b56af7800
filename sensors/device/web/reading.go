//go:build js

package web

import "syscall/js"

// Show describes the present screen to screen readers, in reading order; things
// is a list of JSON objects with the fields that reading.js uses.
func Show(things []byte) { js.Global().Get("stillairReading").Call("show", string(things)) }

// Typed registers a function that gets the text of a textbox after each key,
// with the textbox's key. It is called once.
func Typed(take func(key, text string)) {
	js.Global().Get("stillairReading").Call("typed", js.FuncOf(func(_ js.Value, args []js.Value) any {
		take(args[0].String(), args[1].String())
		return nil
	}))
}

// SetLanguage sets the page's language, a BCP 47 tag, for screen readers.
func SetLanguage(tag string) {
	js.Global().Get("document").Get("documentElement").Set("lang", tag)
}

// PixelRatio is the number of screen pixels per CSS pixel.
func PixelRatio() float64 { return js.Global().Get("devicePixelRatio").Float() }
