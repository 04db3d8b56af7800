package shell

import (
	"context"
	"sync"
)

// jobs does work for the storage off the drawing goroutine, one job after
// another. Adding a job never waits, so that slow storage never delays the
// response to a touch.
type jobs struct {
	mu   sync.Mutex
	list []func()
	more chan struct{} // holds one where the list may not be empty
}

func newJobs() *jobs { return &jobs{more: make(chan struct{}, 1)} }

func (j *jobs) add(job func()) {
	j.mu.Lock()
	j.list = append(j.list, job)
	j.mu.Unlock()
	select {
	case j.more <- struct{}{}:
	default: // the worker already knows
	}
}

func (j *jobs) take() []func() {
	j.mu.Lock()
	defer j.mu.Unlock()
	list := j.list
	j.list = nil
	return list
}

// work does the jobs in their order until the context ends.
func (j *jobs) work(ctx context.Context) {
	for {
		select {
		case <-j.more:
		case <-ctx.Done():
			return
		}
		for _, job := range j.take() {
			if ctx.Err() != nil {
				return
			}
			job()
		}
	}
}

// aside runs work off the drawing goroutine, in turn with other work, and
// passes what it returns to then on the drawing goroutine. All that the screens
// show belongs to that goroutine: work is handed values, or takes copies before
// it is handed over, and never reads or writes the Shell.
func aside[T any](s *Shell, work func() T, then func(T)) {
	s.jobs.add(func() {
		out := work()
		s.cfg.Do(func() { then(out) })
	})
}
