package repair

import (
	"cmp"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Clock puts the samples of a file in order of time, sensor by sensor, the motion first.
// Samples that changed places are sorted. If the stamps go back to a time that was
// already recorded, sorting would mix two stretches of road: either the clock was set
// back, which is bridged by counting as for a live source (by sensors.InOrder), or
// another recording begins, and the larger one is kept. Samples that go back to a time
// that was not recorded are sorted: they cannot be distinguished from rows written in
// another order, and either way the stretches stay complete.
type Clock struct {
	what   finding.Code // of a sample in notes: "input.sample" or another
	guard  *sensors.InOrder
	passed *sensors.Collector
	kept   int // index of the recording that is kept
	of     int // number of recordings; 0: one
	notes  []sensors.Note
}

// NewClock returns the clock of a recording; what is the code of a sample of it, for
// notes: "input.sample" or another.
func NewClock(what finding.Code) *Clock {
	c := &Clock{what: what, passed: sensors.NewCollector()}
	c.guard = sensors.NewInOrder(c.passed)
	return c
}

// Notes returns the corrections since its last call, as notes on a file.
func (c *Clock) Notes(file string) []sensors.Note {
	notes := c.notes
	c.notes = nil
	for i := range notes {
		notes[i].File = file
	}
	return notes
}

// Limits for stamps that go back because of a clock.
const (
	goesBack    = 2.5 // s; swapped samples are closer (as in sensors.InOrder)
	mostPieces  = 64
	fewPerPiece = 10  // samples; a file that goes back more often than once in so many is not in order at all
	startsAgain = 0.1 // of the span so far: a recording that goes back to its first tenth starts again
	fewOfRide   = 8   // samples that a recording has at least
)

// Motion puts readings in order.
func (c *Clock) Motion(all []sensors.Motion) []sensors.Motion {
	same := func(a, b sensors.Motion) bool { return a.T == b.T && a.Force == b.Force }
	return inOrder(c, all, MotionTime, same, c.guard.Motion, func(l *sensors.Log) *[]sensors.Motion { return &l.Motion })
}

// Fixes puts fixes in order.
func (c *Clock) Fixes(all []sensors.Fix) []sensors.Fix {
	same := func(a, b sensors.Fix) bool { return a.T == b.T && a.Speed == b.Speed }
	return inOrder(c, all, FixTime, same, c.guard.Fix, func(l *sensors.Log) *[]sensors.Fix { return &l.Fixes })
}

// Pressure puts pressures in order.
func (c *Clock) Pressure(all []sensors.Pressure) []sensors.Pressure {
	same := func(a, b sensors.Pressure) bool { return a == b }
	return inOrder(c, all, PressureTime, same, c.guard.Pressure, func(l *sensors.Log) *[]sensors.Pressure { return &l.Pressure })
}

func inOrder[S any](c *Clock, all []S, time func(S) float64, same func(a, b S) bool, pass func(S), passed func(*sensors.Log) *[]S) []S {
	if len(all) == 0 {
		return all
	}
	parts := pieces(all, time)
	few := len(parts) <= mostPieces && fewPerPiece*len(parts) <= len(all)
	if few {
		all = one(c, recordings(parts, time, same), time)
		parts = pieces(all, time)
	}
	if c.guard.Steps == 0 && !(few && mixes(parts, time, same)) {
		all, d := Order(all, time)
		c.notes = append(c.notes, d.Notes("", c.what)...)
		return all
	}
	stepped := c.guard.Steps > 0 // possibly by less than the interval of fixes
	for _, part := range parts {
		if !stepped {
			slices.SortStableFunc(part, func(a, b S) int { return cmp.Compare(time(a), time(b)) })
		}
		for _, s := range part {
			pass(s)
		}
	}
	c.guard.End(0)
	log := c.passed.Log()
	c.notes = append(c.notes, log.ClockNotes()...)
	log.States = nil
	out := *passed(log)
	*passed(log) = nil
	return out
}

// pieces splits samples where they go back by more than swapped samples do.
func pieces[S any](all []S, time func(S) float64) (parts [][]S) {
	from := 0
	for i := range all {
		if i > 0 && time(all[i]) < time(all[i-1])-goesBack {
			parts = append(parts, all[from:i:i])
			from = i
		}
	}
	return append(parts, all[from:])
}

// mixes reports whether a sort would put samples of one piece between those of
// another that were not measured then.
func mixes[S any](parts [][]S, time func(S) float64, same func(a, b S) bool) bool {
	for i := 1; i < len(parts); i++ {
		before, after := slices.Concat(parts[:i]...), parts[i]
		from, to := spanOf(before, time)
		if time(after[0]) < to && time(after[len(after)-1]) > from && !repeats(before, after, time, same) {
			return true
		}
	}
	return false
}

func spanOf[S any](all []S, time func(S) float64) (from, to float64) {
	from, to = time(all[0]), time(all[0])
	for _, s := range all {
		from, to = min(from, time(s)), max(to, time(s))
	}
	return from, to
}

// repeats reports whether the first sample of a piece within the earlier time range
// is among the earlier samples: then it was delivered twice.
func repeats[S any](before, piece []S, time func(S) float64, same func(a, b S) bool) bool {
	from, _ := spanOf(before, time)
	i := slices.IndexFunc(piece, func(s S) bool { return time(s) >= from })
	return i >= 0 && slices.ContainsFunc(before, func(s S) bool { return same(s, piece[i]) })
}

// recordings joins pieces to recordings: one begins where the stamps go back to
// about the first.
func recordings[S any](parts [][]S, time func(S) float64, same func(a, b S) bool) (rides [][]S) {
	for _, part := range parts {
		if n := len(rides); n > 0 && !startsOver(rides[n-1], part, time, same) {
			rides[n-1] = slices.Concat(rides[n-1], part)
			continue
		}
		rides = append(rides, part)
	}
	return rides
}

func startsOver[S any](before, part []S, time func(S) float64, same func(a, b S) bool) bool {
	from, to := time(before[0]), time(before[len(before)*9/10]) // the last may be wild
	at := time(part[0])
	return len(before) >= fewOfRide && len(part) >= fewOfRide && at-from < startsAgain*(to-from) && from-at < startsAgain*(to-from) &&
		!repeats(before, part, time, same)
}

const codeOtherRecording finding.Code = "input.other_recording"

// one keeps the recording with most samples of the first sensor that has several,
// and notes the others.
func one[S any](c *Clock, rides [][]S, time func(S) float64) []S {
	if len(rides) == 1 {
		return rides[0]
	}
	if c.of == 0 {
		c.of = len(rides)
		for k, r := range rides {
			if len(r) > len(rides[c.kept]) {
				c.kept = k
			}
		}
	}
	kept := min(c.kept, len(rides)-1)
	for k, r := range rides {
		if k != kept {
			c.notes = append(c.notes, sensors.Note{Count: 1, What: finding.New(codeOtherRecording,
				finding.Time("length", time(r[len(r)-1])-time(r[0])), finding.Count("samples", len(r)))})
		}
	}
	return rides[kept]
}
