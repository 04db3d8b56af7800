//go:build doubles

package android

import (
	"strings"
	"testing"
	"time"
)

// These tests run the service as packed: its classes are converted back from
// the package's dex file (.ci/android/doubles).

func notice() Notice {
	return Notice{Channel: "Rides", Title: "Recording", Text: "Put the phone away", End: "End the ride", Since: time.UnixMilli(1_780_000_000_000)}
}

// The notification before Android 12 and from then on.
const (
	noticeWords = "Recording|Put the phone away|1780000000000|android.intent.action.MAIN|End the ride|"
	noticeOf12  = "Recording|Put the phone away|1780000000000|android.intent.action.MAIN|End the ride, unlocked|at once|"
)

// running is a service that runs on a phone of the given version.
func running(t *testing.T, api int, sound bool) *Service {
	t.Helper()
	machine.Reset(api)
	machine.Set("allowed", "yes")
	machine.Set("may hear", "yes")
	s := NewService(machine.Native, time.After)
	if err := s.Begin(notice(), sound); err != nil {
		t.Fatal(err)
	}
	return s
}

func holds(t *testing.T, want map[string]string) {
	t.Helper()
	machine.Does("settle")
	for key, value := range want {
		if got := machine.Get(key); got != value {
			t.Errorf("%s: %q, want %q", key, got, value)
		}
	}
}

// next is the next event of the service; 0 if none.
func next(s *Service) Happened {
	machine.Does("settle")
	select {
	case h := <-s.Events():
		return h
	default:
		return 0
	}
}

// TestServiceStarts: 8 is the type of the location, 136 that with the
// microphone; before Android 10 a service had no types. 2 is START_NOT_STICKY.
func TestServiceStarts(t *testing.T) {
	for _, c := range []struct {
		name   string
		api    int
		sound  bool
		types  string
		notice string
	}{
		{"Android 15", 35, false, "8", noticeOf12},
		{"with sound", 35, true, "136", noticeOf12},
		{"Android 11", 30, false, "8", noticeWords},
		{"Android 8", 26, false, "without a type", noticeWords},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := running(t, c.api, c.sound)
			holds(t, map[string]string{"types": c.types, "notification": c.notice, "held": "1", "let go": "", "returned": "2", "channel": "ride: Rides"})
			if err := s.End(); err != nil {
				t.Fatal(err)
			}
			holds(t, map[string]string{"let go": "1", "destroyed": "1"})
			if h := next(s); h != 0 {
				t.Errorf("reported %d, though the program itself ended the service", h)
			}
		})
	}
}

func TestServiceIsRefused(t *testing.T) {
	for _, c := range []struct {
		name, set, value string
		sound            bool
		says             string
	}{
		{"no leave for the location", "allowed", "no", false, "ACCESS_FINE_LOCATION"},
		{"no leave for the microphone", "may hear", "no", true, "RECORD_AUDIO"},
		{"no wake lock", "no wake lock", "yes", false, "WAKE_LOCK"},
		{"hidden", "hidden", "yes", false, "in background"},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(35)
			machine.Set("allowed", "yes")
			machine.Set("may hear", "yes")
			machine.Set(c.set, c.value)
			err := NewService(machine.Native, time.After).Begin(notice(), c.sound)
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("err = %v, want %s in it", err, c.says)
			}
			if c.set != "hidden" {
				holds(t, map[string]string{"stopped itself": "1", "held": "", "destroyed": "1"})
			}
		})
	}
}

// TestServiceWidens: sound is switched on while the service runs. If that is
// refused, it continues as before.
func TestServiceWidens(t *testing.T) {
	s := running(t, 35, false)
	if err := s.Begin(notice(), true); err != nil {
		t.Fatal(err)
	}
	holds(t, map[string]string{"types": "136", "held": "1"})

	s = running(t, 35, false)
	machine.Set("foreground", "yes")
	machine.Set("hidden", "yes")
	if err := s.Begin(notice(), true); err == nil {
		t.Error("a hidden app was given the microphone")
	}
	holds(t, map[string]string{"types": "8", "held": "1", "let go": "", "stopped itself": ""})
}

func TestServiceShowsAnotherNotice(t *testing.T) {
	s := running(t, 35, false)
	n := notice()
	n.Text = "The phone is full"
	if err := s.Show(n); err != nil {
		t.Fatal(err)
	}
	holds(t, map[string]string{"notification": strings.Replace(noticeOf12, "Put the phone away", "The phone is full", 1), "types": "8"})
}

