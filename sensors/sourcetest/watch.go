package sourcetest

import (
	"sync"
	"sync/atomic"
	"time"

	"stillair/sensors"
)

// call is one call of a source to its sink; exactly one field is set.
type call struct {
	motion   *sensors.Motion
	fix      *sensors.Fix
	pressure *sensors.Pressure
	sound    *sensors.Sound
	state    *sensors.State
}

func (c call) time() float64 {
	switch {
	case c.motion != nil:
		return c.motion.T
	case c.fix != nil:
		return c.fix.T
	case c.pressure != nil:
		return c.pressure.T
	case c.sound != nil:
		return c.sound.T
	}
	return c.state.T
}

// watch is a sink that keeps every call and notices calls that overlap or come
// after the end.
type watch struct {
	mu      sync.Mutex
	calls   []call
	samples int
	closed  bool // Run has returned
	tooLate bool // a call came after that
	each    func(sample int)

	inside  atomic.Int32
	overlap atomic.Bool
}

func newWatch(each func(sample int)) *watch { return &watch{each: each} }

func (w *watch) take(c call) {
	if w.inside.Add(1) > 1 {
		w.overlap.Store(true)
	}
	defer w.inside.Add(-1)
	w.mu.Lock()
	if w.closed {
		w.tooLate = true
		w.mu.Unlock()
		return
	}
	w.calls = append(w.calls, c)
	if c.state == nil {
		w.samples++
	}
	n := w.samples
	w.mu.Unlock()
	if c.state == nil && w.each != nil {
		w.each(n)
	}
}

func (w *watch) Motion(m sensors.Motion)     { w.take(call{motion: &m}) }
func (w *watch) Fix(f sensors.Fix)           { w.take(call{fix: &f}) }
func (w *watch) Pressure(p sensors.Pressure) { w.take(call{pressure: &p}) }
func (w *watch) Sound(s sensors.Sound)       { w.take(call{sound: &s}) }
func (w *watch) State(s sensors.State)       { w.take(call{state: &s}) }

// after watches the sink for a while after Run has returned and lists the
// faults in its calls.
func (w *watch) after(d time.Duration) []string {
	w.mu.Lock()
	w.closed = true
	w.mu.Unlock()
	time.Sleep(d)
	w.mu.Lock()
	defer w.mu.Unlock()
	var problems []string
	if w.tooLate {
		problems = append(problems, "the sink was called after Run had returned")
	}
	if w.overlap.Load() {
		problems = append(problems, "the sink was called from two goroutines at once")
	}
	return problems
}
