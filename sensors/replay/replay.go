// Package replay plays a recorded log as a Source: at once, in real time, or at any
// multiple of it. So anything that reads a live phone can also read last week's
// ride, at the pace of the ride or as fast as the machine allows.
//
// The pace comes from a Clock that is passed in, so a test need not wait.
package replay

import (
	"context"
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Clock is the clock of a paced replay.
type Clock interface {
	Now() time.Time
	// Wait returns nil once d has passed, or ctx.Err() as soon as ctx ends.
	Wait(ctx context.Context, d time.Duration) error
}

// Wall is the machine's own clock.
type Wall struct{}

// Now returns the time of the machine.
func (Wall) Now() time.Time { return time.Now() }

// Wait sleeps.
func (Wall) Wait(ctx context.Context, d time.Duration) error {
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

type source struct {
	log   *sensors.Log
	speed float64 // seconds of the log per second of the clock; +Inf: no waiting
	clock Clock
}

// New returns a source that plays log as fast as the sink takes it. The log is
// read, never changed, and must be in order as sensors.Log says.
func New(log *sensors.Log) sensors.Source {
	return source{log: log, speed: math.Inf(1)}
}

// At returns a source that plays log at the given multiple of real time.
func At(log *sensors.Log, speed float64, clock Clock) (sensors.Source, error) {
	if !(speed > 0) {
		return nil, finding.Fail("replay.pace", finding.Num("times", speed))
	}
	return source{log: log, speed: speed, clock: clock}, nil
}

// Run delivers the samples of all kinds in order of their times.
func (s source) Run(ctx context.Context, sink sensors.Sink) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	m := merge{log: s.log}
	start, some := m.next()
	for _, state := range absent(s.log, start) {
		sink.State(state)
	}
	if !some {
		return nil
	}
	var began time.Time
	if s.paced() {
		began = s.clock.Now()
	}
	for {
		t, more := m.next()
		if !more {
			return nil
		}
		if err := s.wait(ctx, began, t-start); err != nil {
			return err
		}
		m.deliver(sink)
	}
}

func (s source) paced() bool { return !math.IsInf(s.speed, 1) }

// wait returns when the log's time since its start is due.
func (s source) wait(ctx context.Context, began time.Time, since float64) error {
	if s.paced() {
		const longest = 100 * 365 * 24 * 3600 // s; time.Duration ends at 292 years
		due := began.Add(time.Duration(min(since/s.speed, longest) * float64(time.Second)))
		if d := due.Sub(s.clock.Now()); d > 0 {
			return s.clock.Wait(ctx, d)
		}
	}
	return ctx.Err()
}
