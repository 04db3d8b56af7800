package sheets

import (
	"bufio"
	"bytes"
	"errors"
	"io"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// Limits of a table, far above any real recording.
const (
	longestLine = 64 << 10 // bytes
	mostColumns = 1000
	mostRows    = 3_000_000 // eight hours at 100 Hz
)

// lines reads the lines of a file in bounded memory.
type lines struct {
	file string
	in   *bufio.Reader
	n    int // lines read so far
}

// next returns the next line, valid until the one after; io.EOF at the end.
func (l *lines) next() ([]byte, error) {
	b, err := l.in.ReadSlice('\n')
	switch {
	case errors.Is(err, bufio.ErrBufferFull):
		return nil, &sensors.InputError{File: l.file, Line: l.n + 1, What: finding.New("input.long_line", finding.Size("most", longestLine)),
			Remedy: finding.New("plain.short_lines")}
	case err != nil && (len(b) == 0 || !errors.Is(err, io.EOF)):
		return nil, err
	}
	l.n++
	return bytes.TrimRight(bytes.TrimPrefix(b, []byte("\ufeff")), "\r\n"), nil
}

// split splits a line into cells, which may be in quotation marks; it works in
// place.
func split(into [][]byte, line []byte, separator byte) [][]byte {
	into = into[:0]
	for more := true; more && len(into) < mostColumns; {
		var c []byte
		c, line, more = cell(line, separator)
		into = append(into, bytes.TrimSpace(c))
	}
	return into
}

func cell(b []byte, separator byte) (c, rest []byte, more bool) {
	if i := bytes.IndexByte(b, separator); bytes.IndexByte(b, '"') < 0 {
		if i < 0 {
			return b, nil, false
		}
		return b[:i], b[i+1:], true
	}
	w, inside := 0, false
	for i := range b {
		switch {
		case b[i] == '"':
			inside = !inside
		case b[i] == separator && !inside:
			return b[:w], b[i+1:], true
		default:
			b[w] = b[i]
			w++
		}
	}
	return b[:w], nil, false
}
