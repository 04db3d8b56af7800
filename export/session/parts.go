package session

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"io"

	"stillair/sensors"
	"stillair/sensors/finding"
)

var magic = []byte{0x1f, 0x8b, 8}

// Why a part was not taken, other than damage.
var (
	errTooLong = finding.Fail("session.long_line")
	errTooMuch = finding.Fail("session.too_much")
)

// decoder reads one file.
type decoder struct {
	name string
	all  []*gather // the recordings of the file, in order of appearance
	cur  *gather   // the one that the current lines belong to
	last *gather   // the one of the last whole part
	sect section

	most, mostEvents, mostSound, mostParts int // that the file may hold
	motions, events, pressures, heard      int // number so far
	pieces                                 int
	words                                  int64

	read, failed int64 // bytes unpacked, and unpacked without result
	line         int   // of the file as zcat gives it
	torn         bool  // damage since the last whole part
	strays       int   // parts without recognised lines
	refused      error // why a recording of the file is not read
	shunned      map[ID]bool
	notes        notes // of the file as a whole

	packed  *bufio.Reader // of the file, at the current part
	gz      *gzip.Reader
	text    []byte // the current part, unpacked, as far as it is buffered
	look    []byte // for finding the next part
	columns []float64
}

// Text of a member that is held in memory until its checksum is known. A longer
// one, which no recorder writes, is unpacked twice.
const mostHeld = 1 << 20

// file walks over the members of a file. After a damaged one it goes on at the
// next magic number behind its beginning.
func (d *decoder) file(src *io.SectionReader) error {
	for at := int64(0); at < src.Size(); {
		next, err := d.find(src, at)
		if err != nil {
			return d.unreadable(err)
		}
		d.torn = d.torn || next != at
		if next < 0 {
			break
		}
		at = next
		used, err := d.member(src, at)
		switch {
		case err == nil:
			at += used
			d.torn = false
		case errors.Is(err, errTooMuch):
			return d.giveUp(err)
		default:
			d.torn = true
			at += int64(len(magic))
		}
	}
	return nil
}

// member reads the member at a place of the file. No line of it is looked at
// before its checksum and length are known to be right.
func (d *decoder) member(src *io.SectionReader, at int64) (used int64, err error) {
	rest := io.NewSectionReader(src, at, src.Size()-at)
	if err := d.unpack(rest); err != nil {
		return 0, err
	}
	whole, n, err := d.hold()
	if err != nil {
		if d.failed += n; d.failed > maxFailed {
			return 0, errTooMuch
		}
		return 0, err
	}
	passed, err := rest.Seek(0, io.SeekCurrent)
	if err != nil {
		return 0, err
	}
	used = passed - int64(d.packed.Buffered())
	if whole {
		return used, d.held(d.text)
	}
	if _, err := rest.Seek(0, io.SeekStart); err != nil {
		return 0, err
	}
	if err := d.unpack(rest); err != nil {
		return 0, err
	}
	return used, d.stream(d.gz)
}

// unpack begins to unpack one member.
func (d *decoder) unpack(r io.Reader) (err error) {
	d.packed.Reset(r)
	if d.gz == nil {
		d.gz, err = gzip.NewReader(d.packed)
	} else {
		err = d.gz.Reset(d.packed)
	}
	if err != nil {
		d.gz = nil
		return err
	}
	d.gz.Multistream(false)
	return nil
}

// hold unpacks a member to its end, where gzip checks it. It reports whether all
// of its text is held, and how long it is.
func (d *decoder) hold() (whole bool, n int64, err error) {
	d.text = d.text[:0]
	line, whole := 0, true
	for {
		if len(d.text) == cap(d.text) {
			if len(d.text) >= mostHeld {
				whole, d.text = false, d.text[:0]
			} else {
				d.text = append(d.text, 0)[:len(d.text)]
			}
		}
		room := d.text[len(d.text):cap(d.text)]
		k, err := d.gz.Read(room)
		n += int64(k)
		if i := bytes.LastIndexByte(room[:k], '\n'); i >= 0 {
			line = k - i
		} else {
			line += k
		}
		d.text = d.text[:len(d.text)+k]
		switch {
		case err == io.EOF:
			return whole, n, nil
		case err != nil:
			return whole, n, err
		case line > maxLine:
			return whole, n, errTooLong
		case d.read+n > maxText:
			return whole, n, errTooMuch
		}
	}
}

// unreadable ends the reading where the storage does not give the file, with
// an error only where nothing was read.
func (d *decoder) unreadable(err error) error {
	if len(d.all) == 0 {
		return sensors.Unreadable(d.name, 0, err)
	}
	d.notes.note(finding.New("session.rest_unreadable", sensors.Cause(err)), 0)
	return nil
}

// giveUp ends the reading of a malformed or hopeless file, with an error only
// where nothing was read.
func (d *decoder) giveUp(err error) error {
	if d.parts() == 0 {
		return &sensors.InputError{File: d.name, What: what(err), Remedy: finding.New("input.check_file")}
	}
	d.notes.note(finding.New("session.rest_left_out", sensors.Cause(err)), d.line)
	d.torn = false
	return nil
}

// parts counts the whole parts read so far.
func (d *decoder) parts() (n int) {
	for _, g := range d.all {
		n += g.rec.Parts
	}
	return n
}
