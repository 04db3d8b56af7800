package device

import (
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Held is the reason for a gap during which the device did not let the program
// run, without a reason known to the driver.
const Held finding.Code = "sensor.held"

// heldFor is how long the program may be away between two polls of its port
// before that is a gap, s: a busy phone is late by tenths of a second, an
// analysis on the same thread by less than one, and two seconds lose a run.
const heldFor = 2.0

// shortest is the minimum length of a gap to be reported, s: without a missing
// fix, a few dozen missing readings of motion lose no run.
const shortest = 0.5

// notice adds a gap if the program did not run from last to now, there are no
// samples from that time, and the driver does not report one. (A page that was
// frozen runs again a moment before it is visible again, and reports its gap
// only then.)
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
