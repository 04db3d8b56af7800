package trial

import (
	"context"
	"math"
	"time"

	"stillair/app/platform"
	"stillair/sensors"
)

// heard is what the sensors delivered, and how late.
type heard struct {
	*sensors.Collector
	clock       platform.Clock
	motion, fix lateness
}

// lateness is between which bounds the time of arrival on the app's clock and
// the time stamp differ, s. The two clocks need not begin together.
type lateness struct{ least, most float64 }

func none() lateness { return lateness{math.Inf(1), math.Inf(-1)} }

func (l *lateness) add(late float64) {
	l.least, l.most = math.Min(l.least, late), math.Max(l.most, late)
}

func newHeard(clock platform.Clock) *heard {
	return &heard{Collector: sensors.NewCollector(), clock: clock, motion: none(), fix: none()}
}

// Motion implements sensors.Sink.
func (h *heard) Motion(m sensors.Motion) {
	h.motion.add(h.clock.Elapsed().Seconds() - m.T)
	h.Collector.Motion(m)
}

// Fix implements sensors.Sink.
func (h *heard) Fix(f sensors.Fix) {
	h.fix.add(h.clock.Elapsed().Seconds() - f.T)
	h.Collector.Fix(f)
}

// listen runs a source until done returns true; done is asked every so often.
func listen(ctx context.Context, d *platform.Device, every time.Duration, done func() bool) *heard {
	h, source := newHeard(d.Clock), d.Source()
	ctx, stop := context.WithCancel(ctx)
	ended := make(chan struct{})
	go func() {
		defer close(ended)
		_ = source.Run(ctx, h) // the states of the sensors matter, not its error
	}()
	for ctx.Err() == nil && !done() {
		select {
		case <-ctx.Done():
		case <-d.Clock.After(every):
		}
	}
	stop()
	<-ended
	return h
}
