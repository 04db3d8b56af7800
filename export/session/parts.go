package session

import (
	"bufio"
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/pile"
)

var magic = []byte{0x1f, 0x8b, 8}

// Why a part was not taken, other than damage.
var (
	errTooLong = errors.New("a line is longer than any session has")
	errTooMuch = errors.New("it unpacks to more than any session holds")
)

// partKey tells two copies of one part from two parts: its number and the
// CRC-32 and length at its end.
type partKey struct {
	n       int
	trailer [8]byte
}

// decoder reads one file.
type decoder struct {
	name string
	rec  Recording
	seen map[partKey]bool

	motion   pile.Pile[sensors.Motion]
	fixes    pile.Pile[sensors.Fix]
	pressure pile.Pile[sensors.Pressure]
	sounds   pile.Pile[sensors.Sound]
	heard    int // values of sound

	most, mostEvents, mostSound int // motion samples, others, and values of sound that the file may hold

	text, failed int64 // bytes unpacked, and unpacked in vain
	words        int64
	known        int  // lines of a known type
	line         int  // of the file as zcat gives it
	damaged      bool // since the last whole part
	lastN        int
	lastTo       float64 // end of the last whole part that told it; −∞ before the first
	owed         bool    // a loss was seen and its end is not known yet

	packed  *bufio.Reader // of the file, at the part at hand
	gz      *gzip.Reader
	lines   *bufio.Reader
	look    []byte    // for finding the next part
	long    []byte    // a line that did not fit the buffer of lines
	columns []float64 // numbers of the motion line at hand
	counts  map[string]*sensors.Note
	order   []string // keys of counts as they came
}

// file walks over the members of a file. After a damaged one it goes on at the
// next magic number behind its beginning.
func (d *decoder) file(src *io.SectionReader) error {
	for at := int64(0); at < src.Size(); {
		next, err := d.find(src, at)
		if err != nil {
			return d.unreadable(err)
		}
		if next != at {
			d.damaged = true
		}
		if next < 0 {
			break
		}
		at = next
		used, err := d.part(src, at)
		var input *sensors.InputError
		switch {
		case err == nil:
			at += used
			d.rec.Good = at
		case errors.As(err, &input):
			return err
		case errors.Is(err, errTooMuch):
			return d.giveUp(err)
		default:
			d.damaged = true
			at += int64(len(magic))
		}
	}
	return nil
}

// unreadable ends the reading where the storage does not give the file, with
// an error only where nothing was read.
func (d *decoder) unreadable(err error) error {
	if d.rec.Parts == 0 {
		return &sensors.InputError{File: d.name, What: finding.Said("cannot be read: " + err.Error()),
			Remedy: finding.Said("copy the file again from where it was recorded"), Err: err}
	}
	d.note("the rest of the file cannot be read: "+err.Error(), 0)
	return nil
}

// giveUp ends the reading of a hostile or hopeless file, with an error only
// where nothing was read.
func (d *decoder) giveUp(err error) error {
	if d.rec.Parts == 0 {
		return &sensors.InputError{File: d.name, What: finding.Said(err.Error()), Remedy: finding.Said("check that it is the right file")}
	}
	d.note("the rest of the file is left out: "+err.Error(), d.line)
	d.damaged = false
	return nil
}

// part reads the member at a place of the file. Unless its CRC is right nothing
// of it is kept.
func (d *decoder) part(src *io.SectionReader, at int64) (used int64, err error) {
	rest := io.NewSectionReader(src, at, src.Size()-at)
	d.packed.Reset(rest)
	if d.gz == nil {
		d.gz, err = gzip.NewReader(d.packed)
	} else {
		err = d.gz.Reset(d.packed)
	}
	if err != nil {
		d.gz = nil
		return 0, err
	}
	d.gz.Multistream(false)
	mark := d.mark()
	d.lines.Reset(d.gz)
	p := newPartState()
	if err := d.partLines(&p); err != nil {
		d.failed += d.text - mark.text
		d.back(mark)
		if d.failed > maxFailed {
			return 0, fmt.Errorf("%w, all of it damaged", errTooMuch)
		}
		return 0, err
	}
	passed, err := rest.Seek(0, io.SeekCurrent)
	if err != nil {
		return 0, err
	}
	used = passed - int64(d.packed.Buffered())
	if _, err := rest.ReadAt(p.key.trailer[:], used-int64(len(p.key.trailer))); err != nil {
		d.back(mark)
		return 0, err
	}
	if d.seen[p.key] && p.key.n > 0 {
		d.back(mark)
		d.note("a part is in the file twice; one copy is left out", 0)
		return used, nil
	}
	d.seen[p.key] = true
	d.accept(p)
	return used, nil
}

// partState is what the lines of a part say about it.
type partState struct {
	key      partKey // its number is that of the last "part" line
	first    int     // and this that of the first: more than one is in a file packed anew
	from, to float64
	end      bool
	known    int // lines of a known type
	notes    []sensors.Note
}

func newPartState() partState {
	return partState{key: partKey{n: -1}, from: math.NaN(), to: math.NaN()}
}

// odd returns how to note that something in the line is odd. A part that is
// nothing but odd is cut short, so that it cannot fill the memory.
func (p *partState) odd(line int) func(text string) {
	return func(text string) {
		const most = 10000
		if len(p.notes) < most {
			p.notes = append(p.notes, sensors.Note{Line: line, What: finding.Said(text)})
		}
	}
}

// partLines reads the lines of a member to its end, where gzip checks the CRC.
func (d *decoder) partLines(p *partState) error {
	for {
		line, err := d.readLine()
		if len(line) > 0 && (err == nil || err == io.EOF) {
			if lineErr := d.decodeLine(line, p); lineErr != nil {
				return lineErr
			}
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// readLine returns the next line without copying where it can.
func (d *decoder) readLine() ([]byte, error) {
	line, err := d.lines.ReadSlice('\n')
	if err == bufio.ErrBufferFull {
		d.long = d.long[:0]
		for err == bufio.ErrBufferFull && len(d.long) <= maxLine {
			d.long = append(d.long, line...)
			line, err = d.lines.ReadSlice('\n')
		}
		if err == bufio.ErrBufferFull {
			return nil, errTooLong
		}
		d.long = append(d.long, line...)
		line = d.long
	}
	d.line++
	d.text += int64(len(line))
	if d.text > maxText {
		return nil, errTooMuch
	}
	return line, err
}

// accept takes a whole part into the account of what is there and what is
// missing. Parts are numbered, so a gap in the numbers is a loss. Damage
// without a gap is one only where time is missing too: otherwise it was a torn
// copy of a part that was then written again.
func (d *decoder) accept(p partState) {
	d.rec.Parts++
	d.rec.Closed = p.end
	d.known += p.known
	for _, n := range p.notes {
		d.note(n.What.String(), n.Line)
	}
	lost := d.damaged
	if p.key.n > 0 {
		const torn = 0.5 // s
		lost = p.first > d.lastN+1 || (d.damaged && p.from-d.lastTo > torn)
		d.lastN = p.key.n
		d.rec.Last = max(d.rec.Last, p.key.n)
	}
	d.damaged = false
	if math.IsNaN(p.from) {
		d.owed = d.owed || lost
		return
	}
	if lost || d.owed {
		d.rec.Missing = append(d.rec.Missing, Span{From: d.lastTo, To: p.from})
		d.owed = false
	}
	d.lastTo = p.to
}