// TestWhatHappensToTheService: the button and a swipe reach the program and do
// not change the service; its end is reported too, if unrequested.
func TestWhatHappensToTheService(t *testing.T) {
	for _, c := range []struct {
		does  string
		want  Happened
		freed string
	}{
		{"touch end", EndAsked, ""},
		{"swipe", Swiped, ""},
		{"kill", Gone, "1"},
	} {
		t.Run(c.does, func(t *testing.T) {
			s := running(t, 35, false)
			machine.Does(c.does)
			if got := next(s); got != c.want {
				t.Errorf("reported %d, want %d", got, c.want)
			}
			holds(t, map[string]string{"held": "1", "let go": c.freed})
			if h := next(s); h != 0 {
				t.Errorf("reported %d as well", h)
			}
		})
	}
}

// TestServiceStartedWithNothing: a process that Android starts again has no
// recording, and its service ends itself; a running one stays.
func TestServiceStartedWithNothing(t *testing.T) {
	machine.Reset(35)
	machine.Does("start with nothing")
	holds(t, map[string]string{"stopped itself": "1", "held": "", "returned": "2"})

	s := running(t, 35, false)
	machine.Does("start with nothing")
	holds(t, map[string]string{"stopped itself": "", "held": "1", "let go": ""})
	if err := s.End(); err != nil {
		t.Fatal(err)
	}
}

// mute is a phone on which Android never answers.
func TestServiceWithoutAnAnswer(t *testing.T) {
	soon := func(time.Duration) <-chan time.Time { return time.After(time.Millisecond) }
	s := NewService(func(func(vm, env, ctx uintptr) error) error { return nil }, soon)
	if err := s.Begin(notice(), false); err != ErrNoAnswer {
		t.Errorf("err = %v", err)
	}
}

// TestSettings: 0 to 4 are PowerManager's LOCATION_MODE_…; with 3 a foreground
// service keeps the location.
func TestSettings(t *testing.T) {
	for _, c := range []struct {
		name string
		api  int
		set  map[string]string
		want Settings
	}{
		{"as it should be", 35, nil, Settings{Lit: true, Notifications: true}},
		{"no notifications", 35, map[string]string{"no notifications": "yes"}, Settings{Lit: true}},
		{"forbidden in the background", 35, map[string]string{"restricted": "yes"}, Settings{Lit: true, Notifications: true, Restricted: true}},
		{"Battery Saver, satellites stop", 35, map[string]string{"saving": "yes", "location mode": "1"}, Settings{Lit: true, Notifications: true, ScreenOff: true}},
		{"Battery Saver, all stops", 35, map[string]string{"saving": "yes", "location mode": "2"}, Settings{Lit: true, Notifications: true, ScreenOff: true}},
		{"Battery Saver, throttled", 35, map[string]string{"saving": "yes", "location mode": "4"}, Settings{Lit: true, Notifications: true, ScreenOff: true}},
		{"Battery Saver, foreground goes on", 35, map[string]string{"saving": "yes", "location mode": "3"}, Settings{Lit: true, Notifications: true}},
		{"Battery Saver, no change", 35, map[string]string{"saving": "yes", "location mode": "0"}, Settings{Lit: true, Notifications: true}},
		{"not saving", 35, map[string]string{"location mode": "1"}, Settings{Lit: true, Notifications: true}},
		{"the coarse location alone", 35, map[string]string{"approximate": "yes"}, Settings{Lit: true, Notifications: true, Approximate: true}},
		{"the precise location too", 35, map[string]string{"allowed": "yes"}, Settings{Lit: true, Notifications: true}},
		{"the screen is off", 35, map[string]string{"dark": "yes"}, Settings{Notifications: true}},
		{"Android 8 tells less", 26, map[string]string{"saving": "yes", "location mode": "1", "restricted": "yes"}, Settings{Lit: true, Notifications: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(c.api)
			for key, value := range c.set {
				machine.Set(key, value)
			}
			if got, err := ReadSettings(machine.Native); err != nil || got != c.want {
				t.Errorf("%+v, %v; want %+v", got, err, c.want)
			}
		})
	}
}

func TestAskToNotify(t *testing.T) {
	for api, want := range map[int]string{32: "", 33: "1"} {
		machine.Reset(api)
		if err := AskToNotify(machine.Native); err != nil || machine.Get("asked to notify") != want {
			t.Errorf("API %d: %v, asked %q times", api, err, machine.Get("asked to notify"))
		}
	}
}

func TestLastExit(t *testing.T) {
	for _, c := range []struct {
		name, set string
		api       int
		want      Exit
		known     bool
	}{
		{"too little memory", "3", 35, ExitMemory, true},
		{"ended by the rider", "10", 30, ExitAsked, true},
		{"the first start", "", 35, 0, false},
		{"Android 10", "3", 29, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			machine.Reset(c.api)
			machine.Set("exit", c.set)
			got, err := LastExit(machine.Native)
			if got != c.want || (err == nil) != c.known {
				t.Errorf("%d, %v", got, err)
			}
		})
	}
}
