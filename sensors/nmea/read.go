package nmea

import (
	"errors"
	"io"
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

// Span is a stretch of time on a log's clock, s.
type Span struct{ From, To float64 }

// mostFixes bounds the memory of a file: fourteen hours at 10 Hz.
const mostFixes = 500_000

// ReadBeside reads a recorded file of sentences that accompanies motion samples
// of the given span; the package comment says how its lines get times on their
// clock. name is for people.
func ReadBeside(r io.Reader, name string, motion Span) ([]sensors.Fix, []sensors.Note, error) {
	f, err := read(r, name)
	if err != nil {
		return nil, nil, err
	}
	if f.stamped > 0 {
		return f.fixes, f.notes, nil
	}
	const y2001, y2200 = 978307200, 7258118400 // Unix times in s
	if motion.From < y2001 || motion.To > y2200 || f.fixes[0].UTC.IsZero() {
		return nil, nil, &sensors.InputError{File: name, Line: 1,
			What:   finding.New("nmea.no_arrival"),
			Remedy: finding.New("nmea.stamp_lines")}
	}
	f.notes = append(f.notes, sensors.Note{File: name, Count: len(f.fixes),
		What: finding.New("nmea.arrival_is_own")})
	return f.fixes, f.notes, nil
}

// Read reads a recorded file of sentences without motion samples. Without
// stamps the log's clock is UTC in seconds since 1970.
func Read(r io.Reader, name string) (*sensors.Log, error) {
	f, err := read(r, name)
	if err != nil {
		return nil, err
	}
	log := &sensors.Log{Fixes: f.fixes, Notes: f.notes, Ride: sensors.UnknownRide()}
	if _, err := repair.Speed(log, name); err != nil {
		return nil, err
	}
	return log, nil
}

// recorded is the content of a file of sentences.
type recorded struct {
	fixes   []sensors.Fix
	notes   []sensors.Note
	stamped int // lines with a time of arrival
}

func read(r io.Reader, name string) (*recorded, error) {
	f := &recorded{}
	l, j, y := newLineReader(r), NewJoiner(), &tally{}
	at := math.NaN()
	for {
		line, err := l.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			if y.good == 0 {
				return nil, sensors.Unreadable(name, l.line, err)
			}
			f.notes = append(f.notes, sensors.Note{File: name, Line: l.line, Count: 1,
				What: sensors.Damaged(err)})
			break
		}
		s, err := Parse(line)
		if err != nil {
			if len(line) > 2 { // a blank line is no loss
				y.leaveOut(name, l.line, err)
			}
			continue
		}
		y.good++
		if t := stamp(line); !math.IsNaN(t) {
			at = t
			f.stamped++
		}
		f.fixes = append(f.fixes, j.Add(at, s)...)
		if len(f.fixes) > mostFixes {
			return nil, &sensors.InputError{File: name, Line: l.line, What: finding.New("input.too_many", finding.Count("most", mostFixes)), Remedy: finding.New("input.shorter")}
		}
	}
	f.fixes = append(f.fixes, j.Flush()...)
	f.notes = append(f.notes, y.notes(name, l, j)...)
	return f, f.settle(name, y)
}

// settle gives times to fixes without stamps, sorts, and refuses a file if too
// little of it is left.
func (f *recorded) settle(name string, y *tally) error {
	if y.bad > y.good {
		return &sensors.InputError{File: name, Line: y.first.Line, What: finding.New("nmea.bad_lines", finding.Count("bad", y.bad), finding.Count("of", y.bad+y.good), finding.Of("first", y.first.What)),
			Remedy: finding.New("nmea.record_as_is")}
	}
	kept := f.fixes[:0]
	lost := 0
	for _, x := range f.fixes {
		if f.stamped == 0 && !x.UTC.IsZero() {
			x.T = float64(x.UTC.UnixMilli()) / 1000
		}
		if math.IsNaN(x.T) {
			lost++
			continue
		}
		kept = append(kept, x)
	}
	f.fixes = kept
	if lost > 0 {
		f.notes = append(f.notes, sensors.Note{File: name, Count: lost, What: finding.New("nmea.no_time")})
	}
	clock := repair.NewClock("input.fix")
	f.fixes = clock.Fixes(f.fixes)
	f.notes = append(f.notes, clock.Notes(name)...)
	if len(f.fixes) == 0 {
		return &sensors.InputError{File: name, What: finding.New("nmea.no_fix"),
			Remedy: finding.New("nmea.record_rmc")}
	}
	return nil
}
