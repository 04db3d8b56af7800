package sensors

import (
	"compress/flate"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"math"

	"stillair/sensors/finding"
)

// Log is a whole recorded ride in memory, on one clock. Each slice is in order
// of T without doubles; a reader sorts and removes, and says so in Notes.
type Log struct {
	Motion   []Motion
	Fixes    []Fix
	Pressure []Pressure
	Sound    []Sound
	States   []State
	Ride     Ride
	Notes    []Note
}

// Begin is the time of the log's first motion sample or fix, NaN if it has
// neither.
func (l *Log) Begin() float64 {
	switch {
	case len(l.Motion) > 0 && len(l.Fixes) > 0:
		return min(l.Motion[0].T, l.Fixes[0].T)
	case len(l.Motion) > 0:
		return l.Motion[0].T
	case len(l.Fixes) > 0:
		return l.Fixes[0].T
	}
	return math.NaN()
}

// Note is a reader's note of something left out, corrected or unusual.
type Note struct {
	File  string // name as given to the reader; may be empty
	Line  int    // 1-based line of the first case; 0 if it has none
	Count int    // number of samples or lines concerned
	What  finding.Finding
}

func (n Note) String() string {
	at := n.File
	if n.Line > 0 {
		at = fmt.Sprintf("%s:%d", n.File, n.Line)
	}
	if at != "" {
		at += ": "
	}
	if n.Count > 1 {
		return fmt.Sprintf("%s%s (%d times)", at, n.What, n.Count)
	}
	return at + n.What.String()
}

// InputError is bad input that a person can fix: its place, what is wrong and
// the remedy.
type InputError struct {
	File   string          // may be empty if the input has no name
	Line   int             // 1-based; 0 if it concerns the whole file
	What   finding.Finding // what is wrong
	Remedy finding.Finding // what the person can do about it
	Err    error           // the cause, or nil
}

func (e *InputError) Error() string {
	at := e.File
	if e.Line > 0 {
		at = fmt.Sprintf("%s:%d", e.File, e.Line)
	}
	if at != "" {
		at += ": "
	}
	if e.Remedy.IsZero() {
		return at + e.What.String()
	}
	return at + e.What.String() + "; " + e.Remedy.String()
}

func (e *InputError) Unwrap() error { return e.Err }

// Unreadable says that a file could not be read from that line on.
func Unreadable(file string, line int, err error) *InputError {
	return &InputError{File: file, Line: line, What: finding.New("input.unreadable", Cause(err)), Remedy: finding.New("input.copy_again"), Err: err}
}

// Damaged says that a file ends early and that what came before is kept.
func Damaged(err error) finding.Finding { return finding.New("input.damaged", Cause(err)) }

// Cause is the argument "why" of a finding: the finding that an error carries,
// or the system's own text.
func Cause(err error) finding.Arg {
	var f *finding.Error
	if errors.As(err, &f) {
		return finding.Of("why", f.Finding)
	}
	if f, ok := Broken(err); ok {
		return finding.Of("why", f)
	}
	return finding.Text("why", err.Error())
}

// Broken returns a finding for an error of Go's library about a truncated or
// corrupted file, and reports whether err is one.
func Broken(err error) (finding.Finding, bool) {
	var packed flate.CorruptInputError
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF), errors.Is(err, io.EOF):
		return finding.New("input.ends_early"), true
	case errors.Is(err, gzip.ErrHeader), errors.Is(err, gzip.ErrChecksum), errors.As(err, &packed):
		return finding.New("input.packing"), true
	}
	return finding.Finding{}, false
}
