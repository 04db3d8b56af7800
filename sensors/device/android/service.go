//go:build android || doubles

package android

// #include "service.h"
import "C"

import (
	"errors"
	"runtime/cgo"
	"sync/atomic"
	"time"

	"stillair/sensors/finding"
)

// Notice is the notification of the running service. It has no speed: nobody
// should look at it while riding.
type Notice struct {
	Channel     string // its name in the settings
	Title, Text string
	End         string // on its button
	Since       time.Time
}

// Happened is what happened to the service.
type Happened int32

// The events of RideService; files/smali of package app/desk/android has the
// same numbers.
const (
	started Happened = iota + 1
	refused
	EndAsked // the rider touched the button of the notification
	Swiped   // the rider swiped the app away; the service continues
	Gone     // the system ended the service
)

// Service keeps the app running while a ride is recorded, with the screen off
// or the app hidden: a foreground service of Android with a wake lock. An app
// has one.
type Service struct {
	native Native
	after  func(time.Duration) <-chan time.Time
	self   cgo.Handle
	ending atomic.Bool
	begun  chan answer
	events chan Happened
}

type answer struct {
	what Happened
	why  string
}

// NewService returns the service of the app behind native; it does not run yet.
// after is time.After or a stand-in for it.
func NewService(native Native, after func(time.Duration) <-chan time.Time) *Service {
	s := &Service{native: native, after: after, begun: make(chan answer, 1), events: make(chan Happened, 16)}
	s.self = cgo.NewHandle(s) // for the life of the process: the service may send events at any time
	return s
}

// answerWithin is how long Android may take to start a service that the rider
// waits for.
const answerWithin = 5 * time.Second

// ErrNoAnswer is returned if Android neither starts the service nor refuses.
var ErrNoAnswer = finding.Fail("android.service_not_started")

// Begin starts the service, or changes the notice and type of a running one. It
// returns once the service runs or Android has refused. The app must be visible,
// and the permission for the location, and for the microphone with sound, must
// have been given.
func (s *Service) Begin(n Notice, sound bool) error {
	s.ending.Store(false)
	select { // drop a late answer to an earlier call
	case <-s.begun:
	default:
	}
	types := C.int(C.STILL_TYPE_LOCATION)
	if sound {
		types |= C.STILL_TYPE_MICROPHONE
	}
	err := s.with(n, types, func(env *C.JNIEnv, ctx C.jobject, r *C.still_ride, why *C.char) C.int {
		return C.still_ride_begin(env, ctx, r, why, room)
	})
	if err != nil {
		return err
	}
	select {
	case a := <-s.begun:
		if a.what == refused {
			return errors.New(a.why)
		}
		return nil
	case <-s.after(answerWithin):
		return ErrNoAnswer
	}
}

// Show changes the notice of a running service.
func (s *Service) Show(n Notice) error {
	return s.with(n, 0, func(env *C.JNIEnv, ctx C.jobject, r *C.still_ride, why *C.char) C.int {
		return C.still_ride_show(env, ctx, r, why, room)
	})
}

// with calls a C function with a notice.
func (s *Service) with(n Notice, types C.int, call func(*C.JNIEnv, C.jobject, *C.still_ride, *C.char) C.int) error {
	return s.native(func(_, env, ctx uintptr) error {
		var c texts
		defer c.free()
		r := C.still_ride{channel: c.add(n.Channel), title: c.add(n.Title), text: c.add(n.Text), end: c.add(n.End),
			since_ms: C.int64_t(n.Since.UnixMilli()), ride: C.int64_t(s.self), types: types}
		var why [room]C.char
		return explain(call((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &r, &why[0]), &why)
	})
}

// End stops the service.
func (s *Service) End() error {
	s.ending.Store(true)
	return s.native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		return explain(C.still_ride_end((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room), &why)
	})
}

// Events returns the events of the service: EndAsked, Swiped and Gone, the last
// only if End was not called.
func (s *Service) Events() <-chan Happened { return s.events }

// took receives the events of the service, on Java's UI thread: it must not
// block.
func (s *Service) took(a answer) {
	switch {
	case a.what == started || a.what == refused:
		select {
		case s.begun <- a:
		default:
		}
	case a.what == Gone && s.ending.Load():
	default:
		select {
		case s.events <- a.what:
		default: // with sixteen unread events another one adds nothing
		}
	}
}

//export Java_stillair_phone_RideService_told
func Java_stillair_phone_RideService_told(env *C.JNIEnv, _ C.jclass, ride C.jlong, what C.jint, words C.jstring) {
	if ride == 0 {
		return
	}
	var why [room]C.char
	C.still_words(env, words, &why[0], room)
	cgo.Handle(ride).Value().(*Service).took(answer{Happened(what), C.GoString(&why[0])})
}
