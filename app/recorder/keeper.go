package recorder

import (
	"errors"
	"fmt"
	"time"

	"stillair/app/platform"
	"stillair/app/store"
	"stillair/export/session"
)

// Kept is the state of the storage.
type Kept struct {
	Until    float64       // log time up to which everything is synced, s
	Bytes    int64         // in the file
	Waiting  int64         // bytes that the storage has not accepted yet
	Free     int64         // bytes free; −1 if unknown
	Err      error         // the storage's last error; nil: none
	AwakeErr error         // why the screen may go off; nil: it stays on
	Slowest  time.Duration // longest time of a write and sync
}

// lastTries is how often the keeper tries to close a file on a storage that
// fails.
const lastTries = 5

// The most flushes and the most bytes between two checks of the free space.
const (
	freeEvery = 20
	freeBytes = LastRoom / 4
)

// keep is the goroutine that owns the session file.
func (r *Recording) keep(w *session.Writer, file platform.File) {
	began := r.cfg.Clock.Elapsed()
	looked := int64(0) // bytes written when the free space was last checked
	for n := 0; ; n++ {
		// From beginning to beginning: a slow sync must not delay the next.
		select {
		case <-r.queue.much:
		case <-r.cfg.Clock.After(max(0, FlushEvery-(r.cfg.Clock.Elapsed()-began))):
		}
		began = r.cfg.Clock.Elapsed()
		until := r.upTo()
		items, closed := r.queue.take()
		for _, i := range items {
			i.write(w)
		}
		err := w.Flush()
		r.keptUntil(w, until, r.cfg.Clock.Elapsed()-began, err)
		written, _ := w.Stored()
		if n%freeEvery == 0 || written-looked > freeBytes || errors.Is(err, platform.ErrFull) {
			looked = written
			r.watchRoom()
		}
		if closed {
			break
		}
		r.watchSilence()
	}
	r.finish(w, file)
}

// upTo is the time of the last sample that was put on the queue.
func (r *Recording) upTo() float64 {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.rideState.queued
}

func (r *Recording) keptUntil(w *session.Writer, until float64, took time.Duration, err error) {
	written, waiting := w.Stored()
	if n := r.queue.given(); n > 0 && err == nil {
		err = fmt.Errorf("%w: %d readings", session.ErrBacklog, n)
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	k := &r.kept
	k.Bytes, k.Waiting, k.Err = written, waiting, err
	if err == nil {
		k.Until = until
	}
	k.Slowest = max(k.Slowest, took)
}

// watchRoom checks the free space and ends the recording while it can still be
// closed properly.
func (r *Recording) watchRoom() {
	free, err := r.cfg.Sessions.Files().Free()
	if err != nil {
		free = -1
	}
	r.mu.Lock()
	r.kept.Free = free
	r.mu.Unlock()
	if err == nil && free < LastRoom {
		r.end(NoRoom, platform.ErrFull)
	}
}

// finish closes the file and informs the store. If the storage fails, the file
// keeps everything written so far and the store finds it at the next start.
func (r *Recording) finish(w *session.Writer, file platform.File) {
	err := w.Close()
	for n := 1; err != nil && n < lastTries; n++ {
		<-r.cfg.Clock.After(FlushEvery)
		if err = w.Close(); errors.Is(err, session.ErrClosed) {
			err = nil
		}
	}
	r.keptUntil(w, r.upTo(), 0, err)
	unstored := w.Unstored()
	err = errors.Join(err, file.Close())
	if err == nil {
		status := r.Status()
		err = r.cfg.Sessions.Update(r.id, func(a *store.About) {
			a.Stage, a.Seconds, a.Metres = store.Closed, status.Seconds, status.Distance
		})
	}
	r.mu.Lock()
	r.kept.Err, r.unstored = err, unstored
	r.mu.Unlock()
	r.unlock()
	close(r.done)
}
