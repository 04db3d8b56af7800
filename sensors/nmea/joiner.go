package nmea

import (
	"math"
	"time"

	"stillair/sensors"
)

// Joiner makes fixes of sentences. A fix is ready when a sentence of the next
// one arrives, or, once the order of sentences is known, as soon as the kind
// has arrived that ended the fix before.
type Joiner struct {
	fix   sensors.Fix
	clock time.Duration // of the current sentences; negative: none
	void  bool          // one of them is marked as no measurement
	done  bool          // the current fix was returned
	last  string        // kind of the newest sentence of the current fix
	ends  string        // kind that ended the fix before

	Void int // number of fixes left out because the receiver marked them as void
	Mute int // number left out because no sentence had a speed
}

// NewJoiner returns an empty joiner.
func NewJoiner() *Joiner { return &Joiner{clock: -1, done: true} }

// Add takes a sentence that arrived at t, in s on the log's clock. It returns
// up to two fixes: the one before, if this sentence begins another, and the
// current one, if this sentence completes it.
func (j *Joiner) Add(t float64, s Sentence) []sensors.Fix {
	if s.Kind != "RMC" && s.Kind != "VTG" && s.Kind != "GGA" {
		return nil
	}
	var ready []sensors.Fix
	if s.Clock >= 0 && s.Clock != j.clock {
		ready = j.Flush()
		*j = Joiner{fix: sensors.NewFix(t, math.NaN()), clock: s.Clock, ends: j.last, Void: j.Void, Mute: j.Mute}
	}
	if j.clock < 0 { // VTG before any sentence with a time
		return ready
	}
	j.last = s.Kind
	if !j.done {
		j.merge(s)
		if s.Kind == j.ends {
			ready = append(ready, j.Flush()...)
		}
	}
	return ready
}

func (j *Joiner) merge(s Sentence) {
	if !s.Valid {
		j.void = true
		return
	}
	if !s.Date.IsZero() {
		j.fix.UTC = s.Date.Add(j.clock)
	}
	fill := func(at *float64, v float64) {
		if math.IsNaN(*at) {
			*at = v
		}
	}
	fill(&j.fix.Speed, s.Speed)
	fill(&j.fix.BearingDeg, s.Course)
	fill(&j.fix.Alt, s.Alt)
	if !j.fix.HasPosition() {
		j.fix.LatDeg, j.fix.LonDeg = s.LatDeg, s.LonDeg
	}
}

// Flush returns the current fix, if there is one.
func (j *Joiner) Flush() []sensors.Fix {
	if j.done {
		return nil
	}
	j.done = true
	switch {
	case j.void:
		j.Void++
		return nil
	case math.IsNaN(j.fix.Speed):
		j.Mute++
		return nil
	}
	return []sensors.Fix{j.fix}
}
