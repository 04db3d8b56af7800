//go:build android || doubles

package android

// #cgo android LDFLAGS: -landroid
// #include "fixes.h"
// #include "motion.h"
import "C"

import (
	"unsafe"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// Native runs a function on a thread that is attached to the virtual machine
// and passes it the machine, the environment of that thread and the activity.
type Native func(func(vm, env, ctx uintptr) error) error

// Port drives the sensors of the phone; it is a device.Port.
type Port struct {
	native Native
	motion *C.still_motion
	fixes  *C.still_fixes
	join   join
	state  int
	begun  bool
	events [1024]C.still_event
}

// NewPort returns the sensors of the phone behind native.
func NewPort(native Native) *Port { return &Port{native: native} }

var errNoThread = finding.Fail("android.no_thread")

// Start implements device.Port.
func (p *Port) Start() error {
	if p.motion = C.still_motion_start(); p.motion == nil {
		return errNoThread
	}
	err := p.native(func(vm, env, ctx uintptr) error {
		p.fixes = C.still_fixes_start((*C.JavaVM)(pointer(vm)), (*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)))
		if p.fixes == nil {
			return errNoThread
		}
		return nil
	})
	if err != nil {
		p.Stop()
	}
	return err
}

// pointer converts a number from the toolkit back to a pointer. It points to
// memory of the virtual machine, which Go does not move.
func pointer(p uintptr) unsafe.Pointer { return *(*unsafe.Pointer)(unsafe.Pointer(&p)) }

// Drain implements device.Port.
func (p *Port) Drain(b *device.Batch) {
	if !p.begun {
		p.begun = true
		p.tellMotion(b)
	}
	var lost C.int64_t
	for {
		n := int(C.still_motion_take(p.motion, &p.events[0], C.int(len(p.events)), &lost))
		p.join.add(convert(p.events[:n]), b)
		if n < len(p.events) {
			break
		}
	}
	b.Lost += int(lost)
	p.drainFixes(b)
}

func convert(events []C.still_event) []event {
	out := make([]event, len(events))
	for i, e := range events {
		out[i] = event{t: int64(e.t), kind: int32(e.kind), v: r3.Vec{X: float64(e.x), Y: float64(e.y), Z: float64(e.z)}}
	}
	return out
}

// tellMotion reports which of the sensors the phone has.
func (p *Port) tellMotion(b *device.Batch) {
	has := int(C.still_motion_has(p.motion))
	p.join.noTurn = has&turn == 0
	for _, s := range []struct {
		bit    int
		sensor sensors.Sensor
		name   finding.Code
	}{
		{force, sensors.SensorMotion, "sensor.accelerometer"},
		{turn, sensors.SensorTurn, "sensor.gyroscope"},
		{pressure, sensors.SensorPressure, "sensor.barometer"},
	} {
		t := device.Report{Sensor: s.sensor, Condition: sensors.Available}
		if has&s.bit == 0 {
			t.Condition, t.Detail = sensors.Missing, finding.New("sensor.none", finding.Of("what", finding.New(s.name)))
		}
		b.Reports = append(b.Reports, t)
	}
}

func (p *Port) drainFixes(b *device.Batch) {
	var some [16]C.still_fix
	n := int(C.still_fixes_take(p.fixes, &some[0], C.int(len(some))))
	for _, f := range some[:n] {
		l := location{t: int64(f.t), utc: int64(f.utc_ms), lat: float64(f.lat_deg), lon: float64(f.lon_deg), alt: float64(f.alt_m),
			speed: float64(f.speed_mps), speedSD: float64(f.speed_sd_mps), bearing: float64(f.bearing_deg), h2: float64(f.h_sd_m)}
		b.Fixes = append(b.Fixes, l.fix())
	}
	var why [200]C.char
	state := int(C.still_fixes_state(p.fixes, &why[0], C.int(len(why))))
	if state == p.state {
		return
	}
	p.state = state
	if t, ok := fixReport(state, C.GoString(&why[0])); ok {
		b.Reports = append(b.Reports, t)
	}
}

// Now implements device.Port: seconds since the phone was started.
func (p *Port) Now() float64 { return seconds(int64(C.still_now())) }

// Stop implements device.Port.
func (p *Port) Stop() {
	if p.motion != nil {
		C.still_motion_stop(p.motion)
		p.motion = nil
	}
	if p.fixes != nil {
		C.still_fixes_stop(p.fixes)
		p.fixes = nil
	}
}
