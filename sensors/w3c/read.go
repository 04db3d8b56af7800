package w3c

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/mend"
	"stillair/sensors/pile"
)

// Limits that hold a hostile file's memory.
const (
	longestLine = 64 << 10  // bytes
	mostMotion  = 1_200_000 // five and a half hours at 60 Hz, which browsers end at
	mostFixes   = 100_000   // a day at 1 Hz
)

// arrived is a position with all that may tell when it came.
type arrived struct {
	fix    sensors.Fix // T is not set
	own    float64     // its own timeStamp, ms; NaN where the page adds none
	epoch  float64     // its timestamp, ms since 1970 or on the page's clock
	behind float64     // timeStamp of the motion event before it, ms; NaN for none
}

// stream is a file under way.
type stream struct {
	name       string
	log        *sensors.Log
	motions    pile.Pile[sensors.Motion]
	arrivals   pile.Pile[arrived]
	positions  []arrived // once all are there
	axes       string
	timeOrigin float64
	newest     float64 // timeStamp of the newest motion event, ms
	good, bad  int
	problems   map[error]int // index in log.Notes
}

// Read reads a stream to its end; name is for people. replay.New makes a source
// of the log.
func Read(r io.Reader, name string) (*sensors.Log, error) {
	s := &stream{name: name, log: &sensors.Log{Ride: sensors.UnknownRide()}, timeOrigin: math.NaN(), newest: math.NaN(),
		problems: map[error]int{}}
	if err := s.lines(r); err != nil {
		return nil, err
	}
	if s.bad > s.good {
		n := s.log.Notes[0]
		return nil, s.fail(n.Line, fmt.Sprintf("%d of %d lines cannot be read; first: %s", s.bad, s.bad+s.good, n.What),
			"write one JSON object a line, with the names of the W3C")
	}
	if err := s.settle(); err != nil {
		return nil, err
	}
	return s.log, nil
}

func (s *stream) fail(line int, what, mend string) error {
	return &sensors.InputError{File: s.name, Line: line, What: finding.Said(what), Remedy: finding.Said(mend)}
}

func (s *stream) lines(r io.Reader) error {
	in := bufio.NewReaderSize(r, longestLine)
	for line := 1; ; line++ {
		b, err := in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			return s.fail(line, fmt.Sprintf("line is longer than %d KiB", longestLine>>10), "write one JSON object a line")
		}
		if b = bytes.TrimSpace(bytes.TrimPrefix(b, []byte("\ufeff"))); len(b) > 0 {
			if err := s.take(line, b); err != nil {
				return err
			}
		}
		switch {
		case errors.Is(err, io.EOF):
			return nil
		case err != nil && s.good == 0:
			return &sensors.InputError{File: s.name, Line: line, What: finding.Said("the file cannot be read: " + err.Error()),
				Remedy: finding.Said("copy it again from where it came from"), Err: err}
		case err != nil:
			s.note(line, err, "the file is damaged from here on ("+err.Error()+"); what came before is kept")
			return nil
		}
	}
}

// note counts a problem and tells of its first case.
func (s *stream) note(line int, problem error, text string) {
	i, ok := s.problems[problem]
	if !ok {
		i = len(s.log.Notes)
		s.problems[problem] = i
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Line: line, What: finding.Said(text)})
	}
	s.log.Notes[i].Count++
}

var (
	errUnknown = errors.New("this object is neither motion nor position")
	errNoTime  = errors.New("the object has no timeStamp")
)

// take takes one line; only what refuses the whole file is an error.
func (s *stream) take(line int, b []byte) error {
	o, err := parseLine(b)
	switch {
	case errors.Is(err, errAxes):
		return s.fail(line, err.Error(), "write one of the two")
	case err == nil && o.kind == unknown:
		s.good++
		s.note(line, errUnknown, errUnknown.Error()+"; it is passed over")
		return nil
	case err == nil && o.kind == motion:
		err = s.motion(o)
	case err == nil && o.kind == position:
		s.position(o)
	case err == nil:
		s.head(o)
	}
	if err != nil {
		if s.bad++; s.bad > 10_000 && s.bad > 9*s.good {
			return s.fail(line, "nearly no line can be read; this one because "+err.Error(), "write one JSON object a line, with the names of the W3C")
		}
		s.note(line, err, err.Error()+"; the line is left out")
		return nil
	}
	s.good++
	if s.motions.Len() > mostMotion || s.arrivals.Len() > mostFixes {
		return s.fail(line, "there are too many samples for one ride", "cut it into shorter ones")
	}
	return nil
}

func (s *stream) head(o object) {
	if o.axes != "" {
		s.axes = o.axes
	}
	if isEpoch(o.timeOrigin) {
		s.timeOrigin = o.timeOrigin
	}
}

func (s *stream) motion(o object) error {
	at := o.timeStamp
	if math.IsNaN(at) {
		at = o.timestamp
	}
	if math.IsNaN(at) {
		return errNoTime
	}
	o.motion.T = at / 1000
	s.newest = at
	s.motions.Add(o.motion)
	return nil
}

func (s *stream) position(o object) {
	s.arrivals.Add(arrived{fix: FixFrom(math.NaN(), o.coords, o.timestamp),
		own: o.timeStamp, epoch: o.timestamp, behind: s.newest})
}

// settle puts all on one clock, in order, in SI units, and the right way up.
func (s *stream) settle() error {
	s.log.Motion, s.positions = s.motions.Take(), s.arrivals.Take()
	if len(s.log.Motion) == 0 {
		return s.fail(0, "there is no motion event", "record devicemotion beside the positions")
	}
	if len(s.positions) == 0 {
		return s.fail(0, "there is no position with a speed", "record positions with enableHighAccuracy, in the open")
	}
	var d mend.Disorder
	s.log.Motion, d = mend.Order(s.log.Motion, mend.MotionTime)
	s.disorder(d, "a motion event")
	if err := s.place(); err != nil {
		return err
	}
	s.log.Fixes, d = mend.Order(s.log.Fixes, mend.FixTime)
	s.disorder(d, "a position")
	note, err := mend.Force(s.name, s.log.Motion)
	if err != nil {
		return err
	}
	if note != nil {
		s.log.Notes = append(s.log.Notes, *note)
	}
	var spikes int
	if s.log.Motion, spikes = mend.DropSpikes(s.log.Motion); spikes > 0 {
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Count: spikes, What: finding.Said(mend.SpikeText)})
	}
	s.log.Ride.Axes = mend.Settle(s.log, s.name, s.axes)
	return nil
}

func (s *stream) disorder(d mend.Disorder, what string) {
	if d.Moved > 0 {
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Count: d.Moved, What: finding.Said(what + " came after a later one; they are sorted")})
	}
	if d.Doubled > 0 {
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Count: d.Doubled, What: finding.Said(what + " had the time of one before it and is left out")})
	}
}
