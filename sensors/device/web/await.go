//go:build js

package web

import (
	"syscall/js"

	"stillair/sensors/finding"
)

// Error is the reason with which a browser's promise was rejected.
type Error struct {
	Name    string // of the DOMException, such as QuotaExceededError
	Message string
}

func (e *Error) Error() string {
	if e.Name == "" {
		return e.Message
	}
	return e.Name + ": " + e.Message
}

// await returns the value of a promise. It must not be called from inside a
// JavaScript callback, which would deadlock.
func await(promise js.Value) (js.Value, error) {
	type answer struct {
		value js.Value
		err   error
	}
	done := make(chan answer, 1)
	resolve := js.FuncOf(func(_ js.Value, args []js.Value) any {
		a := answer{value: js.Undefined()}
		if len(args) > 0 {
			a.value = args[0]
		}
		done <- a
		return nil
	})
	defer resolve.Release()
	reject := js.FuncOf(func(_ js.Value, args []js.Value) any {
		a := answer{err: finding.Fail("browser.no_reason")}
		if len(args) > 0 && args[0].Type() == js.TypeObject {
			a.err = &Error{text(args[0], "name"), text(args[0], "message")}
		}
		done <- a
		return nil
	})
	defer reject.Release()
	promise.Call("then", resolve, reject)
	a := <-done
	return a.value, a.err
}

func text(v js.Value, field string) string {
	if s := v.Get(field); s.Type() == js.TypeString {
		return s.String()
	}
	return ""
}

func bytesOf(v js.Value) []byte {
	p := make([]byte, v.Get("length").Int())
	js.CopyBytesToGo(p, v)
	return p
}

func toJS(p []byte) js.Value {
	v := js.Global().Get("Uint8Array").New(len(p))
	js.CopyBytesToJS(v, p)
	return v
}
