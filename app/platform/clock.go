package platform

import "time"

// SystemClock is the clock of the Go runtime.
type SystemClock struct{ start time.Time }

// NewSystemClock starts a clock whose Elapsed counts from now.
func NewSystemClock() SystemClock { return SystemClock{start: time.Now()} }

// Wall implements Clock.
func (SystemClock) Wall() time.Time { return time.Now().Round(0) }

// Elapsed implements Clock.
func (c SystemClock) Elapsed() time.Duration { return time.Since(c.start) }

// After implements Clock.
func (SystemClock) After(d time.Duration) <-chan time.Time { return time.After(d) }
