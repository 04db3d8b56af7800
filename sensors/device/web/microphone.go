//go:build js

package web

import (
	"syscall/js"

	"stillair/sensors/device"
)

// Microphone drives the microphone of the browser (device.Microphone).
type Microphone struct {
	page   js.Value
	design js.Func
	heard  hearing
	buffer []byte
}

// NewMicrophone returns the microphone of the page that the program runs in.
func NewMicrophone() *Microphone { return &Microphone{page: js.Global().Get("stillairListening")} }

// Start implements device.Microphone.
func (m *Microphone) Start() {
	m.heard = hearing{}
	m.design = js.FuncOf(func(_ js.Value, args []js.Value) any {
		m.heard.rate, m.heard.latency = args[0].Float(), args[1].Float()
		filter := device.NewLowpass(m.heard.rate)
		m.heard.factor = filter.Factor
		taps := make([]any, len(filter.Taps))
		for i, x := range filter.Taps {
			taps[i] = x
		}
		return map[string]any{"taps": taps, "factor": filter.Factor, "each": device.StretchValues}
	})
	m.page.Call("start", m.design)
}

// Drain implements device.Microphone.
func (m *Microphone) Drain(b *device.Batch) {
	rows := m.page.Call("take")
	n := rows.Get("length").Int()
	if cap(m.buffer) < n {
		m.buffer = make([]byte, 2*n)
	}
	js.CopyBytesToGo(m.buffer[:n], rows)
	m.heard.read(m.buffer[:n], b)
	b.Lost += m.page.Call("lost").Int()
}

// Stop implements device.Microphone.
func (m *Microphone) Stop() {
	m.page.Call("stop")
	m.design.Release()
}

// PermitMicrophone asks the rider for permission to use the microphone and reports whether
// it was given; it waits for the answer.
func PermitMicrophone() bool {
	v, err := await(js.Global().Get("stillairListening").Call("permit"))
	return err == nil && v.String() == "granted"
}
