package shell_test

import (
	"context"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform/platformtest"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// unasked is a source that waits for permission, and then delivers a phone at rest.
type unasked struct {
	clock *handClock
	leave *atomic.Bool
}

func (s unasked) Run(ctx context.Context, to sensors.Sink) error {
	to.State(sensors.State{Sensor: sensors.SensorFix, Condition: sensors.Asking, Detail: finding.New("browser.not_asked")})
	for !s.leave.Load() {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-s.clock.After(100 * time.Millisecond):
		}
	}
	return tracked{s.clock, &atomic.Bool{}, sensors.Hole{}}.Run(ctx, to)
}

// TestLeaveIsAskedInContext: the app asks for permission when the rider taps,
// next to the explanation, or at the latest when the ride begins; and not if it
// has permission.
func TestLeaveIsAskedInContext(t *testing.T) {
	const button = "Let Stillair use the sensors"
	for _, c := range []struct{ name, tap, then string }{
		{"from the button", button, "good"},
		{"from the start", "Start recording", "Standing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			clock, leave, asked := &handClock{}, &atomic.Bool{}, 0
			d := phone(nil, platformtest.NewMemory())
			d.Background, d.Clock = nil, clock
			d.Source = func() sensors.Source { return unasked{clock, leave} }
			d.Permit = func() { asked++; leave.Store(true) }
			h := openOn(t, d)
			clock.until(t, h, true, button)
			clock.until(t, h, true, "as soon as you allow it here")
			clock.pass(10 * time.Second)
			if asked != 0 {
				t.Fatal("it asks with the page")
			}
			h.touch(c.tap)
			if asked != 1 {
				t.Fatalf("asked %d times", asked)
			}
			clock.until(t, h, true, c.then)
			if clock.until(t, h, false, button); strings.Contains(h.words(), "not_asked") {
				t.Error("a code is shown")
			}
		})
	}
}
