package plain

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"stillair/sensors"
)

// row is one record of a table with its columns found.
type row struct {
	t     *table
	where []int
	y     *tally
}

// number returns the number in a column: NaN where it has none.
func (r row) number(c int) (float64, cell) {
	b := r.raw(c)
	if b == nil {
		return nan, empty
	}
	return number(b)
}

// raw returns a column's cell, nil where the column or the cell is missing.
func (r row) raw(c int) []byte {
	if i := r.where[c]; i >= 0 && i < len(r.t.cells) {
		return r.t.cells[i]
	}
	return nil
}

// need is number for a column without which the row is of no use; false means
// that the row was skipped.
func (r row) need(columns []column, c int) (float64, bool) {
	v, state := r.number(c)
	name := columns[c].name
	switch state {
	case empty:
		r.y.skip(r.t.line, name+" empty", name+" is empty")
	case broken:
		r.y.skip(r.t.line, name+" broken", fmt.Sprintf("%s is %.40q, which is no number", name, r.raw(c)))
	}
	return v, state == filled
}

// may is number for a column that may be empty; what is no number is noted.
func (r row) may(columns []column, c int) float64 {
	v, state := r.number(c)
	if state == broken {
		r.broken(columns[c].name, r.raw(c))
	}
	return v
}

func (r row) broken(name string, b []byte) {
	r.y.say(r.t.line, name+" broken", fmt.Sprintf("%s is %.40q, which is no number; it is taken as absent", name, b))
}

// file is one file of a log, opened.
type file struct {
	name string
	size int64 // bytes once unpacked
	in   io.Reader
}

// readRows reads a file of samples. take makes a sample of a row, or skips it.
func readRows[S any](f file, columns []column, most int, take func(row) (S, bool)) ([]S, *tally, error) {
	y := newTally(f.name)
	// One byte more than the size, so that an unpacker notices if that is a lie.
	t := newTable(f.name, io.LimitReader(f.in, f.size+1))
	where, err := t.header(columns, y)
	if err != nil {
		return nil, y, asInput(f.name, 0, err)
	}
	r := row{t: t, where: where, y: y}
	var samples []S
	for {
		if err := t.next(); err != nil {
			if errors.Is(err, io.EOF) {
				return samples, y, nil
			}
			return samples, y, damaged(t, y, len(samples), err)
		}
		y.rows++
		s, ok := take(r)
		if !ok {
			if y.hopeless() {
				return nil, y, nil
			}
			continue
		}
		if len(samples) == cap(samples) {
			room := room(len(samples), y.rows, t.read, f.size)
			if len(samples) == most || room > 2*most {
				return nil, y, tooMany(f.name, most)
			}
			samples = slices.Grow(samples, min(room, most)-len(samples))
		}
		samples = append(samples, s)
	}
}

// room returns for how many samples to take memory, by the size of the file
// and of the rows so far, so that it is taken twice in all: for the first few
// rows, and then for all of them.
func room(samples, rows int, read, size int64) int {
	const few = 4096
	if samples < few {
		return few
	}
	perRow := float64(read) / float64(rows)
	return samples + 64 + int(1.02*float64(size-read)/perRow)
}

func tooMany(name string, most int) error {
	return &sensors.InputError{File: name, What: fmt.Sprintf("there are more than %d samples", most),
		Mend: "cut the ride into shorter logs"}
}

// damaged keeps what came before the place where a file stops being readable:
// a ride cannot be repeated.
func damaged(t *table, y *tally, samples int, err error) error {
	var input *sensors.InputError
	if errors.As(err, &input) || samples == 0 {
		return asInput(t.file, t.lines+1, err)
	}
	y.say(t.lines+1, "damaged", "the file is damaged from here on ("+err.Error()+"); what came before is kept")
	return nil
}

// asInput makes an error of reading one that says where.
func asInput(name string, line int, err error) error {
	var input *sensors.InputError
	if errors.As(err, &input) {
		return err
	}
	return &sensors.InputError{File: name, Line: line, What: "the file cannot be read: " + err.Error(),
		Mend: "copy it again from where it came from", Err: err}
}
