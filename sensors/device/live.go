package device

import (
	"context"
	"sync/atomic"
	"time"

	"stillair/sensors"
)

// Every is the interval at which Live polls its port. A shorter one costs
// wake-ups, a longer one delays the display.
const Every = 100 * time.Millisecond

// Live is the sensors.Source of a phone.
type Live struct {
	port  Port
	after func(time.Duration) <-chan time.Time
	lost  atomic.Int64
}

// NewLive makes a source of a port. after is time.After or a stand-in for it.
func NewLive(port Port, after func(time.Duration) <-chan time.Time) *Live {
	return &Live{port: port, after: after}
}

// Lost is the number of events for which the driver had no room, or which it
// did not understand. It may be called at any time from any goroutine.
func (l *Live) Lost() int { return int(l.lost.Load()) }

// Run implements sensors.Source.
func (l *Live) Run(ctx context.Context, sink sensors.Sink) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	if err := l.port.Start(); err != nil {
		return err
	}
	defer l.port.Stop()
	d := delivery{watch: newWatch(l.port.Now()), ordered: sensors.NewInOrder(sink)}
	last := l.port.Now()
	defer func() { d.ordered.End(l.port.Now()) }()
	for {
		d.batch.Clear()
		l.port.Drain(&d.batch)
		l.lost.Add(int64(d.batch.Lost))
		now := l.port.Now()
		d.batch.notice(last, now)
		last = now
		if err := d.pass(ctx, now); err != nil {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-l.after(Every):
		}
	}
}
