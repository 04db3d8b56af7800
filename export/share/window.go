package share

import (
	"math"
	"slices"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Window is the part of a ride that remains after its ends are cut off. If
// anything is cut off, its times and distances begin at zero: otherwise they
// would disclose the time and distance from the start.
type Window struct {
	From, To float64 // s on the clock of the recording; ±∞ if nothing is cut off
	Zero     float64 // subtracted from each time, s
	Date     Date    // what is disclosed of date and time of day
}

// WindowOf returns the window of a ride.
func WindowOf(log *sensors.Log, c Choice) Window {
	from, to := ends(log.Fixes, c.EndsCut)
	w := Window{From: from, To: to, Date: c.Date}
	if !math.IsInf(from, 0) {
		w.Zero = from
	}
	return w
}

// Has reports whether a time of the recording is left.
func (w Window) Has(t float64) bool { return t >= w.From && t <= w.To }

// whole reports whether nothing is cut off.
func (w Window) whole() bool { return math.IsInf(w.From, -1) && math.IsInf(w.To, 1) }

// Time turns a time of the recording into one of what is left.
func (w Window) Time(t float64) float64 { return t - w.Zero }

// within is Time of a moment that may lie in a part that was cut off: that of
// the nearest remaining moment, or zero if nothing remains.
func (w Window) within(t float64) float64 {
	if w.From > w.To {
		return 0
	}
	return w.Time(math.Max(w.From, math.Min(w.To, t)))
}

// Began is the calendar time at which the window began, and at which of its
// times, for a recording that began at start on its clock and at started by the
// calendar. It is the zero time if unknown or not to be disclosed.
func (w Window) Began(start float64, started time.Time, d Date) (float64, time.Time) {
	cut := w.Zero != 0
	switch {
	case started.IsZero() || d == Undated:
		started = time.Time{}
	case d == Day:
		started = time.Date(started.Year(), started.Month(), started.Day(), 0, 0, 0, 0, started.Location())
	case cut && math.IsNaN(start):
		started = time.Time{} // it is in the part that was cut off
	case cut:
		started = started.Add(time.Duration((w.From - start) * float64(time.Second)))
	}
	if cut {
		return 0, started
	}
	return start, started
}

// finding shifts the times in a finding, and those of a finding in its
// arguments. One that may disclose a part that was cut off is dropped.
func (w Window) finding(f finding.Finding) finding.Finding {
	if w.names(f) {
		return finding.Finding{}
	}
	return w.moved(f)
}

func (w Window) moved(f finding.Finding) finding.Finding {
	f.From, f.To = w.span(f.From, f.To)
	args := make([]finding.Arg, len(f.Args))
	for i, a := range f.Args {
		switch {
		case a.Quantity == finding.OfMoment:
			a.X = w.within(a.X)
		case a.Finding != nil:
			inner := w.moved(*a.Finding)
			a.Finding = &inner
		}
		args[i] = a
	}
	f.Args = args
	return f
}

// detail shifts the finding of a remaining state. A hole that began in a part
// that was cut off begins with the window, since its length would disclose
// more.
func (w Window) detail(s sensors.State) finding.Finding {
	if h, ok := s.Hole(); ok && !w.whole() {
		h.From = math.Max(0, h.From)
		if w.names(h.Why) {
			h.Why = finding.Finding{}
		}
		return h.Finding()
	}
	return w.finding(s.Detail)
}

// plainTexts are the arguments whose text is a word of a format, or a setup that
// the ride names anyway. Any other text is of somebody else's making: the words
// of the system, a value of the file, a date, a path. It may name a place, or a
// time before the cut.
func plainTexts() []string { return []string{"setup", "unit", "column", "columns", "field", "mark"} }

// names reports whether the finding, or one in its arguments, may name what was
// cut off.
func (w Window) names(f finding.Finding) bool {
	if w.whole() && w.Date == Dated {
		return false
	}
	return slices.ContainsFunc(f.Args, func(a finding.Arg) bool {
		if a.Finding != nil {
			return w.names(*a.Finding)
		}
		return a.Quantity == finding.OfText && !slices.Contains(plainTexts(), a.Name)
	})
}

// span moves a span; one that is not known stays so.
func (w Window) span(from, to float64) (float64, float64) {
	if from == to {
		return 0, 0
	}
	return w.within(from), w.within(to)
}

func (w Window) findings(list []finding.Finding) []finding.Finding {
	var out []finding.Finding
	for _, f := range list {
		if f = w.finding(f); !f.IsZero() {
			out = append(out, f)
		}
	}
	return out
}

// notes shifts those that may stay; the line of the file would disclose how
// much was cut off.
func (w Window) notes(list []sensors.Note) []sensors.Note {
	var out []sensors.Note
	for _, n := range list {
		if n.What = w.finding(n.What); n.What.IsZero() {
			continue
		}
		if !w.whole() {
			n.Line = 0
		}
		out = append(out, n)
	}
	return out
}
