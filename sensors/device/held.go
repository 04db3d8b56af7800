package device

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Held is the reason for a gap during which the device did not let the program
// run, without a reason known to the driver.
const Held finding.Code = "sensor.held"

// heldFor is how long the program may be away between two looks at its port
// before that is a hole, s: a busy phone is late by tenths of a second, an
// analysis on the same thread by less than one, and two seconds cost a run.
const heldFor = 2.0

// shortest is how long a hole is at least to be marked, s: a receiver that misses
// no report and a few dozen readings of motion cost no run.
const shortest = 0.5

// notice adds a hole if the program did not run from last to now, there are no
// samples of that time, and the driver knows of none. (A page that was frozen
// runs again a moment before it is visible again, and reports its hole only
// then.)
func (b *Batch) notice(last, now float64) {
	if b.Away || now-last <= heldFor {
		return
	}
	for _, h := range b.Holes {
		if h.To > last {
			return
		}
	}
	at := last
	hole := func(to float64) {
		if to-at > heldFor {
			b.Holes = append(b.Holes, sensors.Hole{From: at, To: to, Why: finding.New(Held)})
		}
		at = max(at, to)
	}
	for _, m := range b.Motion {
		hole(m.T)
	}
	hole(now)
}
