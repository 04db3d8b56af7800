//go:build android || doubles

package android

// #include "service.h"
import "C"

import "stillair/sensors/finding"

// Settings are the phone's settings that decide whether a ride can be recorded
// with the screen off.
type Settings struct {
	Notifications bool // they are shown, so that the ride can be ended from them
	// ScreenOff is true if Battery Saver is on and stops GPS when the screen
	// goes off.
	ScreenOff bool
	// Restricted is true if the app is not allowed to run in the background.
	Restricted bool
	// Approximate is true if only the coarse location is allowed, which has no
	// speed.
	Approximate bool
	Lit         bool // the screen is on
}

// Effects of Battery Saver on the location (PowerManager.LOCATION_MODE_…): 0
// none, 1 no satellites with the screen off, 2 no location with the screen off,
// 3 none except in the foreground, 4 requests throttled with the screen off.
const (
	modeNoChange   = 0
	modeForeground = 3
)

func newSettings(x C.still_settings) Settings {
	stops := x.location_mode != modeNoChange && x.location_mode != modeForeground && x.location_mode >= 0
	return Settings{Notifications: x.notifications != 0, ScreenOff: x.saving == 1 && stops, Restricted: x.restricted == 1,
		Approximate: x.approximate == 1, Lit: x.lit != 0}
}

// ReadSettings reads them from the phone.
func ReadSettings(native Native) (s Settings, err error) {
	err = native(func(_, env, ctx uintptr) error {
		var x C.still_settings
		var why [room]C.char
		if err := explain(C.still_settings_read((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &x, &why[0], room), &why); err != nil {
			return err
		}
		s = newSettings(x)
		return nil
	})
	return s, err
}

// AskToNotify shows Android's request for notifications.
func AskToNotify(native Native) error {
	return native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		return explain(C.still_notify_ask((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room), &why)
	})
}

// Exit is how the app's process last ended.
type Exit int

// The reasons reported by Android, by the numbers of ApplicationExitInfo.
const (
	ExitMemory    Exit = 3 // the phone ran short of it
	ExitCrash     Exit = 4
	ExitNative    Exit = 5 // a crash outside Java
	ExitHung      Exit = 6
	ExitLeave     Exit = 8  // a permission was taken back
	ExitExcessive Exit = 9  // too much power or processor
	ExitAsked     Exit = 10 // the rider ended the app
	ExitStopped   Exit = 11
	ExitUpdated   Exit = 16
)

var errExitUnknown = finding.Fail("android.exit_unknown")

// LastExit asks Android; it is known from version 11 on.
func LastExit(native Native) (e Exit, err error) {
	err = native(func(_, env, ctx uintptr) error {
		code := C.still_last_exit((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)))
		if code < 0 {
			return errExitUnknown
		}
		e = Exit(code)
		return nil
	})
	return e, err
}
