package shell_test

import (
	"context"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"stillair/app/platform/platformtest"
	"stillair/app/screens/kit"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// tracked is a source of fixes on a manual clock: one every tenth of a second,
// at a given speed.
type tracked struct {
	clock  *handClock
	moving *atomic.Bool
	hole   sensors.Hole // reported once it is over; none if it has no end
}

func (s tracked) Run(ctx context.Context, to sensors.Sink) error {
	hole := s.hole
	for began := s.clock.Elapsed(); ; {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-s.clock.After(100 * time.Millisecond):
		}
		t, speed := (s.clock.Elapsed() - began).Seconds(), 0.0
		if s.moving.Load() {
			speed = 20
		}
		if hole.To > 0 && t > hole.From {
			if t < hole.To {
				continue
			}
			to.State(hole.State(sensors.SensorFix))
			hole = sensors.Hole{}
		}
		to.Fix(sensors.NewFix(t, speed))
	}
}

// pocketed is a ride on a manual clock, begun on a phone that records only with
// its screen on.
func pocketed(t *testing.T, hole sensors.Hole) (h hand, c *handClock, moving *atomic.Bool) {
	t.Helper()
	c, moving = &handClock{}, &atomic.Bool{}
	d := phone(nil, platformtest.NewMemory())
	d.Background, d.Clock = nil, c
	d.Source = func() sensors.Source { return tracked{c, moving, hole} }
	h = openOn(t, d)
	h.touch("Start recording")
	c.until(t, h, true, "Standing")
	return h, c, moving
}

// answering lists what on the screen responds to a tap, and what to being held.
func (h hand) answering() (touch []*kit.Touch, hold []*kit.Hold) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.visit(func(o fyne.CanvasObject) {
		switch x := o.(type) {
		case *kit.Touch:
			touch = append(touch, x)
		case *kit.Hold:
			hold = append(hold, x)
		}
	})
	return touch, hold
}

// rest holds the object with the label for a time on the clock.
func (h hand) rest(c *handClock, label string, long time.Duration) {
	h.t.Helper()
	_, holds := h.answering()
	for _, x := range holds {
		if strings.HasPrefix(x.AccessibilityLabel(), label) {
			h.mu.Lock()
			x.TouchDown(nil)
			h.mu.Unlock()
			c.pass(long)
			h.mu.Lock()
			x.TouchUp(nil)
			h.mu.Unlock()
			return
		}
	}
	h.t.Fatalf("nothing to hold is called %q on\n%s", label, h.words())
}

// strays taps everything on the screen, twice in a row, and touches everything
// that has to be held for a moment.
func (h hand) strays() {
	touches, holds := h.answering()
	for _, x := range holds {
		h.mu.Lock()
		x.TouchDown(nil)
		x.TouchUp(nil)
		x.MouseDown(nil)
		x.MouseUp(nil)
		h.mu.Unlock()
	}
	for _, x := range touches {
		h.mu.Lock()
		x.Tapped(nil)
		x.Tapped(nil)
		h.mu.Unlock()
	}
}

// onlyUnlocks checks that nothing on the screen responds to a tap, and exactly
// one object to being held.
func (h hand) onlyUnlocks() {
	h.t.Helper()
	if touches, holds := h.answering(); len(touches) != 0 || len(holds) != 1 {
		h.t.Fatalf("%d places answer to a touch, %d to being held:\n%s", len(touches), len(holds), h.words())
	}
}

const inThePocket = "Recording in your pocket"

// TestPocket: in the pocket nothing responds to a tap; only holding unlocks it,
// and only holding ends the ride. No two taps end it on any screen.
func TestPocket(t *testing.T) {
	h, c, _ := pocketed(t, sensors.Hole{})
	h.strays() // which open the pocket screen
	c.until(t, h, true, inThePocket)
	h.onlyUnlocks()
	h.strays()
	h.rest(c, "Hold", kit.HoldFor/2)
	c.pass(kit.HoldFor)
	c.until(t, h, true, inThePocket)
	h.rest(c, "Hold", 2*kit.HoldFor)
	c.until(t, h, false, inThePocket)
	h.strays()
	h.rest(c, "Hold", 2*kit.HoldFor)
	c.until(t, h, true, "Hold to end the ride")
	h.rest(c, "Hold to end", kit.HoldFor/2)
	c.pass(kit.HoldFor)
	c.until(t, h, true, "Standing")
	h.rest(c, "Hold to end", 2*kit.HoldFor)
	c.until(t, h, true, "The ride is saved.")
}

// TestThePocketGoesDarkAgain: once chosen, whenever the bike moves; a halt alone
// does not unlock it.
func TestThePocketGoesDarkAgain(t *testing.T) {
	h, c, moving := pocketed(t, sensors.Hole{})
	h.touch("Pocket mode")
	c.until(t, h, true, inThePocket)
	for range 2 {
		moving.Store(true)
		c.pass(5 * time.Second)
		c.until(t, h, true, inThePocket)
		h.onlyUnlocks()
		moving.Store(false)
		c.pass(10 * time.Second)
		c.until(t, h, true, inThePocket)
		h.rest(c, "Hold", 2*kit.HoldFor)
		c.until(t, h, true, "Standing")
	}
}

// TestAGapIsShown: large, with its cause, until it is read.
func TestAGapIsShown(t *testing.T) {
	h, c, _ := pocketed(t, sensors.Hole{From: 10, To: 49, Why: finding.New("browser.was_hidden")})
	c.until(t, h, true, "39 s missing")
	c.until(t, h, true, "The screen was off or another app was in front.")
	h.touch("Pocket mode")
	c.until(t, h, true, inThePocket)
	c.until(t, h, true, "39 s missing")
	h.onlyUnlocks()
	h.rest(c, "Hold", 2*kit.HoldFor)
	c.until(t, h, true, "Standing")
	h.touch("OK")
	c.until(t, h, false, "missing")
	c.pass(5 * time.Second)
	c.until(t, h, false, "missing")
}
