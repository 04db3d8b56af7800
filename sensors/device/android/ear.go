//go:build android || doubles

package android

// #cgo LDFLAGS: -ldl
// #include <stdlib.h>
// #include "ear.h"
// #include "leave.h"
import "C"

import (
	"errors"
	"time"

	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/finding"
)

// Ear drives the microphone of the phone; it is a device.Ear. It does not ask
// for permission: Android takes one question at a time, and when recording starts
// that may be the one for the location. PermitEar asks.
type Ear struct {
	native  Native
	library string
	ear     *C.still_ear
	say     *device.Report // to be reported with the next batch
	state   int
	heard   hearing
	some    [32]C.still_heard
}

// NewEar returns the microphone of the phone behind native.
func NewEar(native Native) *Ear { return &Ear{native: native, library: "libaaudio.so"} }

// leave tells how it stands with the microphone: a sum of STILL_….
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

// Start implements device.Ear.
func (e *Ear) Start() {
	switch is, err := leave(e.native); {
	case err != nil:
		e.tell(sensors.Missing, finding.New("android.microphone_refused", sensors.Cause(err)))
	case is&C.STILL_MAY_HEAR == 0:
		e.tell(sensors.Denied, finding.New("android.no_microphone_leave"))
	default:
		var c texts
		defer c.free()
		if e.ear = C.still_ear_start(c.add(e.library), is&C.STILL_UNTREATED); e.ear == nil {
			e.tell(sensors.Missing, errNoThread.Finding)
		}
	}
}

func (e *Ear) tell(c sensors.Condition, detail finding.Finding) {
	e.say = &device.Report{Sensor: sensors.SensorSound, Condition: c, Detail: detail}
}

// Drain implements device.Ear.
func (e *Ear) Drain(b *device.Batch) {
	if e.say != nil {
		b.Reports, e.say = append(b.Reports, *e.say), nil
	}
	if e.ear == nil {
		return
	}
	var rate, code C.int32_t
	state := int(C.still_ear_state(e.ear, &rate, &code))
	if e.heard.rate == 0 && rate > 0 {
		e.heard = newHearing(float64(rate))
	}
	some := e.heard.rate > 0 && e.take(b)
	if state == e.state || state == earCut && some { // why it ended is reported after the last sound
		return
	}
	e.state = state
	if t, ok := earReport(state, int(code)); ok {
		b.Reports = append(b.Reports, t)
	}
}

// take reports whether anything came.
func (e *Ear) take(b *device.Batch) (some bool) {
	var lost C.int64_t
	for {
		n := int(C.still_ear_take(e.ear, &e.some[0], C.int(len(e.some)), &lost))
		for i := range e.some[:n] {
			h := &e.some[i]
			level := make([]int16, h.count)
			for k := range level {
				level[k] = int16(h.level[k])
			}
			e.heard.add(heard{int64(h.first), int64(h.n), int64(h.t), h.stamped != 0, level}, b)
		}
		some = some || n > 0
		if n < len(e.some) {
			break
		}
	}
	b.Lost += int(lost)
	return some
}

// Stop implements device.Ear.
func (e *Ear) Stop() {
	if e.ear != nil {
		C.still_ear_stop(e.ear)
		e.ear = nil
	}
}

// How PermitEar waits.
const (
	look    = 100 * time.Millisecond
	patient = 600 // looks until the rider is taken to have gone away
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

// PermitEar asks the rider for permission to use the microphone and reports whether
// it was given; it waits for the answer, which the app's activity counts. Where
// the rider has forbidden to be asked, Android answers by itself. after is
// time.After or a stand-in for it.
func PermitEar(native Native, after func(time.Duration) <-chan time.Time) bool {
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
