//go:build android || doubles

package android

// #cgo LDFLAGS: -ldl
// #include <stdlib.h>
// #include "microphone.h"
// #include "leave.h"
import "C"

import (
	"errors"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// Microphone drives the microphone of the phone (device.Microphone). It does not ask
// for permission: Android takes one question at a time, and when recording starts
// that may be the one for the location. PermitMicrophone asks.
type Microphone struct {
	native  Native
	library string
	stream  *C.still_microphone
	say     *device.Report // to be reported with the next batch
	state   int
	heard   hearing
	some    [32]C.still_heard
}

// NewMicrophone returns the microphone of the phone behind native.
func NewMicrophone(native Native) *Microphone {
	return &Microphone{native: native, library: "libaaudio.so"}
}

// leave returns the permission and abilities of the microphone: a sum of STILL_….
func leave(native Native) (is C.int, err error) {
	err = native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		is = C.still_hear_leave((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room)
		if is < 0 {
			return errors.New(C.GoString(&why[0]))
		}
		return nil
	})
	return is, err
}

// Start implements device.Microphone.
func (m *Microphone) Start() {
	switch is, err := leave(m.native); {
	case err != nil:
		m.tell(sensors.Missing, finding.New("android.microphone_refused", sensors.Cause(err)))
	case is&C.STILL_MAY_HEAR == 0:
		m.tell(sensors.Denied, finding.New("android.no_microphone_leave"))
	default:
		var c texts
		defer c.free()
		if m.stream = C.still_microphone_start(c.add(m.library), is&C.STILL_UNTREATED); m.stream == nil {
			m.tell(sensors.Missing, errNoThread.Finding)
		}
	}
}

func (m *Microphone) tell(c sensors.Condition, detail finding.Finding) {
	m.say = &device.Report{Sensor: sensors.SensorSound, Condition: c, Detail: detail}
}

// Drain implements device.Microphone.
func (m *Microphone) Drain(b *device.Batch) {
	if m.say != nil {
		b.Reports, m.say = append(b.Reports, *m.say), nil
	}
	if m.stream == nil {
		return
	}
	var rate, code C.int32_t
	state := int(C.still_microphone_state(m.stream, &rate, &code))
	if m.heard.rate == 0 && rate > 0 {
		m.heard = newHearing(float64(rate))
	}
	some := m.heard.rate > 0 && m.take(b)
	if state == m.state || state == microphoneCut && some { // the reason of the end is reported after the last sound
		return
	}
	m.state = state
	if t, ok := microphoneReport(state, int(code)); ok {
		b.Reports = append(b.Reports, t)
	}
}

// take reports whether anything came.
func (m *Microphone) take(b *device.Batch) (some bool) {
	var lost C.int64_t
	for {
		n := int(C.still_microphone_take(m.stream, &m.some[0], C.int(len(m.some)), &lost))
		for i := range m.some[:n] {
			h := &m.some[i]
			level := make([]int16, h.count)
			for k := range level {
				level[k] = int16(h.level[k])
			}
			m.heard.add(heard{int64(h.first), int64(h.n), int64(h.t), h.stamped != 0, level}, b)
		}
		some = some || n > 0
		if n < len(m.some) {
			break
		}
	}
	b.Lost += int(lost)
	return some
}

// Stop implements device.Microphone.
func (m *Microphone) Stop() {
	if m.stream != nil {
		C.still_microphone_stop(m.stream)
		m.stream = nil
	}
}

// The waiting times of PermitMicrophone.
const (
	look    = 100 * time.Millisecond
	patient = 600 // checks until the rider is assumed to have left
)

// answers counts the questions that the rider has answered.
func answers(native Native) (n C.int, err error) {
	err = native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		if n = C.still_answers((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room); n < 0 {
			return errors.New(C.GoString(&why[0]))
		}
		return nil
	})
	return n, err
}

// PermitMicrophone asks the rider for permission to use the microphone and reports whether
// it was given; it waits for the answer, which the app's activity counts. If the rider has
// chosen not to be asked again, Android answers by itself. after is time.After or a
// stand-in for it.
func PermitMicrophone(native Native, after func(time.Duration) <-chan time.Time) bool {
	is, err := leave(native)
	if err != nil || is&C.STILL_MAY_HEAR != 0 {
		return err == nil
	}
	before, err := answers(native)
	if err != nil || !askToHear(native) {
		return false
	}
	for range patient {
		<-after(look)
		if is, err = leave(native); err != nil || is&C.STILL_MAY_HEAR != 0 {
			return err == nil
		}
		if now, err := answers(native); err != nil || now != before {
			is, err = leave(native) // the answer may have come in between
			return err == nil && is&C.STILL_MAY_HEAR != 0
		}
	}
	return false
}

func askToHear(native Native) bool {
	return native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		return explain(C.still_hear_ask((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room), &why)
	}) == nil
}
