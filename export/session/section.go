package session

import (
	"bufio"
	"bytes"
	"errors"
	"hash/crc32"
	"io"
	"math"
	"slices"

	"github.com/tidwall/gjson"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// part is what the lines of a part say about it.
type part struct {
	id       ID
	n        int // 0 if it does not begin with a part line
	kept     int
	from, to float64
	end      bool
	known    int // lines of a known type
}

// section is the lines from the first line of a part to that of the next. A
// member that a recorder wrote is one section; a file that was repacked holds
// all of them in one member.
type section struct {
	part    part
	sum     uint32
	skipped bool
	open    bool // its lines are being accepted
}

// mostRecordings is how many recordings of one file are kept apart; of a file of
// more, the later ones are left out.
const mostRecordings = 32

// held takes the text of a member, or a piece of it, whose checksum is right.
func (d *decoder) held(text []byte) error {
	d.read += int64(len(text))
	for len(text) > 0 {
		n := nextPart(text)
		if err := d.take(text[:n]); err != nil {
			return err
		}
		if err := d.close(); err != nil {
			return err
		}
		text = text[n:]
	}
	return nil
}

// nextPart is the length of the section at the beginning of the text.
func nextPart(text []byte) int {
	for at := 0; ; {
		i := bytes.IndexByte(text[at:], '\n')
		if i < 0 || at+i+1 == len(text) {
			return len(text)
		}
		if at += i + 1; beginsPart(text[at:]) {
			return at
		}
	}
}

// beginsPart reports whether the text begins with a line that begins a part.
func beginsPart(text []byte) bool {
	const usual, other = `{"type":"part"`, `{"type":"`
	if bytes.HasPrefix(text, []byte(usual)) {
		return true
	}
	if bytes.HasPrefix(text, []byte(other)) || len(text) == 0 || text[0] != '{' && text[0] != ' ' && text[0] != '\t' {
		return false
	}
	line, _, _ := bytes.Cut(text, []byte("\n"))
	return gjson.GetBytes(line, "type").String() == "part"
}

// stream takes the text of a member, or of a file without any, line by line.
func (d *decoder) stream(r io.Reader) error {
	lines := bufio.NewReaderSize(r, 64<<10)
	var piece []byte
	for {
		line, err := readLine(lines)
		if err != nil && err != io.EOF {
			return err
		}
		if d.read += int64(len(line)); d.read > maxText {
			return errTooMuch
		}
		begins := beginsPart(line)
		if begins || len(piece)+len(line) > mostHeld {
			if err := d.take(piece); err != nil {
				return err
			}
			piece = piece[:0]
		}
		if begins {
			if err := d.close(); err != nil {
				return err
			}
		}
		piece = append(piece, line...)
		if err == io.EOF {
			return errors.Join(d.take(piece), d.close())
		}
	}
}

// readLine returns the next line with its end.
func readLine(r *bufio.Reader) ([]byte, error) {
	line, err := r.ReadSlice('\n')
	if err != bufio.ErrBufferFull {
		return line, err
	}
	var long []byte
	for err == bufio.ErrBufferFull && len(long) <= maxLine {
		long = append(long, line...)
		line, err = r.ReadSlice('\n')
	}
	if err == bufio.ErrBufferFull {
		return nil, errTooLong
	}
	return append(long, line...), err
}

// take takes lines of a section: its first ones or more of it.
func (d *decoder) take(text []byte) error {
	if len(text) == 0 {
		return nil
	}
	if !d.sect.open {
		d.begin(text)
	}
	for len(text) > 0 {
		n := bytes.IndexByte(text, '\n') + 1
		if n == 0 {
			n = len(text)
		}
		d.line++
		if !d.sect.skipped {
			if err := d.decodeLine(text[:n], &d.sect.part); err != nil {
				return err
			}
		}
		text = text[n:]
	}
	return nil
}

// begin finds out which recording a section belongs to.
func (d *decoder) begin(text []byte) {
	p := part{from: math.NaN(), to: math.NaN()}
	line, _, _ := bytes.Cut(text, []byte("\n"))
	if o := gjson.ParseBytes(line); o.Get("type").String() == "part" && gjson.ValidBytes(line) {
		p.id, _ = parseID(o.Get("id").String())
		p.n, p.kept = int(o.Get("n").Int()), int(o.Get("kept").Int())
		p.from, p.to = number(o, "from_s"), number(o, "to_s")
		p.n, p.kept = clampNumber(p.n), clampNumber(p.kept)
	}
	s := section{part: p, sum: crc32.ChecksumIEEE(text), open: true}
	s.skipped = !d.choose(&s)
	d.sect = s
}

// clampNumber keeps a number of a part within what any session reaches.
func clampNumber(n int) int { return max(0, min(n, 1<<30)) }

// choose finds the recording that a section belongs to, or makes it, and reports
// false where the section is to be left out.
func (d *decoder) choose(s *section) bool {
	if d.shunned[s.part.id] {
		return false
	}
	for i := len(d.all) - 1; i >= 0; i-- {
		g := d.all[i]
		if g.id != s.part.id {
			continue
		}
		x, taken := g.parts[s.part.n]
		switch {
		case taken && x.sum == s.sum:
			d.last = g
			g.notes.note(finding.New("session.part_twice"), 0)
			return false
		case taken && g.id != (ID{}):
			g.notes.note(finding.New("session.part_number"), d.line+1)
			return false
		case g.id != (ID{}) || g.fits(s.part):
			d.cur = g
			return true
		}
	}
	if len(d.all) >= mostRecordings {
		d.notes.note(finding.New("session.many_recordings", finding.Count("most", mostRecordings)), d.line+1)
		return false
	}
	d.cur = newGather(d.name, s.part.id)
	d.all = append(d.all, d.cur)
	return true
}

// close ends the section at hand.
func (d *decoder) close() error {
	s := d.sect
	d.sect = section{}
	if !s.open || s.skipped {
		return nil
	}
	d.cur.accept(s.part, s.sum)
	d.last = d.cur
	if d.pieces++; d.pieces > d.mostParts {
		return errTooMuch
	}
	return nil
}

// refuse leaves out a recording of another format or a later version.
func (d *decoder) refuse(why *sensors.InputError) {
	if d.refused == nil {
		d.refused = why
	}
	if d.shunned == nil {
		d.shunned = map[ID]bool{}
	}
	d.shunned[d.sect.part.id] = true
	d.sect.skipped = true
	d.notes.note(finding.New("session.recording_left_out", finding.Of("why", why.What)), why.Line)
	d.all = slices.DeleteFunc(d.all, func(g *gather) bool { return g == d.cur && g.rec.Parts == 0 })
}
