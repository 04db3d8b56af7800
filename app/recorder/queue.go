package recorder

import (
	"sync"

	"stillair/export/session"
	"stillair/sensors"
)

// maxQueue bounds what waits for the keeper: twenty seconds of a fast phone.
const maxQueue = 1 << 13

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

// queue carries items from the source to the keeper. put waits while it is
// full.
type queue struct {
	mu     sync.Mutex
	room   *sync.Cond
	items  []item
	spare  []item
	closed bool
	much   chan struct{} // holds one signal once the queue is half full, or closed
}

func newQueue() *queue {
	q := &queue{much: make(chan struct{}, 1)}
	q.room = sync.NewCond(&q.mu)
	return q
}

func (q *queue) put(i item) {
	q.mu.Lock()
	defer q.mu.Unlock()
	for len(q.items) >= maxQueue && !q.closed {
		q.room.Wait()
	}
	if q.closed {
		return
	}
	q.items = append(q.items, i)
	if len(q.items) == maxQueue/2 {
		q.signal()
	}
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
	q.room.Broadcast()
	return items, q.closed
}

// close lets nothing more in; what waits can still be taken.
func (q *queue) close() {
	q.mu.Lock()
	defer q.mu.Unlock()
	q.closed = true
	q.room.Broadcast()
	q.signal()
}
