package shell_test

import (
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/trial"
)

// fast is a clock on which a minute takes a second and a half.
type fast struct{ platform.SystemClock }

func (c fast) Elapsed() time.Duration                 { return 40 * c.SystemClock.Elapsed() }
func (c fast) After(d time.Duration) <-chan time.Time { return c.SystemClock.After(d / 40) }

// TestATrialPackageTestsThePhoneFirst: at the first start the test is open; its
// result is kept, shown and shared.
func TestATrialPackageTestsThePhoneFirst(t *testing.T) {
	files, p, out := platformtest.NewMemory(), newPocket(), &outlet{shared: map[string][]byte{}}
	d := phone(p, files)
	d.Clock, d.Trial, d.Share = fast{platform.NewSystemClock()}, true, out
	var dark atomic.Bool
	d.Lit = func() bool { return !dark.Load() }
	h := openOn(t, d)
	h.await("Start the test")
	h.touch("Start the test")
	h.await("Lay the phone on its back")
	h.await("Now switch the screen off")
	dark.Store(true)
	time.Sleep(time.Second) // forty of the clock
	dark.Store(false)
	h.await("Share the result")
	if words := h.words(); !strings.Contains(words, "Background service") || !strings.Contains(words, "With the screen off") {
		t.Errorf("the screen says\n%s", words)
	}
	if got := p.asked(); len(got) != 2 || got[1] != "end" {
		t.Errorf("asked for %q", got)
	}
	h.touch("Share the result")
	for deadline := time.Now().Add(10 * time.Second); trial.Kept(files) == nil || out.file(trial.KeptAs) == nil; time.Sleep(10 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatalf("kept %v, shared %q", trial.Kept(files), out.file(trial.KeptAs))
		}
	}
	again := openOn(t, d)
	again.await("Before the ride")
	again.touch("More")
	again.touch("Test this phone")
	again.await("Test again")
}

// TestARideEndsATest: the ride needs the sensors.
func TestARideEndsATest(t *testing.T) {
	p := newPocket()
	d := phone(p, platformtest.NewMemory())
	d.Trial, d.Lit = true, func() bool { return true }
	h := openOn(t, d)
	h.await("Start the test")
	h.touch("Start the test")
	h.await("Lay the phone on its back")
	h.touch("Back")
	h.touch("Start recording")
	h.await("recorded")
	if got := p.asked(); len(got) != 1 {
		t.Errorf("asked for %q", got)
	}
}
