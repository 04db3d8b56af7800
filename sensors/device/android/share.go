//go:build android || doubles

package android

// #include <stdlib.h>
// #include "share.h"
import "C"

import (
	"context"
	"errors"
	"sync"
	"time"
	"unsafe"
)

// room is the maximum length of an explanation, in bytes.
const room = 200

// explain makes an error of the message that C wrote on failure.
func explain(ok C.int, why *[room]C.char) error {
	if ok != 0 {
		return nil
	}
	return errors.New(C.GoString(&why[0]))
}

// texts are strings for C.
type texts []*C.char

func (t *texts) add(s string) *C.char {
	c := C.CString(s)
	*t = append(*t, c)
	return c
}

func (t texts) free() {
	for _, c := range t {
		C.free(unsafe.Pointer(c))
	}
}

// Sharer passes a file to another app through the system's share sheet. It
// stays in the phone's downloads.
type Sharer struct{ Native Native }

// Share needs Android 10.
func (s Sharer) Share(ctx context.Context, name, mediaType string, data []byte) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	return s.Native(func(_, env, activity uintptr) error {
		var c texts
		defer c.free()
		var why [room]C.char
		return explain(C.still_share((*C.JNIEnv)(pointer(env)), C.jobject(pointer(activity)), c.add(name), c.add(mediaType),
			unsafe.Pointer(unsafe.SliceData(data)), C.int(len(data)), &why[0], room), &why)
	})
}

// Voice is the system's speech output. It takes a moment to get ready, so it is
// created well before it is needed.
type Voice struct {
	native Native
	mu     sync.Mutex
	voice  C.jobject
}

// NewVoice starts the system's speech output.
func NewVoice(native Native) (*Voice, error) {
	v := &Voice{native: native}
	err := native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		v.voice = C.still_voice_open((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room)
		if uintptr(v.voice) == 0 {
			return errors.New(C.GoString(&why[0]))
		}
		return nil
	})
	return v, err
}

// Say queues text, which is in the language of a BCP 47 tag.
func (v *Voice) Say(text, language string) error {
	v.mu.Lock()
	defer v.mu.Unlock()
	return v.native(func(_, env, _ uintptr) error {
		var c texts
		defer c.free()
		var why [room]C.char
		return explain(C.still_voice_say((*C.JNIEnv)(pointer(env)), v.voice, c.add(text), c.add(language), &why[0], room), &why)
	})
}

// Buzzer makes the phone vibrate.
type Buzzer struct{ Native Native }

// Buzz vibrates for d.
func (b Buzzer) Buzz(d time.Duration) error {
	return b.Native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		return explain(C.still_buzz((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), C.long(d.Milliseconds()), &why[0], room), &why)
	})
}
