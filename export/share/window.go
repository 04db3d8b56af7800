package share

import (
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Window is what the cutting of the ends leaves of a ride. Where anything is cut
// off, its times and distances begin at zero: they would tell how long the way
// from the door took, and how far it was.
type Window struct {
	From, To float64 // s on the clock of the recording; ±∞ where nothing is cut off
	Zero     float64 // what is taken off each time, s
}

// WindowOf gives the window of a ride.
func WindowOf(log *sensors.Log, c Choice) Window {
	from, to := ends(log.Fixes, c.EndsCut)
	w := Window{From: from, To: to}
	if !math.IsInf(from, 0) {
		w.Zero = from
	}
	return w
}

// Has reports whether a time of the recording is left.
func (w Window) Has(t float64) bool { return t >= w.From && t <= w.To }

// Time is a time of the recording as it is told of what is left.
func (w Window) Time(t float64) float64 { return t - w.Zero }

// within is Time of a moment that may lie in what was cut off: the nearest that
// is left stands for it.
func (w Window) within(t float64) float64 {
	return w.Time(math.Max(math.Min(w.From, w.To), math.Min(math.Max(w.From, w.To), t)))
}

// Began is when what is left began and at which of its times, of a recording that
// began at start on its clock when the calendar said started. The zero time
// stands for what is not known or not to be told.
func (w Window) Began(start float64, started time.Time, d Date) (float64, time.Time) {
	cut := w.Zero != 0
	switch {
	case started.IsZero() || d == Undated:
		started = time.Time{}
	case d == Day:
		started = time.Date(started.Year(), started.Month(), started.Day(), 0, 0, 0, 0, started.Location())
	case cut && math.IsNaN(start):
		started = time.Time{} // it belongs to what was cut off
	case cut:
		started = started.Add(time.Duration((w.From - start) * float64(time.Second)))
	}
	if cut {
		return 0, started
	}
	return start, started
}

// finding moves the times that a finding tells of.
func (w Window) finding(f finding.Finding) finding.Finding {
	f.From, f.To = w.span(f.From, f.To)
	args := make([]finding.Arg, len(f.Args))
	for i, a := range f.Args {
		switch {
		case a.Quantity == finding.OfMoment:
			a.X = w.within(a.X)
		case a.Finding != nil:
			moved := w.finding(*a.Finding)
			a.Finding = &moved
		}
		args[i] = a
	}
	f.Args = args
	return f
}

// span moves a span; one that is not told stays so.
func (w Window) span(from, to float64) (float64, float64) {
	if from == to {
		return from, to
	}
	return w.within(from), w.within(to)
}

func (w Window) findings(list []finding.Finding) []finding.Finding {
	var out []finding.Finding
	for _, f := range list {
		out = append(out, w.finding(f))
	}
	return out
}

// notes are those that hold no cause in the words of the system, which may name
// where the recording lay.
func (w Window) notes(list []sensors.Note) []sensors.Note {
	var out []sensors.Note
	for _, n := range list {
		if why, there := n.What.Arg("why"); w.Zero != 0 && there && why.Quantity == finding.OfText {
			continue
		}
		n.What = w.finding(n.What)
		out = append(out, n)
	}
	return out
}
