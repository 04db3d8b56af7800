package device

import (
	"crypto/rand"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2/driver"
	"fyne.io/fyne/v2/lang"

	"stillair/app/platform"
	"stillair/sensors"
	"stillair/sensors/device"
	"stillair/sensors/device/android"
)

// native runs fn where Android's interfaces can be reached.
func native(fn func(vm, env, ctx uintptr) error) error {
	return driver.RunNative(func(c any) error {
		a := c.(*driver.AndroidContext)
		return fn(a.VM, a.Env, a.Ctx)
	})
}

// Open returns the phone. It may not be called from the drawing loop.
func Open() (*platform.Device, error) {
	folder, err := android.FilesFolder(native)
	if err != nil {
		return nil, err
	}
	files, err := platform.NewDir(filepath.Join(folder, "stillair"))
	if err != nil {
		return nil, err
	}
	d := &platform.Device{
		Files:  files,
		Clock:  platform.NewSystemClock(),
		Random: rand.Reader,
		Source: func() sensors.Source { return device.NewLive(android.NewPort(native), time.After) },
		Hear: func() sensors.Source {
			return device.NewLive(device.Hearing(android.NewPort(native), android.NewMicrophone(native)), time.After)
		},
		PermitHearing: func() bool { return android.PermitMicrophone(native, time.After) },
		Background:    newBackground(),
		Obstacles:     obstacles,
		AskToNotify:   func() { _ = android.AskToNotify(native) }, // if it is refused, the rider is simply not asked
		LastEnd:       lastEnd,
		Lit:           lit,
		Trial:         trial,
		Machine:       platform.PhoneApp,
		Share:         android.Sharer{Native: native},
		Buzzer:        android.Buzzer{Native: native},
		Locale:        lang.SystemLocale().String(),
	}
	if voice, err := android.NewVoice(native); err == nil { // a phone may have none
		d.Voice = voice
	}
	return d, nil
}
