//go:build js

package web

import "syscall/js"

// Show tells screen readers what is on the screen now, in the order of reading;
// things is a list of objects in JSON, whose fields reading.js uses.
func Show(things []byte) { js.Global().Get("stillairReading").Call("show", string(things)) }

// Typed has each text that stands in a textbox after a key given to take, with
// the textbox's key. It is called once.
func Typed(take func(key, text string)) {
	js.Global().Get("stillairReading").Call("typed", js.FuncOf(func(_ js.Value, args []js.Value) any {
		take(args[0].String(), args[1].String())
		return nil
	}))
}

// SetLanguage tells the page's language, a BCP 47 tag, to what reads it out.
func SetLanguage(tag string) {
	js.Global().Get("document").Get("documentElement").Set("lang", tag)
}

// PixelRatio is how many of the screen's pixels make a CSS pixel.
func PixelRatio() float64 { return js.Global().Get("devicePixelRatio").Float() }
