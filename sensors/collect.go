package sensors

import "context"

// Collector is a Sink that builds a Log. It does not sort: a Source must
// deliver in order. For anything that does not, put InOrder before it.
type Collector struct{ log Log }

// NewCollector returns a collector with an empty log and an unknown ride.
func NewCollector() *Collector { return &Collector{log: Log{Ride: UnknownRide()}} }

func (c *Collector) Motion(m Motion)     { c.log.Motion = append(c.log.Motion, m) }
func (c *Collector) Fix(f Fix)           { c.log.Fixes = append(c.log.Fixes, f) }
func (c *Collector) Pressure(p Pressure) { c.log.Pressure = append(c.log.Pressure, p) }
func (c *Collector) Sound(s Sound)       { c.log.Sound = append(c.log.Sound, s) }
func (c *Collector) State(s State)       { c.log.States = append(c.log.States, s) }

// Log returns what was collected so far; it shares the collector's memory.
func (c *Collector) Log() *Log { return &c.log }

// Collect runs a source to its end and returns what it delivered. With an error
// the log still contains everything before it.
func Collect(ctx context.Context, s Source) (*Log, error) {
	c := NewCollector()
	err := s.Run(ctx, c)
	return c.Log(), err
}
