package device

import (
	"context"
	"sync/atomic"
	"time"

	"stillair/sensors"
)

// Every is how often Live empties its port. Shorter costs wake-ups; longer
// delays what the rider sees.
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

// Lost is how many events the driver had no room for, or did not understand.
// It may be called at any time from any goroutine.
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
	defer func() { d.ordered.TellLost(l.port.Now()) }()
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

// delivery passes batches on to a sink.
type delivery struct {
	batch   Batch
	watch   *watch
	ordered *sensors.InOrder

	toldLost float64 // when the sink last heard of lost samples, s
}

// tellLostEvery is how often the log is told of samples that were lost, s: a phone
// may end the program without a word.
const tellLostEvery = 60.0

// few is how many samples are passed on between two looks at the context.
const few = 16

func (d *delivery) pass(ctx context.Context, now float64) error {
	b := &d.batch
	d.ordered.Present(now)
	if now-d.toldLost > tellLostEvery {
		d.ordered.TellLost(now)
		d.toldLost = now
	}
	for _, h := range b.Holes {
		for _, s := range d.watch.hole(h) {
			d.ordered.State(s)
		}
	}
	for _, t := range b.Told {
		d.tell(now, d.watch.heard(t))
	}
	for i, m := range b.Motion {
		if i%few == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		d.ordered.Motion(m)
	}
	for i, p := range b.Pressure {
		if i%few == 0 && ctx.Err() != nil {
			return ctx.Err()
		}
		d.ordered.Pressure(p)
	}
	for _, s := range b.Sound {
		d.ordered.Sound(s)
	}
	for _, f := range b.Fixes {
		d.ordered.Fix(f)
	}
	d.tell(now, d.watch.saw(b, now))
	return ctx.Err()
}

func (d *delivery) tell(now float64, changes []Told) {
	for _, c := range changes {
		d.ordered.State(sensors.State{T: now, Sensor: c.Sensor, Condition: c.Condition, Detail: c.Detail})
	}
}
