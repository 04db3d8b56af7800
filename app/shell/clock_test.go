package shell_test

import (
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// handClock stands still until a test moves it.
type handClock struct {
	mu    sync.Mutex
	now   time.Duration
	waits []wait
}

type wait struct {
	until time.Duration
	over  chan time.Time
}

func (c *handClock) Wall() time.Time {
	return time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC).Add(c.Elapsed())
}

func (c *handClock) Elapsed() time.Duration {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}

func (c *handClock) After(d time.Duration) <-chan time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	over := make(chan time.Time, 1)
	if d <= 0 {
		over <- time.Time{}
		return over
	}
	c.waits = append(c.waits, wait{c.now + d, over})
	return over
}

// tack is the step of the clock, and breath the real time that the goroutines
// it woke get to run: if that is too short they are late by the clock, without
// effect on the result.
const (
	tack   = 50 * time.Millisecond
	breath = 300 * time.Microsecond
)

// pass advances the clock.
func (c *handClock) pass(d time.Duration) {
	for end := c.Elapsed() + d; c.Elapsed() < end; time.Sleep(breath) {
		c.mu.Lock()
		c.now = min(c.now+tack, end)
		c.waits = slices.DeleteFunc(c.waits, func(w wait) bool {
			if w.until > c.now {
				return false
			}
			w.over <- time.Time{}
			return true
		})
		c.mu.Unlock()
	}
}

// until advances the clock until the screen shows some words, or no longer
// shows them.
func (c *handClock) until(t *testing.T, h hand, says bool, words string) {
	t.Helper()
	for range 2000 {
		if strings.Contains(h.words(), words) == says {
			return
		}
		c.pass(2 * tack)
	}
	t.Fatalf("does the screen say %q? It stays %v:\n%s", words, !says, h.words())
}
