package session

import (
	"bufio"
	"io"
	"math"
	"time"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits that hold a malformed file's memory. A day of 400 Hz motion is within
// them.
const (
	maxFile    = 512 << 20 // bytes of the file
	maxText    = 4 << 30   // bytes of all that it unpacks to
	maxLine    = 4 << 20   // bytes of one line
	maxFailed  = 256 << 20 // bytes unpacked without result, while looking for the next whole part
	maxSamples = 40 << 20  // motion samples
	maxEvents  = 1 << 20   // fixes, states and remarks, each
	maxParts   = 1 << 20   // parts
	maxWords   = 16 << 20  // bytes of text: remarks, states and the like

	// A small file cannot hold many samples (a phone that lies still takes three
	// bytes for each of motion): more than these, and than one for two bytes of
	// the file, or eight for the others, are a trap.
	freeSamples = 1 << 17
	freeEvents  = 1 << 16
	freeParts   = 1 << 14
)

// Span is a stretch of time, s on the log's clock.
type Span struct{ From, To float64 }

// Recording is a session file as read.
type Recording struct {
	Header  Header
	Name    string // the rider's name for the ride; may be empty
	Log     *sensors.Log
	Remarks []Remark

	Closed   bool    // the recorder closed it; false after a crash
	Missing  []Span  // seconds lost: From is −∞ if no whole part precedes, To is +∞ if none follows
	Unstored []Span  // seconds that no storage had confirmed when the recording was cut off
	Parts    int     // how many whole parts were read
	Others   []Brief // further recordings of the same file; only set for the first one
}

// Brief names a recording beside another one.
type Brief struct {
	ID       ID
	Started  time.Time // zero if unknown
	From, To float64   // s on its clock; −∞ if unknown
	Parts    int
}

func (r *Recording) brief() Brief {
	from, to := math.Inf(1), math.Inf(-1)
	if n := len(r.Log.Motion); n > 0 {
		from, to = r.Log.Motion[0].T, r.Log.Motion[n-1].T
	}
	if n := len(r.Log.Fixes); n > 0 {
		from, to = min(from, r.Log.Fixes[0].T), max(to, r.Log.Fixes[n-1].T)
	}
	return Brief{ID: r.Header.ID, Started: r.Header.Started, From: from, To: to, Parts: r.Parts}
}

// finding says that the recording is in the file too.
func (b Brief) finding() finding.Finding {
	begun := finding.New("session.begun_unknown")
	if !b.Started.IsZero() {
		begun = finding.New("session.begun", finding.Text("at", b.Started.UTC().Format("2006-01-02 15:04 UTC")))
	}
	if b.From > b.To {
		return finding.New("session.another_empty", finding.Of("begun", begun))
	}
	return finding.New("session.another", finding.Of("begun", begun), finding.Time("long", b.To-b.From))
}

// codeGiveSession asks for a file of this format.
const codeGiveSession finding.Code = "session.give_session"

// Read reads a session file. The name is for messages. It returns an error only
// for input that is not a session file at all; other faults are listed in the
// log's notes, and everything undamaged is returned. Of a file with several
// recordings it returns the one with most parts.
//
// A reader that can be read at any place, such as an *os.File, is not taken
// into memory.
func Read(r io.Reader, name string) (*Recording, error) { return first(ReadAll(r, name)) }

func first(all []*Recording, err error) (*Recording, error) {
	if err != nil {
		return nil, err
	}
	return all[0], nil
}

// ReadAll is Read for every recording in a file, the one with most parts first.
// Parts of several recordings come into one file where files were joined, or
// where a storage left old blocks behind a new file.
func ReadAll(r io.Reader, name string) ([]*Recording, error) {
	src, err := open(r)
	if err != nil {
		return nil, sensors.Unreadable(name, 0, err)
	}
	if src.Size() > maxFile {
		return nil, &sensors.InputError{File: name, What: finding.New("input.large_file", finding.Size("most", maxFile)),
			Remedy: finding.New("input.check_file")}
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

// nothing is the error for a file without a recording, else nil.
func (d *decoder) nothing(src *io.SectionReader) error {
	head := make([]byte, len(magic))
	n, _ := src.ReadAt(head, 0) // short only if the file is
	switch {
	case d.parts() == 0 && d.refused != nil:
		return d.refused
	case d.parts() == 0 && !IsSession(head[:n]):
		return &sensors.InputError{File: d.name, What: finding.New("session.no_gzip"), Remedy: finding.New("session.give_or_rename")}
	case d.parts() == 0:
		return &sensors.InputError{File: d.name, What: finding.New("session.no_whole_part"), Remedy: finding.New("session.another_copy")}
	case d.known() == 0:
		return &sensors.InputError{File: d.name, What: finding.New("session.only_gzip"), Remedy: finding.New("session.unpack")}
	}
	return nil
}

// known counts the lines of a known type.
func (d *decoder) known() (n int) {
	for _, g := range d.all {
		n += g.known
	}
	return n
}

// ReadText is Read for a session that was unpacked, as zcat does it.
func ReadText(r io.Reader, name string) (*Recording, error) { return first(ReadAllText(r, name)) }

// ReadAllText is ReadAll for a session that was unpacked.
func ReadAllText(r io.Reader, name string) ([]*Recording, error) {
	d := newDecoder(name, maxFile)
	err := d.stream(r)
	switch {
	case err != nil:
		return nil, &sensors.InputError{File: name, Line: d.line + 1, What: finding.New("session.unreadable_on", sensors.Cause(err)),
			Remedy: finding.New("session.as_recorded"), Err: err}
	case d.known() == 0 && d.refused != nil:
		return nil, d.refused
	case d.known() == 0:
		return nil, &sensors.InputError{File: name, What: finding.New("session.no_line"), Remedy: finding.New(codeGiveSession)}
	}
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
	return &decoder{name: name, notes: notes{file: name}, packed: bufio.NewReaderSize(nil, 4<<10), text: make([]byte, 0, 64<<10), look: make([]byte, 64<<10),
		most: min(maxSamples, freeSamples+size/2), mostEvents: min(maxEvents, freeEvents+size/8),
		mostSound: min(maxSound, freeSound+soundByte*size), mostParts: min(maxParts, freeParts+size/16)}
}
