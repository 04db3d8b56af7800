package plain

import (
	"bytes"
	"errors"
	"io"
	"slices"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/decimal"
	"stillair/sensors/internal/packed"
)

// row is one record of a table with its columns found.
type row struct {
	t     *table
	where []int
	y     *tally
}

// number returns the number in a column: NaN if it has none.
func (r row) number(c int) (float64, decimal.Cell) {
	b := r.raw(c)
	if b == nil {
		return nan, decimal.Empty
	}
	return decimal.Read(b)
}

// raw returns a column's cell, nil if the column or the cell is missing.
func (r row) raw(c int) []byte {
	if i := r.where[c]; i >= 0 && i < len(r.t.cells) {
		return r.t.cells[i]
	}
	return nil
}

// need is number for a required column; false means that the row was skipped.
func (r row) need(columns []column, c int) (float64, bool) {
	v, state := r.number(c)
	name := columns[c].name
	switch state {
	case decimal.Empty:
		r.y.skip(r.t.line, name+" empty", finding.New("plain.empty", finding.Text("column", name)))
	case decimal.Broken:
		r.y.skip(r.t.line, name+" broken", noNumber(name, r.raw(c)))
	}
	return v, state == decimal.Filled
}

// may is number for a column that may be empty; anything but a number is noted.
func (r row) may(columns []column, c int) float64 {
	v, state := r.number(c)
	if state == decimal.Broken {
		r.broken(columns[c].name, r.raw(c))
	}
	return v
}

func (r row) broken(name string, b []byte) {
	r.y.say(r.t.line, name+" broken", finding.New("plain.absent", finding.Of("why", noNumber(name, b))))
}

func noNumber(column string, b []byte) finding.Finding {
	return finding.New("plain.no_number", finding.Text("column", column), packed.Cut("value", b, 40))
}

// file is one file of a log, opened.
type file struct {
	name string
	size int64 // bytes once unpacked
	in   io.Reader
}

// rows is a file of samples being read. take makes a sample of a row, or skips
// it.
type rows[S any] struct {
	file    file
	columns []column
	most    int
	take    func(row) (S, bool)

	t       *table
	where   []int
	y       *tally
	samples []S
}

func newRows[S any](f file, columns []column, most int, take func(row) (S, bool)) *rows[S] {
	// One byte more than the size, to detect a wrong size in the archive.
	return &rows[S]{file: f, columns: columns, most: most, take: take, y: newTally(f.name),
		t: newTable(f.name, io.LimitReader(f.in, f.size+1))}
}

// readRows reads a file of samples row by row.
func readRows[S any](f file, columns []column, most int, take func(row) (S, bool)) ([]S, *tally, error) {
	r := newRows(f, columns, most, take)
	var err error
	if r.where, err = r.t.header(columns, r.y); err != nil {
		return nil, r.y, packed.AsInput(f.name, 0, err)
	}
	return r.read(func() (bool, error) { return false, nil })
}

// readPieces is readRows on all cores; take must not keep any state.
func readPieces[S any](f file, columns []column, most int, take func(row) (S, bool)) ([]S, *tally, error) {
	r := newRows(f, columns, most, take)
	var err error
	if r.where, err = r.t.header(columns, r.y); err != nil {
		return nil, r.y, packed.AsInput(f.name, 0, err)
	}
	q := split(r.t.in, r.parse)
	defer q.stop()
	r.t.in = q
	return r.read(func() (bool, error) {
		if !r.t.drained() {
			return false, nil
		}
		p := q.whole()
		if p == nil {
			return false, nil
		}
		defer q.done()
		r.y.rows += p.rows
		r.t.pass(p.lines, len(p.raw))
		return true, r.keep(p.samples...)
	})
}

// parse parses a piece, if it is regular.
func (r *rows[S]) parse(p *piece[S]) {
	p.samples, p.rows = p.samples[:0], 0
	if bytes.IndexByte(p.raw, '"') >= 0 {
		return // a record may continue in the next piece
	}
	y := newTally(r.file.name)
	row := row{t: tableOf(r.file.name, p.raw), where: r.where, y: y}
	for {
		before := row.t.read
		if err := row.t.next(); err != nil {
			p.lines = row.t.lines - 1
			p.plain = errors.Is(err, io.EOF)
			return
		}
		if row.t.read-before > longestLine/2 {
			return // may be too long for a table
		}
		p.rows++
		s, ok := r.take(row)
		if !ok || len(y.notes) > 0 {
			return
		}
		p.samples = append(p.samples, s)
	}
}

// read reads the rows. many takes several at once, if possible.
func (r *rows[S]) read(many func() (bool, error)) ([]S, *tally, error) {
	row := row{t: r.t, where: r.where, y: r.y}
	for {
		if did, err := many(); err != nil {
			return nil, r.y, err
		} else if did {
			continue
		}
		if err := r.t.next(); err != nil {
			if errors.Is(err, io.EOF) {
				return r.samples, r.y, nil
			}
			return r.samples, r.y, damaged(r.t, r.y, len(r.samples), err)
		}
		r.y.rows++
		s, ok := r.take(row)
		if !ok {
			if r.y.hopeless() {
				return nil, r.y, nil
			}
			continue
		}
		if err := r.keep(s); err != nil {
			return nil, r.y, err
		}
	}
}

// keep adds samples, allocating memory only a few times in total.
func (r *rows[S]) keep(more ...S) error {
	if len(r.samples)+len(more) > r.most {
		return tooMany(r.file.name, r.most)
	}
	if len(r.samples)+len(more) > cap(r.samples) {
		room := max(room(len(r.samples), r.y.rows, r.t.read, r.file.size), len(r.samples)+len(more))
		if room > 2*r.most {
			return tooMany(r.file.name, r.most)
		}
		r.samples = slices.Grow(r.samples, min(room, r.most)-len(r.samples))
	}
	r.samples = append(r.samples, more...)
	return nil
}

// room returns the number of samples to allocate memory for, from the size of
// the file and of the rows so far, so that memory is allocated twice: for the
// first few rows, and then for all of them.
func room(samples, rows int, read, size int64) int {
	const few = 4096
	if samples < few {
		return few
	}
	perRow := float64(read) / float64(rows)
	return samples + 64 + int(1.02*float64(size-read)/perRow)
}

func tooMany(name string, most int) error {
	return &sensors.InputError{File: name, What: finding.New("input.too_many", finding.Count("most", most)),
		Remedy: finding.New("input.shorter")}
}

// damaged keeps the part before the place where a file becomes unreadable,
// since a ride cannot be repeated.
func damaged(t *table, y *tally, samples int, err error) error {
	var input *sensors.InputError
	if errors.As(err, &input) || samples == 0 {
		return packed.AsInput(t.file, t.lines+1, err)
	}
	y.say(t.lines+1, "damaged", sensors.Damaged(err))
	return nil
}
