//go:build js

package webtest

import "syscall/js"

// Asked reports whether the page has a global variable of that name that is true:
// the program that drives the browser sets it.
func Asked(name string) bool { return js.Global().Get(name).Truthy() }
