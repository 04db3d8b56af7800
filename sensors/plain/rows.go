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
	t := newTable(f.name, f.in)
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
		if s, ok := take(r); ok {
			samples = append(samples, s)
		} else if y.hopeless() {
			return nil, y, nil
		}
		if len(samples) == 4096 {
			// From here on the size of the file says how many there will be, so
			// that memory is taken once.
			guess := int64(float64(y.rows) * 1.02 * float64(f.size) / float64(t.read))
			if guess > 2*int64(most) {
				return nil, y, tooMany(f.name, most)
			}
			samples = slices.Grow(samples, int(max(0, min(guess, int64(most)+1)-4096)))
		}
		if len(samples) > most {
			return nil, y, tooMany(f.name, most)
		}
	}
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
