package shell_test

import (
	"crypto/rand"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// TestTheMicrophoneNeedsLeave switches sound on, is refused, is granted it, and
// switches it off again.
func TestTheMicrophoneNeedsLeave(t *testing.T) {
	files := platformtest.NewMemory()
	var allowed atomic.Bool
	var opened atomic.Int32
	h := openOn(t, &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: rand.Reader, Source: quiet, Locale: "en-IE",
		Hear:          func() sensors.Source { opened.Add(1); return quiet() },
		PermitHearing: allowed.Load})
	listens := func() bool {
		c, err := store.ReadChoices(files)
		if err != nil {
			t.Fatal(err)
		}
		return c.Sound
	}
	until := func(what string, ok func() bool) {
		t.Helper()
		for deadline := time.Now().Add(10 * time.Second); !ok(); time.Sleep(10 * time.Millisecond) {
			if time.Now().After(deadline) {
				t.Fatal(what)
			}
		}
	}
	h.touch("More")
	if opened.Load() > 0 || listens() {
		t.Fatal("the microphone is used although nobody switched it on")
	}
	h.touch("On")
	h.await("The microphone was not allowed")
	if opened.Load() > 0 || listens() {
		t.Error("the microphone is used although leave was refused")
	}
	allowed.Store(true)
	h.touch("On")
	until("the microphone is not used although leave was given", func() bool { return opened.Load() == 1 && listens() })
	h.touch("Off")
	until("the microphone stays on", func() bool { return !listens() })
}
