// Package relabel edits the setups of a recording after the ride:
// which there are, when each begins, its weight, tyres and notes.
package relabel

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"

	"stillair/sensors"
)

// Table is the setups of a recording in order of time, from its first sample on,
// and the halts between which it was ridden.
type Table struct {
	From, To float64 // of the recording, s on its clock
	Mass     float64 // the ride's, kg; NaN: not entered
	Setups   []sensors.Setup
	Halts    []Halt
}

// TableOf makes the table of a recording.
func TableOf(log *sensors.Log) *Table {
	t := &Table{Mass: log.Ride.Mass, Setups: slices.Clone(log.Ride.Setups), Halts: haltsOf(log.Fixes)}
	t.From, t.To = Span(log)
	t.sort()
	if len(t.Setups) == 0 || t.Setups[0].From > t.From {
		t.Setups = append([]sensors.Setup{{From: t.From, Mass: math.NaN()}}, t.Setups...)
	}
	return t
}

// Span is from the first to the last sample of motion or fix, s.
func Span(log *sensors.Log) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	if n := len(log.Motion); n > 0 {
		from, to = log.Motion[0].T, log.Motion[n-1].T
	}
	if n := len(log.Fixes); n > 0 {
		from, to = min(from, log.Fixes[0].T), max(to, log.Fixes[n-1].T)
	}
	return from, to
}

// End is when setup i ends.
func (t *Table) End(i int) float64 {
	if i+1 < len(t.Setups) {
		return t.Setups[i+1].From
	}
	return t.To
}

// Weighs reports whether it is open if the weight changed where setup i begins.
func (t *Table) Weighs(i int) bool {
	return i > 0 && math.IsNaN(t.Setups[i].Mass) && t.Setups[i].Name != t.Setups[i-1].Name
}

// ErrTaken is returned by Split where a setup begins already.
var ErrTaken = errors.New("a setup begins there already")

// Split begins another setup. If it has the name of an existing one, it is that
// one again, with its mass and tyres. Otherwise it has the tyres of the setup
// that it splits and no mass, for which the rider is asked.
func (t *Table) Split(at float64, name string) error {
	if slices.ContainsFunc(t.Setups, func(s sensors.Setup) bool { return math.Abs(s.From-at) < 0.5 }) {
		return ErrTaken
	}
	s := sensors.Setup{From: at, Name: name, Mass: math.NaN(), Tyres: sensors.Ride{Setups: t.Setups}.SetupAt(at).Tyres}
	if i := slices.IndexFunc(t.Setups, func(s sensors.Setup) bool { return s.Name == name }); i >= 0 {
		s.Mass, s.Tyres = t.Setups[i].Mass, t.Setups[i].Tyres
	}
	t.Setups = append(t.Setups, s)
	t.sort()
	return nil
}

func (t *Table) sort() {
	slices.SortStableFunc(t.Setups, func(a, b sensors.Setup) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return 0
	})
}

// Why a time is rejected.
var (
	ErrNoTime  = errors.New("this is no time: write minutes and seconds, as in 12:30")
	ErrOutside = errors.New("this is not within the recording")
)

// Time reads "750", "12:30" or "1:02:03" since the start as a time on the clock.
func (t *Table) Time(typed string) (float64, error) {
	seconds, parts := 0.0, strings.Split(strings.TrimSpace(typed), ":")
	for i, part := range parts {
		x, err := strconv.ParseFloat(part, 64)
		if err != nil || !(x >= 0 && x < 1e6) || i > 0 && x >= 60 || i > 2 {
			return 0, ErrNoTime
		}
		seconds = 60*seconds + x
	}
	if at := t.From + seconds; at > t.From && at < t.To {
		return at, nil
	}
	return 0, ErrOutside
}

// Halt is a stretch of time in which the bike stood, s on the recording's clock.
type Halt struct{ From, To float64 }

// Middle is the assumed time of a change of setup during this halt.
func (h Halt) Middle() float64 { return (h.From + h.To) / 2 }

// What counts as a halt. A receiver at rest shows a few tenths of a metre per
// second, and nobody changes a bike in less than ten seconds (common practice).
const (
	haltSpeed   = 1.0 // m/s
	haltSeconds = 10.0
)

// haltsOf finds the halts in the fixes. A halt continues through a gap without
// fixes: if the bike stands after it as before it, it is assumed to have stood.
func haltsOf(fixes []sensors.Fix) []Halt {
	var out []Halt
	var now *Halt
	end := func() {
		if now != nil && now.To-now.From >= haltSeconds {
			out = append(out, *now)
		}
		now = nil
	}
	for _, f := range fixes {
		switch {
		case math.IsNaN(f.Speed):
		case f.Speed >= haltSpeed:
			end()
		case now == nil:
			now = &Halt{f.T, f.T}
		default:
			now.To = f.T
		}
	}
	end()
	return out
}
