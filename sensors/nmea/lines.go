package nmea

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"math"
	"strconv"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// longestLine in bytes; the standard allows 82, stamps and tags need a few more.
const longestLine = 1024

// lineReader returns lines of bounded length; longer ones are skipped.
type lineReader struct {
	in      *bufio.Reader
	line    int // number of the line last returned
	tooLong int // number of lines skipped
}

func newLineReader(r io.Reader) *lineReader {
	return &lineReader{in: bufio.NewReaderSize(r, longestLine)}
}

// next returns the next line, valid until the one after; io.EOF after the last.
func (l *lineReader) next() ([]byte, error) {
	for {
		b, err := l.in.ReadSlice('\n')
		l.line++
		if errors.Is(err, bufio.ErrBufferFull) {
			l.tooLong++
			for errors.Is(err, bufio.ErrBufferFull) {
				_, err = l.in.ReadSlice('\n')
			}
			if err == nil {
				continue
			}
			return nil, err
		}
		if len(b) > 0 {
			return b, nil // an error is returned again by the next call
		}
		return nil, err
	}
}

// stamp reads the optional arrival time before the "$"; NaN if there is none.
func stamp(line []byte) float64 {
	before, _, _ := bytes.Cut(line, []byte{'$'})
	before = bytes.TrimRight(before, ", ;\t")
	v, err := strconv.ParseFloat(string(bytes.TrimSpace(before)), 64)
	if err != nil || math.IsInf(v, 0) {
		return math.NaN()
	}
	return v
}

// tally counts lines that are left out.
type tally struct {
	good, bad int
	first     sensors.Note
}

func (y *tally) leaveOut(file string, line int, err error) {
	if y.bad == 0 {
		y.first = sensors.Note{File: file, Line: line, What: finding.New("input.line_left_out", sensors.Cause(err))}
	}
	y.bad++
}

func (y *tally) notes(file string, l *lineReader, j *Joiner) (notes []sensors.Note) {
	if y.bad > 0 {
		y.first.Count = y.bad
		notes = append(notes, y.first)
	}
	count := func(n int, what finding.Code, args ...finding.Arg) {
		if n > 0 {
			notes = append(notes, sensors.Note{File: file, Count: n, What: finding.New(what, args...)})
		}
	}
	count(l.tooLong, "nmea.long_line", finding.Size("most", longestLine))
	count(j.Void, "nmea.void")
	count(j.Mute, "nmea.no_speed")
	return notes
}
