//go:build js

package web

import (
	"syscall/js"

	"stillair/sensors/device"
)

// Ear drives the microphone of the browser; it is a device.Ear.
type Ear struct {
	page   js.Value
	design js.Func
	heard  hearing
	buffer []byte
}

// NewEar returns the microphone of the page that the program runs in.
func NewEar() *Ear { return &Ear{page: js.Global().Get("stillairListening")} }

// Start implements device.Ear.
func (e *Ear) Start() {
	e.heard = hearing{}
	e.design = js.FuncOf(func(_ js.Value, args []js.Value) any {
		e.heard.rate, e.heard.latency = args[0].Float(), args[1].Float()
		filter := device.NewLowpass(e.heard.rate)
		e.heard.factor = filter.Factor
		taps := make([]any, len(filter.Taps))
		for i, x := range filter.Taps {
			taps[i] = x
		}
		return map[string]any{"taps": taps, "factor": filter.Factor, "each": device.StretchValues}
	})
	e.page.Call("start", e.design)
}

// Drain implements device.Ear.
func (e *Ear) Drain(b *device.Batch) {
	rows := e.page.Call("take")
	n := rows.Get("length").Int()
	if cap(e.buffer) < n {
		e.buffer = make([]byte, 2*n)
	}
	js.CopyBytesToGo(e.buffer[:n], rows)
	e.heard.read(e.buffer[:n], b)
	b.Lost += e.page.Call("lost").Int()
}

// Stop implements device.Ear.
func (e *Ear) Stop() {
	e.page.Call("stop")
	e.design.Release()
}

// PermitEar asks the rider for permission to use the microphone and reports whether
// it was given; it waits for the answer.
func PermitEar() bool {
	v, err := await(js.Global().Get("stillairListening").Call("permit"))
	return err == nil && v.String() == "granted"
}
