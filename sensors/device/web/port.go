//go:build js

package web

import (
	"syscall/js"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// Port drives the sensors of the browser; it is a device.Port.
type Port struct {
	page     js.Value
	reader   reader
	buffer   []byte
	reported bool
}

var errNoScript = finding.Fail("browser.script_missing", finding.Text("script", "sensing.js"))

// NewPort returns the sensors of the page that the program runs in.
func NewPort() *Port { return &Port{page: js.Global().Get("stillairSensing")} }

// Start implements device.Port.
func (p *Port) Start() error {
	if p.page.IsUndefined() {
		return errNoScript
	}
	p.reader.sign, p.reader.hidden = 1, false
	if p.page.Call("turned").Bool() {
		p.reader.sign = -1
	}
	p.page.Call("start")
	return nil
}

// Drain implements device.Port.
func (p *Port) Drain(b *device.Batch) {
	if !p.reported {
		p.reported = true
		b.Reports = append(b.Reports, device.Report{Sensor: sensors.SensorPressure, Condition: sensors.Missing,
			Detail: finding.New("browser.no_barometer")})
	}
	rows := p.page.Call("take")
	n := rows.Get("length").Int()
	if cap(p.buffer) < n {
		p.buffer = make([]byte, 2*n)
	}
	js.CopyBytesToGo(p.buffer[:n], rows)
	p.reader.read(p.buffer[:n], b)
	b.Lost += p.page.Call("lost").Int()
}

// Now implements device.Port: the page's clock, whose zero is when it loaded.
func (p *Port) Now() float64 { return p.page.Call("now").Float() / 1000 }

// Stop implements device.Port.
func (p *Port) Stop() { p.page.Call("stop") }

// Arrival returns the clocks and delays of the fixes so far.
func (p *Port) Arrival() device.Arrival { return p.reader.arrival }

// Permit asks for permission to use the motion sensors, if the browser requires
// that; it is called from a tap and returns at once.
func Permit() { js.Global().Get("stillairSensing").Call("permit") }

// Ahead reports whether the page is already collecting readings, because the
// rider started a recording before the program had loaded. The next source that
// is started delivers them. It is asked once, and takes the page's offer away.
func Ahead() bool { return js.Global().Get("stillairSensing").Call("handOver").Bool() }
