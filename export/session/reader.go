package session

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits that hold a hostile file's memory. A day of 400 Hz motion is within
// them.
const (
	maxFile    = 512 << 20 // bytes of the file
	maxText    = 4 << 30   // bytes of all that it unpacks to
	maxLine    = 4 << 20   // bytes of one line
	maxFailed  = 256 << 20 // bytes unpacked in vain, looking for the next whole part
	maxSamples = 40 << 20  // motion samples
	maxEvents  = 1 << 20   // fixes, states and remarks, each
	maxWords   = 16 << 20  // bytes of text: remarks, states and the like

	// A small file cannot hold many samples (a phone that lies still takes three
	// bytes for each of motion): more than these, and than one for two bytes of
	// the file, or eight for the others, are a trap.
	freeSamples = 1 << 17
	freeEvents  = 1 << 16
)

// Span is a stretch of time, s on the log's clock.
type Span struct{ From, To float64 }

// Recording is a session file as read.
type Recording struct {
	Header  Header
	Name    string // what the rider calls the ride; may be empty
	Log     *sensors.Log
	Remarks []Remark

	Closed  bool   // the recorder closed it; false after a crash
	Missing []Span // seconds lost to damage, where a whole part follows; From is −∞ where none precedes
	Parts   int    // how many whole parts were read
	Last    int    // the highest number of a part
	Good    int64  // bytes up to the end of the last whole part
}

// Read reads a whole session file. The name is for messages. The error is for
// input that is no session file at all; whatever else is wrong with the file
// is in the log's notes, and what is whole is returned.
//
// A reader that can be read at any place, such as an *os.File, is not taken
// into memory.
func Read(r io.Reader, name string) (*Recording, error) {
	src, err := open(r)
	if err != nil {
		return nil, &sensors.InputError{File: name, What: finding.Said("cannot be read: " + err.Error()),
			Remedy: finding.Said("copy the file again from where it was recorded"), Err: err}
	}
	if src.Size() > maxFile {
		return nil, &sensors.InputError{File: name, What: finding.Said(fmt.Sprintf("is larger than %d MiB", maxFile>>20)),
			Remedy: finding.Said("no session is that long: check that it is the right file")}
	}
	d := newDecoder(name, int(src.Size()))
	if err := d.file(src); err != nil {
		return nil, err
	}
	if err := d.nothing(src); err != nil {
		return nil, err
	}
	return d.finish(), nil
}

// nothing says why there is nothing to return, nil where there is something.
func (d *decoder) nothing(src *io.SectionReader) error {
	head := make([]byte, len(magic))
	n, _ := src.ReadAt(head, 0) // short only where the file is
	switch {
	case d.rec.Parts == 0 && !IsSession(head[:n]):
		return &sensors.InputError{File: d.name, What: finding.Said("is no session file: it does not begin as gzip does"),
			Remedy: finding.Said("give a session file (.jsonl.gz), or another kind of log under its own name")}
	case d.rec.Parts == 0:
		return &sensors.InputError{File: d.name, What: finding.Said("holds no whole part of a session"),
			Remedy: finding.Said("nothing can be had back from it; look for another copy")}
	case d.known == 0:
		return &sensors.InputError{File: d.name, What: finding.Said("is compressed as a session file is, but holds none"),
			Remedy: finding.Said("unpack it with gunzip and give what is inside")}
	}
	return nil
}

// ReadText reads a session that was unpacked, as zcat does it.
func ReadText(r io.Reader, name string) (*Recording, error) {
	d := newDecoder(name, maxFile)
	d.lines.Reset(r)
	p := newPartState()
	err := d.partLines(&p)
	var input *sensors.InputError
	switch {
	case errors.As(err, &input):
		return nil, err
	case err != nil:
		return nil, &sensors.InputError{File: name, Line: d.line + 1, What: finding.Said("cannot be read on: " + err.Error()),
			Remedy: finding.Said("give the session file as it was recorded, unpacked by nothing"), Err: err}
	case p.known == 0:
		return nil, &sensors.InputError{File: name, What: finding.Said("holds no line of a session"), Remedy: finding.Said("give a session file")}
	}
	d.accept(p)
	return d.finish(), nil
}

// IsSession reports whether a file that begins with head may be a session: it
// begins with the magic number of gzip (RFC 1952, section 2.3.1) and its
// method, deflate.
func IsSession(head []byte) bool {
	return len(head) >= 3 && head[0] == 0x1f && head[1] == 0x8b && head[2] == 8
}

// newDecoder returns a decoder for a file of size bytes.
func newDecoder(name string, size int) *decoder {
	return &decoder{name: name, packed: bufio.NewReaderSize(nil, 4<<10), lines: bufio.NewReaderSize(nil, 64<<10),
		look: make([]byte, 64<<10), most: min(maxSamples, freeSamples+size/2),
		mostEvents: min(maxEvents, freeEvents+size/8), mostSound: min(maxSound, freeSound+soundByte*size), seen: map[partKey]bool{}, counts: map[string]*sensors.Note{}, lastTo: math.Inf(-1),
		rec: Recording{Header: Header{Start: math.NaN()}, Log: &sensors.Log{Ride: sensors.UnknownRide()}}}
}
