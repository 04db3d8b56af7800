package recorder

import (
	"sync"
	"time"

	"stillair/app/platform"
	"stillair/export/session"
	"stillair/sensors"
)

// Bounds of what waits for the keeper.
const (
	maxQueue  = 1 << 13                // twenty seconds of a fast phone; a source that is faster than the storage waits then
	mostQueue = 1 << 18                // if the storage hangs: twenty minutes at 200 readings a second, 17 MB
	mostWait  = 500 * time.Millisecond // that a source waits for a storage that hangs: half of the permitted delay
)

// item is one thing for the session file: a motion sample where other is nil,
// so that the bulk needs no allocation.
type item struct {
	motion sensors.Motion
	other  func(*session.Writer)
}

func (i item) write(w *session.Writer) {
	if i.other != nil {
		i.other(w)
		return
	}
	w.Motion(i.motion)
}

// queue carries items from the source to the keeper. put waits while it is full,
// but never for longer than mostWait: a keeper that takes nothing for so long
// hangs with its storage, and a sensor that is made to wait loses what it reads.
type queue struct {
	clock  platform.Clock
	mu     sync.Mutex
	taken  chan struct{} // closed when the keeper empties the queue
	stuck  bool          // it took nothing for mostWait
	lost   int           // items beyond mostQueue
	items  []item
	spare  []item
	closed bool
	much   chan struct{} // holds one signal once the queue is half full, or closed
}

func newQueue(clock platform.Clock) *queue {
	return &queue{clock: clock, taken: make(chan struct{}), much: make(chan struct{}, 1)}
}

func (q *queue) put(i item) {
	q.mu.Lock()
	defer q.mu.Unlock()
	for len(q.items) >= maxQueue && !q.stuck && !q.closed {
		q.wait()
	}
	if len(q.items) >= mostQueue && !q.closed {
		q.wait()
		if len(q.items) >= mostQueue {
			q.lost++
			return
		}
	}
	if q.closed {
		return
	}
	q.items = append(q.items, i)
	if len(q.items) == maxQueue/2 {
		q.signal()
	}
}

// wait waits for the keeper. The lock is held, but not meanwhile.
func (q *queue) wait() {
	taken := q.taken
	q.mu.Unlock()
	late := false
	select {
	case <-taken:
	case <-q.clock.After(mostWait):
		late = true
	}
	q.mu.Lock()
	q.stuck = late && taken == q.taken
}

func (q *queue) signal() {
	select {
	case q.much <- struct{}{}:
	default:
	}
}

// take gives all that waits. What it gave before must not be used any more.
func (q *queue) take() (items []item, closed bool) {
	q.mu.Lock()
	defer q.mu.Unlock()
	items, q.items, q.spare = q.items, q.spare[:0], q.items
	if cap(q.spare) > 2*maxQueue {
		q.spare = nil // grown while the storage hung
	}
	q.went()
	return items, q.closed
}

// went wakes whoever waits.
func (q *queue) went() {
	q.stuck = false
	close(q.taken)
	q.taken = make(chan struct{})
}

// given counts the items that were given up since the storage hung for too long.
func (q *queue) given() int {
	q.mu.Lock()
	defer q.mu.Unlock()
	return q.lost
}

// close accepts nothing more; what waits can still be taken.
func (q *queue) close() {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.closed = true
	q.went()
	q.signal()
}
