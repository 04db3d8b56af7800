package w3c

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"math"

	"stillair/sensors"
	"stillair/sensors/chunk"
	"stillair/sensors/finding"
	"stillair/sensors/internal/repair"
)

// Limits for the memory of a malformed file.
const (
	longestLine = 64 << 10  // bytes
	mostMotion  = 1_200_000 // five and a half hours at 60 Hz, the maximum of browsers
	mostFixes   = 100_000   // a day at 1 Hz
)

// arrived is a position with all data about its arrival.
type arrived struct {
	fix    sensors.Fix // T is not set
	own    float64     // its own timeStamp, ms; NaN if the page adds none
	epoch  float64     // its timestamp, ms since 1970 or on the page's clock
	behind float64     // timeStamp of the motion event before it, ms; NaN for none
}

// stream is a file being read.
type stream struct {
	name       string
	log        *sensors.Log
	motions    chunk.Buffer[sensors.Motion]
	arrivals   chunk.Buffer[arrived]
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
		return nil, s.fail(n.Line, finding.New("w3c.bad_lines", finding.Count("bad", s.bad), finding.Count("of", s.bad+s.good), finding.Of("first", n.What)),
			finding.New("w3c.object_a_line"))
	}
	if err := s.settle(); err != nil {
		return nil, err
	}
	return s.log, nil
}

func (s *stream) fail(line int, what, remedy finding.Finding) error {
	return &sensors.InputError{File: s.name, Line: line, What: what, Remedy: remedy}
}

func (s *stream) lines(r io.Reader) error {
	in := bufio.NewReaderSize(r, longestLine)
	for line := 1; ; line++ {
		b, err := in.ReadSlice('\n')
		if errors.Is(err, bufio.ErrBufferFull) {
			return s.fail(line, finding.New("input.long_line", finding.Size("most", longestLine)), finding.New("w3c.object_a_line"))
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
			return sensors.Unreadable(s.name, line, err)
		case err != nil:
			s.note(line, err, sensors.Damaged(err))
			return nil
		}
	}
}

// note counts a problem and describes its first case.
func (s *stream) note(line int, problem error, what finding.Finding) {
	i, ok := s.problems[problem]
	if !ok {
		i = len(s.log.Notes)
		s.problems[problem] = i
		s.log.Notes = append(s.log.Notes, sensors.Note{File: s.name, Line: line, What: what})
	}
	s.log.Notes[i].Count++
}

var (
	errUnknown = finding.Fail("w3c.unknown_object")
	errNoTime  = finding.Fail("w3c.no_timestamp")
)

// take takes one line; an error refuses the whole file.
func (s *stream) take(line int, b []byte) error {
	o, err := parseLine(b)
	switch {
	case errors.Is(err, errAxes):
		return s.fail(line, errAxes.Finding, repair.AxesWords())
	case err == nil && o.kind == unknown:
		s.good++
		s.note(line, errUnknown, errUnknown.Finding)
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
			return s.fail(line, finding.New("w3c.hardly_any_line", sensors.Cause(err)), finding.New("w3c.object_a_line"))
		}
		s.note(line, err, finding.New("input.line_left_out", sensors.Cause(err)))
		return nil
	}
	s.good++
	if s.motions.Len() > mostMotion || s.arrivals.Len() > mostFixes {
		return s.fail(line, finding.New("input.too_many", finding.Count("most", mostMotion)), finding.New("input.shorter"))
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

// settle converts everything to one clock, in order, in SI units, with the force
// upwards.
func (s *stream) settle() error {
	s.log.Motion, s.positions = s.motions.Take(), s.arrivals.Take()
	if len(s.log.Motion) == 0 {
		return s.fail(0, finding.New("w3c.no_motion"), finding.New("w3c.record_motion"))
	}
	if len(s.positions) == 0 {
		return s.fail(0, finding.New("w3c.no_fix"), finding.New("w3c.high_accuracy"))
	}
	clock := repair.NewClock("input.motion_event")
	s.log.Motion = clock.Motion(s.log.Motion)
	s.log.Notes = append(s.log.Notes, clock.Notes(s.name)...)
	if err := s.place(); err != nil {
		return err
	}
	s.log.Fixes = clock.Fixes(s.log.Fixes)
	s.log.Notes = append(s.log.Notes, clock.Notes(s.name)...)
	note, err := repair.Force(s.name, s.log.Motion)
	if err != nil {
		return err
	}
	if note != nil {
		s.log.Notes = append(s.log.Notes, *note)
	}
	var spikes int
	if s.log.Motion, spikes = repair.DropSpikes(s.log.Motion); spikes > 0 {
		s.log.Notes = append(s.log.Notes, repair.SpikesDropped(s.name, spikes))
	}
	if _, err := repair.Speed(s.log, s.name); err != nil {
		return err
	}
	s.log.Ride.Axes = repair.Settle(s.log, s.name, s.axes)
	return nil
}
