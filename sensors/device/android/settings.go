//go:build android || doubles

package android

// #include "service.h"
import "C"

import "stillair/sensors/finding"

// Settings are what of the phone's settings decides whether a ride can be
// recorded with the screen off.
type Settings struct {
	Notifications bool // they are shown, and with them the way to end the ride
	// ScreenOff says that Battery Saver is on and stops the satellites when the
	// screen goes off.
	ScreenOff bool
	// Restricted says that the rider forbade the app to run in the background.
	Restricted bool
	// Approximate says that of the location only the coarse one may be used,
	// which has no speed.
	Approximate bool
	Lit         bool // the screen is on
}

// What Battery Saver does to the location (PowerManager.LOCATION_MODE_…): 0
// nothing, 1 no satellites with the screen off, 2 no location with the screen
// off, 3 none except for what is in the foreground, 4 none asked for with the
// screen off.
const (
	modeNoChange   = 0
	modeForeground = 3
)

func newSettings(x C.still_settings) Settings {
	stops := x.location_mode != modeNoChange && x.location_mode != modeForeground && x.location_mode >= 0
	return Settings{Notifications: x.notifications != 0, ScreenOff: x.saving == 1 && stops, Restricted: x.restricted == 1,
		Approximate: x.approximate == 1, Lit: x.lit != 0}
}

// ReadSettings asks the phone.
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

// AskToNotify puts Android's question for notifications on the screen.
func AskToNotify(native Native) error {
	return native(func(_, env, ctx uintptr) error {
		var why [room]C.char
		return explain(C.still_notify_ask((*C.JNIEnv)(pointer(env)), C.jobject(pointer(ctx)), &why[0], room), &why)
	})
}

// Exit is how the app's process ended the last time.
type Exit int

// The ways that Android tells of, by the numbers of ApplicationExitInfo.
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

// LastExit asks Android, which tells from 11 on.
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
