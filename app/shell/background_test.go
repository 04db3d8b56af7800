package shell_test

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// pocket is a Background that records the calls to it.
type pocket struct {
	refuses string // it refuses requests that contain this
	happens chan platform.Happening

	mu   sync.Mutex
	said []string
}

func newPocket() *pocket { return &pocket{happens: make(chan platform.Happening)} }

func (p *pocket) note(s string) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.said = append(p.said, s)
	if p.refuses != "" && strings.Contains(s, p.refuses) {
		return errors.Join(platform.ErrBackground, errors.New("no"))
	}
	return nil
}

func (p *pocket) Begin(n platform.Notification, sound bool) error {
	return p.note(fmt.Sprintf("begin %q %q, sound %v", n.Title, n.Text, sound))
}
func (p *pocket) Show(n platform.Notification) error    { return p.note("show " + n.Text) }
func (p *pocket) End() error                            { return p.note("end") }
func (p *pocket) Happenings() <-chan platform.Happening { return p.happens }
func (p *pocket) asked() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return slices.Clone(p.said)
}

// still is a source for a phone at rest, without motion samples.
type still struct{}

func (still) Run(ctx context.Context, to sensors.Sink) error {
	for i := 0; ; i++ {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(20 * time.Millisecond):
		}
		to.Fix(sensors.NewFix(float64(i)/50, 0))
	}
}

func phone(p platform.Background, files platform.Files) *platform.Device {
	return &platform.Device{Files: files, Clock: platform.NewSystemClock(), Random: rand.Reader, Source: func() sensors.Source { return still{} }, Locale: "en-IE", Background: p}
}

func TestARideEndsFromTheNotification(t *testing.T) {
	p := newPocket()
	h := openOn(t, phone(p, platformtest.NewMemory()))
	h.touch("Start recording")
	h.await("recorded")
	p.happens <- platform.SwipedUp // changes nothing
	p.happens <- platform.EndAsked
	h.await("There is no ride in this recording") // of so few fixes
	got := slices.DeleteFunc(p.asked(), func(s string) bool { return strings.HasPrefix(s, "show ") })
	if want := []string{`begin "Recording the ride" "Everything is being saved. Nothing to do here.", sound false`, "end"}; !slices.Equal(got, want) {
		t.Errorf("asked for %q, want %q", got, want)
	}
}

// TestTheMicrophoneIsRefused: the ride is recorded without it.
func TestTheMicrophoneIsRefused(t *testing.T) {
	files := platformtest.NewMemory()
	if err := store.WriteChoices(files, store.Choices{Sound: true}); err != nil {
		t.Fatal(err)
	}
	p := newPocket()
	p.refuses = "sound true"
	d := phone(p, files)
	d.Hear = d.Source
	h := openOn(t, d)
	h.touch("Start recording")
	h.await("recorded")
	for deadline := time.Now().Add(10 * time.Second); len(p.asked()) < 2; time.Sleep(10 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatalf("asked for %q", p.asked())
		}
	}
	if got := p.asked(); !strings.HasSuffix(got[0], "sound true") || !strings.HasSuffix(got[1], "sound false") {
		t.Errorf("asked for %q", got)
	}
}

func TestARefusedBackgroundIsShown(t *testing.T) {
	for _, c := range []struct {
		name    string
		refuses string
		happens platform.Happening
	}{
		{"at the start", "begin", ""},
		{"later", "", platform.CutShort},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := newPocket()
			p.refuses = c.refuses
			files := platformtest.NewMemory()
			h := openOn(t, phone(p, files))
			h.touch("Start recording")
			h.await("recorded")
			if c.happens != "" {
				p.happens <- c.happens
			}
			h.await("Keep the screen on and the app open")
			p.happens <- platform.EndAsked
			h.await("There is no ride in this recording", "Nothing to measure in this ride") // by how long a busy machine let it go on
			if c.happens == "" {
				return
			}
			sessions := store.NewSessions(files, platform.NewSystemClock())
			list, _ := sessions.List()
			rec, err := sessions.Read(list[0].ID)
			if err != nil || len(rec.Remarks) != 1 || !strings.Contains(rec.Remarks[0].Text, "ended the background service") {
				t.Errorf("the file says %+v, %v", rec, err)
			}
		})
	}
}

func TestObstaclesAreShownBeforeTheRide(t *testing.T) {
	d := phone(newPocket(), platformtest.NewMemory())
	var mu sync.Mutex
	asked, all := 0, []platform.Obstacle{platform.NoNotifications, platform.SavingBattery}
	d.Obstacles = func() []platform.Obstacle {
		mu.Lock()
		defer mu.Unlock()
		return all
	}
	d.AskToNotify = func() {
		mu.Lock()
		defer mu.Unlock()
		asked++
		all = all[1:]
	}
	h := openOn(t, d)
	h.await("Battery Saver switches the satellites off")
	h.await("Notifications are off")
	h.touch("Allow notifications")
	for deadline := time.Now().Add(20 * time.Second); strings.Contains(h.words(), "Notifications are off"); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal("the notifications are allowed, and it still says that they are off")
		}
	}
	mu.Lock()
	defer mu.Unlock()
	if asked != 1 {
		t.Errorf("asked %d times", asked)
	}
}

func TestHowTheAppEndedIsReported(t *testing.T) {
	files := platformtest.NewMemory()
	begunRide(t, store.NewSessions(files, platform.NewSystemClock()), store.About{})
	d := phone(newPocket(), files.CutPower())
	d.LastEnd = func() platform.Demise { return platform.ByMemory }
	h := openOn(t, d)
	h.await("A recording was cut off")
	h.await("The phone ran out of memory and closed the app.")
}

// TestSensorsRestWhileHidden: while the app is hidden the sensors are off,
// unless it is recording.
func TestSensorsRestWhileHidden(t *testing.T) {
	var runs atomic.Int32
	d := phone(newPocket(), platformtest.NewMemory())
	d.Source = func() sensors.Source { return counted{&runs} }
	h := openOn(t, d)
	reach := func(want int32) {
		t.Helper()
		for deadline := time.Now().Add(10 * time.Second); runs.Load() != want; time.Sleep(5 * time.Millisecond) {
			if time.Now().After(deadline) {
				t.Fatalf("%d sources run, want %d", runs.Load(), want)
			}
		}
	}
	hide := func(is bool) {
		h.mu.Lock()
		defer h.mu.Unlock()
		h.app.Hidden(is)
	}
	reach(1)
	hide(true)
	reach(0)
	hide(false)
	reach(1)
	h.touch("Start recording")
	h.await("recorded")
	hide(true)
	time.Sleep(100 * time.Millisecond)
	reach(1)
}

// counted counts how many of its kind run.
type counted struct{ runs *atomic.Int32 }

func (c counted) Run(ctx context.Context, to sensors.Sink) error {
	c.runs.Add(1)
	defer c.runs.Add(-1)
	return still{}.Run(ctx, to)
}
