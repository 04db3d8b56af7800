package shell_test

import (
	"context"
	"crypto/rand"
	"sync/atomic"
	"testing"
	"time"

	"stillair/app/platform"
	"stillair/app/platform/platformtest"
	"stillair/app/store"
	"stillair/sensors"
)

// stopping is a clock that wakes nobody once it has stopped.
type stopping struct {
	platform.Clock
	stopped atomic.Bool
}

func (c *stopping) After(d time.Duration) <-chan time.Time {
	if c.stopped.Load() {
		return nil
	}
	return c.Clock.After(d)
}

// ridesOff is a source that stands still until something is sent on ride, and then rides.
type ridesOff struct{ ride, riding chan struct{} }

func (r ridesOff) Run(ctx context.Context, to sensors.Sink) error {
	speed, rode := 0.0, 0
	for i := 0; ; i++ {
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-r.ride:
			speed, r.ride = 20, nil
		case <-time.After(10 * time.Millisecond):
			to.Fix(sensors.NewFix(float64(i), speed))
			if speed > 0 {
				rode++
			}
			if rode == 10 {
				close(r.riding)
			}
		}
	}
}

// TestNoQuestionStaysOpenWhileMoving opens the question for the setup at a halt,
// and rides off: both a screen drawn before the next beat and a beat while a
// finger rests on the answer show the dark screen of the ride.
func TestNoQuestionStaysOpenWhileMoving(t *testing.T) {
	for _, c := range []struct {
		name string
		act  int // of Acts
		held bool
	}{{"redrawn", 0, false}, {"a beat under a finger", 1, true}} {
		t.Run(c.name, func(t *testing.T) {
			clock := &stopping{Clock: platform.NewSystemClock()}
			off := ridesOff{make(chan struct{}, 1), make(chan struct{})}
			calls := 0
			files := platformtest.NewMemory()
			if _, err := store.NewBikes(files, clock).Put(store.Bike{Name: "test bike", Setups: []store.Setup{{Name: "panniers"}}}); err != nil {
				t.Fatal(err)
			}
			h := openOn(t, &platform.Device{Files: files, Clock: clock, Random: rand.Reader, Locale: "en-IE",
				Source: func() sensors.Source {
					if calls++; calls == 1 { // the watch before the ride
						return silent{}
					}
					return off
				}})
			defer clock.stopped.Store(false)
			h.touch("Start recording")
			h.await("Standing")
			h.touch("Other setup now")
			h.await("panniers")
			clock.stopped.Store(true)
			time.Sleep(600 * time.Millisecond) // the last beat is over
			off.ride <- struct{}{}
			<-off.riding
			if c.held {
				h.hold("panniers")
			}
			h.mu.Lock()
			h.app.Acts("none")[c.act]()
			h.mu.Unlock()
			h.await("Locked while you ride")
		})
	}
}
