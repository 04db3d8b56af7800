//go:build js || android || ios || desktop

package main

import (
	"math"
	"runtime/debug"
	"time"
)

// What the program may take before its first pictures stand, and for how long it
// is left alone. The start makes about 20 MB of garbage.
const (
	startMemory = 64 << 20 // bytes
	startTime   = 5 * time.Second
)

// collectLater keeps the garbage collector from the start, of which it takes some 0.2 s
// in a browser slowed down four times (from a profile). If memory runs short, it runs
// all the same.
func collectLater() {
	debug.SetMemoryLimit(startMemory)
	usual := debug.SetGCPercent(-1)
	time.AfterFunc(startTime, func() {
		debug.SetGCPercent(usual)
		debug.SetMemoryLimit(math.MaxInt64)
	})
}
