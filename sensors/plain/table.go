package plain

import (
	"bytes"
	"errors"
	"io"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits of a table, far above any real log.
const (
	longestLine = 64 << 10 // bytes, also for a record with line breaks in quoted cells
	mostColumns = 1000
)

// table reads the records of a CSV file one after the other in bounded memory.
type table struct {
	file  string
	in    io.Reader
	buf   []byte
	from  int // buf[from:to] is not yet read
	to    int
	ended error // last error of in: io.EOF or a failure
	read  int64 // bytes returned so far

	line  int      // of the record last returned: where it begins
	lines int      // lines returned
	cut   bool     // the line last returned had no line break
	cells [][]byte // valid until the next record
	long  []byte   // a record that spans several lines
}

func newTable(file string, in io.Reader) *table {
	return &table{file: file, in: in, buf: make([]byte, longestLine)}
}

// tableOf is a table of whole lines from the middle of a file.
func tableOf(file string, text []byte) *table {
	return &table{file: file, buf: text, to: len(text), ended: io.EOF, lines: 1}
}

// drained reports whether everything read so far has been returned.
func (t *table) drained() bool { return t.from == t.to && t.ended == nil }

// pass counts lines that were parsed elsewhere.
func (t *table) pass(lines, bytes int) {
	t.lines += lines
	t.read += int64(bytes)
}

func (t *table) fail(line int, what, remedy finding.Finding) error {
	return &sensors.InputError{File: t.file, Line: line, What: what, Remedy: remedy}
}

// nextLine returns the next line without its break; io.EOF after the last.
func (t *table) nextLine() ([]byte, error) {
	seen := 0
	for {
		if i := bytes.IndexByte(t.buf[t.from+seen:t.to], '\n'); i >= 0 {
			line := t.buf[t.from : t.from+seen+i]
			t.from += seen + i + 1
			t.read += int64(len(line) + 1)
			t.lines++
			return bytes.TrimSuffix(line, []byte{'\r'}), nil
		}
		seen = t.to - t.from
		if t.ended != nil {
			return t.lastLine()
		}
		if t.from > 0 {
			copy(t.buf, t.buf[t.from:t.to])
			t.from, t.to = 0, seen
		}
		if t.to == len(t.buf) {
			if err := t.checkLineEnds(t.buf); err != nil {
				return nil, err
			}
			return nil, t.fail(t.lines+1, finding.New("input.long_line", finding.Size("most", longestLine)),
				finding.New("plain.short_lines"))
		}
		n, err := t.in.Read(t.buf[t.to:])
		t.to += n
		t.ended = err
	}
}

func (t *table) lastLine() ([]byte, error) {
	if t.from == t.to || !errors.Is(t.ended, io.EOF) {
		return nil, t.ended
	}
	line := t.buf[t.from:t.to]
	t.read += int64(len(line))
	t.from = t.to
	t.lines++
	t.cut = true
	return bytes.TrimSuffix(line, []byte{'\r'}), nil
}

// next reads a record into t.cells and skips blank lines.
func (t *table) next() error {
	for {
		line, err := t.nextLine()
		if err != nil {
			return err
		}
		t.line = t.lines
		if err := t.checkLineEnds(line); err != nil {
			return err
		}
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		if bytes.IndexByte(line, '"') < 0 {
			return t.split(line)
		}
		return t.splitQuoted(line)
	}
}

// checkLineEnds detects a file without line feeds: its first line is the whole
// file.
func (t *table) checkLineEnds(line []byte) error {
	if t.lines <= 1 && bytes.IndexByte(line, '\r') >= 0 {
		return t.fail(1, finding.New("plain.carriage_returns"), finding.New("plain.line_feeds"))
	}
	return nil
}

func (t *table) addCell(c []byte) error {
	if len(t.cells) == mostColumns {
		return t.fail(t.line, finding.New("plain.many_columns", finding.Count("most", mostColumns)), finding.New("plain.few_columns"))
	}
	t.cells = append(t.cells, c)
	return nil
}

func (t *table) split(line []byte) error {
	t.cells = t.cells[:0]
	for {
		i := bytes.IndexByte(line, ',')
		if i < 0 {
			return t.addCell(line)
		}
		if err := t.addCell(line[:i]); err != nil {
			return err
		}
		line = line[i+1:]
	}
}

// splitQuoted splits a record with cells in quotation marks, which may contain
// commas, doubled quotation marks and line breaks.
func (t *table) splitQuoted(line []byte) error {
	t.long = append(t.long[:0], line...)
	for bytes.Count(t.long, []byte{'"'})%2 != 0 { // a complete record has an even number of marks
		more, err := t.nextLine()
		if errors.Is(err, io.EOF) || len(t.long)+len(more) > longestLine {
			return t.fail(t.line, finding.New("plain.open_quote"), finding.New("plain.close_quote"))
		}
		if err != nil {
			return err
		}
		t.long = append(append(t.long, '\n'), more...)
	}
	t.cells = t.cells[:0]
	for rest, more := t.long, true; more; {
		var c []byte
		c, rest, more = quotedCell(rest)
		if err := t.addCell(c); err != nil {
			return err
		}
	}
	return nil
}

// quotedCell removes the first cell from a record; it works in place.
func quotedCell(b []byte) (c, rest []byte, more bool) {
	w, inside := 0, false
	for i := 0; i < len(b); i++ {
		switch {
		case b[i] == '"' && inside && i+1 < len(b) && b[i+1] == '"':
			b[w] = '"'
			w++
			i++
		case b[i] == '"':
			inside = !inside
		case b[i] == ',' && !inside:
			return b[:w], b[i+1:], true
		default:
			b[w] = b[i]
			w++
		}
	}
	return b[:w], nil, false
}
