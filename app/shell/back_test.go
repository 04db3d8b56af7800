package shell_test

import (
	"strings"
	"sync"
	"testing"

	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// browser is the history of a page, as a browser keeps it.
type browser struct {
	mu        sync.Mutex
	deep      int
	recording bool
	back      func()
}

func (b *browser) reported() (deep int, recording bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.deep, b.recording
}

// returning is an app with a bike, in a browser, before the ride.
func returning(t *testing.T) (hand, *browser, *handClock) {
	t.Helper()
	b, c := &browser{}, &handClock{}
	files := platformtest.NewMemory()
	if _, err := store.NewBikes(files, c).Put(store.Bike{Name: "test bike", Setups: []store.Setup{{Name: "panniers"}}}); err != nil {
		t.Fatal(err)
	}
	d := phone(nil, files)
	d.Background, d.Clock = nil, c
	d.Source = func() sensors.Source { return still{} }
	d.WentBack = func(back func()) { b.back = back }
	d.Deep = func(n int, recording bool) {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.deep, b.recording = n, recording
	}
	return openOn(t, d), b, c
}

// TestBackGoesUpOneScreen opens screens under every tab and goes back with the
// browser's button: each step shows the previous screen, and the browser knows
// how many there are.
func TestBackGoesUpOneScreen(t *testing.T) {
	for _, c := range []struct {
		name string
		ways []string // labels touched one after the other
	}{
		{"the air", []string{"Air today"}},
		{"the guide", []string{"Your first coast-down"}},
		{"results", []string{"Results"}},
		{"a bike", []string{"Bikes", "test bike"}},
		{"a new bike", []string{"Bikes", "Add a bike"}},
		{"compare", []string{"Compare"}},
		{"more", []string{"More"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h, b, clock := returning(t)
			clock.until(t, h, true, "test bike")
			var seen []string
			for i, way := range c.ways {
				seen = append(seen, firstLine(h))
				h.touch(way)
				if deep, _ := b.reported(); deep != i+1 {
					t.Fatalf("after %q the browser knows of %d screens to go back, want %d", way, deep, i+1)
				}
			}
			for i := len(seen) - 1; i >= 0; i-- {
				b.back()
				if deep, _ := b.reported(); deep != i || firstLine(h) != seen[i] {
					t.Fatalf("back is %d deep at %q, want %d at %q", deep, firstLine(h), i, seen[i])
				}
			}
			if h.app.Back() {
				t.Error("there is more to go back to than was opened")
			}
		})
	}
}

// firstLine is the title of the screen.
func firstLine(h hand) string {
	title, _, _ := strings.Cut(h.words(), "\n")
	return title
}

// TestBackDoesNotEndARecording: it closes a question, and nothing else.
func TestBackDoesNotEndARecording(t *testing.T) {
	h, b, c := returning(t)
	h.touch("Start recording")
	c.until(t, h, true, "Standing")
	holds := func(deep int, words string) {
		t.Helper()
		if is, recording := b.reported(); is != deep || !recording {
			t.Fatalf("the browser knows of %d screens, recording %v; want %d", is, recording, deep)
		}
		if !strings.Contains(h.words(), words) {
			t.Fatalf("the screen does not say %q but\n%s", words, h.words())
		}
	}
	holds(1, "Standing")
	b.back()
	b.back()
	holds(1, "Standing")
	h.touch("Other setup now")
	holds(2, "panniers")
	b.back()
	holds(1, "Standing")
	h.touch("Pocket mode")
	b.back()
	holds(1, inThePocket)
}
