package recorder

import (
	"context"
	"sync"

	"stillair/app/platform"
	"stillair/sensors"
)

// Watch looks at the sensors without recording, for the screen before the
// ride.
type Watch struct {
	clock platform.Clock
	stop  context.CancelFunc
	done  chan struct{}

	mu     sync.Mutex
	guard  guard
	senses senses
	now    float64
	err    error
}

// StartWatch runs a source until Stop.
func StartWatch(ctx context.Context, src sensors.Source, clock platform.Clock) *Watch {
	w := &Watch{clock: clock, done: make(chan struct{}), guard: newGuard(), senses: newSenses()}
	ctx, w.stop = context.WithCancel(ctx)
	go func() {
		err := src.Run(ctx, watchSink{w})
		w.mu.Lock()
		if ctx.Err() == nil {
			w.err = err
		}
		w.mu.Unlock()
		close(w.done)
	}()
	return w
}

// Stop ends the watch and waits until the source is free for another use.
func (w *Watch) Stop() {
	w.stop()
	<-w.done
}

// Senses returns the state of the sensors, and the error that ended the source,
// if any.
func (w *Watch) Senses() ([]Sense, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.senses.silence(w.senses.later(w.now, w.clock.Elapsed().Seconds()))
	return append([]Sense(nil), w.senses.of[:]...), w.err
}

type watchSink struct{ w *Watch }

func (s watchSink) at(t float64, do func(t float64)) {
	s.w.mu.Lock()
	defer s.w.mu.Unlock()
	t = s.w.guard.time(t)
	s.w.now = max(s.w.now, t)
	do(t)
}

// Motion implements sensors.Sink.
func (s watchSink) Motion(m sensors.Motion) {
	s.at(m.T, func(t float64) {
		s.w.senses.sample(sensors.SensorMotion, t)
		if m.HasTurn() {
			s.w.senses.sample(sensors.SensorTurn, t)
		}
	})
}

// Fix implements sensors.Sink.
func (s watchSink) Fix(f sensors.Fix) {
	s.at(f.T, func(t float64) {
		f.T = t
		s.w.senses.fix(f)
	})
}

// Pressure implements sensors.Sink.
func (s watchSink) Pressure(p sensors.Pressure) {
	s.at(p.T, func(t float64) { s.w.senses.sample(sensors.SensorPressure, t) })
}

// Sound implements sensors.Sink.
func (s watchSink) Sound(x sensors.Sound) {
	s.at(x.T, func(t float64) {
		x.T = t
		s.w.senses.sound(x)
	})
}

// State implements sensors.Sink.
func (s watchSink) State(st sensors.State) {
	s.at(st.T, func(float64) { s.w.senses.state(st) })
}
