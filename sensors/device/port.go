package device

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Port is the driver of one phone. Its methods are called from one goroutine,
// Start first and Stop last, once each.
type Port interface {
	// Start switches on the available sensors, asking the rider for permission
	// where the system requires it, without waiting for the answer. An error
	// means that there are no sensors at all.
	Start() error
	// Drain adds everything since the last call to b.
	Drain(b *Batch)
	// Now is the present on the clock of the samples, in seconds.
	Now() float64
	Stop()
}

// Batch holds the samples between two calls of Drain, each kind in order of
// arrival. Its slices are reused.
type Batch struct {
	Motion   []sensors.Motion
	Fixes    []sensors.Fix
	Pressure []sensors.Pressure
	Sound    []sensors.Sound // whose values are never used again
	Reports  []Report
	Holes    []sensors.Hole // in which the device delivered nothing, each reported when it is over
	Away     bool           // the device delivers nothing now, and the gap will be reported
	Lost     int            // events that the driver had no room for
}

// Report is a driver's information about a sensor beyond its samples.
type Report struct {
	Sensor    sensors.Sensor
	Condition sensors.Condition
	Detail    finding.Finding // message to the rider; may be zero
}

// same reports whether two reports mean the same.
func (t Report) same(u Report) bool {
	return t.Sensor == u.Sensor && t.Condition == u.Condition && t.Detail.String() == u.Detail.String()
}

// Clear empties the batch and keeps its memory.
func (b *Batch) Clear() {
	b.Motion, b.Fixes, b.Pressure, b.Reports = b.Motion[:0], b.Fixes[:0], b.Pressure[:0], b.Reports[:0]
	b.Sound, b.Holes = b.Sound[:0], b.Holes[:0]
	b.Lost, b.Away = 0, false
}
