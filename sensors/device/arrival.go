package device

import "math"

// Arrival estimates when a report reached the phone although the program
// received it later. A report that waits for a redraw is delivered some tens of
// milliseconds late, but has a time stamp of the system's wall clock. Of the
// differences between the two clocks over the last half minute the smallest
// belongs to the report with the least delay, as in the clock filter of NTP
// (RFC 5905, section 10), so the stamp plus that difference is the arrival
// without the delay.
//
// The two clocks drift by some 50 µs a second at most, 1.5 ms over the window.
// A step of the wall clock appears as a delay that no redraw explains, or as a
// series of reports that were all delayed; then the window starts again.
type Arrival struct {
	diffs  [window]float64 // s, by report modulo the window
	n      int             // reports since the window started
	queued int             // reports in a row that waited
	waits  Spread
}

const (
	window   = 30  // reports
	longWait = 1.5 // s, longer than a page is ever busy without interruption
	wait     = 0.1 // s, the duration of a redraw
	inARow   = 6   // so many consecutive delays are not due to redraws
)

// At returns the arrival of a report that was delivered at handed, on the clock
// of the samples, and stamped with stamp, in seconds on the wall clock. It is
// handed itself if the stamp is unusable.
func (a *Arrival) At(stamp, handed float64) float64 {
	diff := handed - stamp
	if math.IsNaN(diff) || math.IsInf(diff, 0) {
		return handed
	}
	a.restart(diff)
	a.diffs[a.n%window] = diff
	a.n++
	at := min(stamp+a.least(), handed)
	a.waits.Add(handed - at)
	return at
}

// restart clears the window if diff shows that the wall clock was set.
func (a *Arrival) restart(diff float64) {
	switch extra := diff - a.least(); {
	case a.n == 0 || extra <= wait:
		a.queued = 0
		return
	case extra > longWait:
		a.queued = inARow
	default:
		a.queued++
	}
	if a.queued >= inARow {
		a.n, a.queued = 0, 0
	}
}

// Offset is the clock of the samples minus the wall clock, in seconds, as the
// least delayed report shows it; NaN before the first.
func (a *Arrival) Offset() float64 {
	if a.n == 0 {
		return math.NaN()
	}
	return a.least()
}

// Waits are the delays of the reports, in seconds.
func (a *Arrival) Waits() Spread { return a.waits }

func (a *Arrival) least() float64 {
	least := math.Inf(1)
	for _, d := range a.diffs[:min(a.n, window)] {
		least = min(least, d)
	}
	return least
}
