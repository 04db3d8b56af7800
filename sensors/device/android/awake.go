//go:build android || doubles

package android

// #include "awake.h"
import "C"

import (
	"errors"
	"sync"
)

// Awake keeps the screen on. Nothing records with the app hidden.
type Awake struct{ Native Native }

// Hold keeps the screen on until release is called.
func (a Awake) Hold() (release func(), err error) {
	var held C.jobject
	err = a.Native(func(_, env, ctx uintptr) error {
		var why [200]C.char
		held = C.still_awake_hold((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], C.int(len(why)))
		if uintptr(held) == 0 {
			return errors.New(C.GoString(&why[0]))
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return sync.OnceFunc(func() {
		a.Native(func(_, env, _ uintptr) error {
			C.still_awake_release((*C.JNIEnv)(pointer(env)), held)
			return nil
		})
	}), nil
}
