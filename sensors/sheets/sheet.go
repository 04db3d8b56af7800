package sheets

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"math"
	"path"
	"strings"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/internal/packed"
)

// column is a used column of a sheet.
type column struct {
	name   string
	role   role
	rank   int
	unit   unit
	asked  bool // requested by the user
	at     int  // index in the row
	v      []float64
	words  bool // moments in words
	zoned  bool
	layout int
}

// sheet is the readings of one file, or of one kind of row of it.
type sheet struct {
	file    string
	columns []*column
	rows    int
}

// readSheets reads a file: a sheet for each kind of row.
func readSheets(e packed.Entry, asked []Ask) ([]*sheet, []sensors.Note, error) {
	in, err := e.Open()
	if err != nil {
		return nil, nil, packed.AsInput(e.Name, 0, err)
	}
	defer in.Close() // it was only read
	l := &lines{file: e.Name, in: bufio.NewReaderSize(io.LimitReader(in, e.Size+1), longestLine)}
	var head [][]byte
	const enough = 60
	for len(head) < enough {
		b, err := l.next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, nil, packed.AsInput(e.Name, l.n+1, err)
		}
		if len(bytes.TrimSpace(b)) > 0 {
			head = append(head, bytes.Clone(b))
		}
	}
	d, ok := sniff(head)
	if !ok {
		return nil, nil, nil
	}
	r := newReader(e, d, asked)
	for _, b := range head[d.first:] {
		r.row(b)
	}
	for {
		b, err := l.next()
		if errors.Is(err, io.EOF) {
			return r.done(), r.notes, nil
		}
		if err != nil {
			if r.rows == 0 {
				return nil, nil, packed.AsInput(e.Name, l.n+1, err)
			}
			r.notes = append(r.notes, sensors.Note{File: e.Name, Line: l.n + 1, Count: 1, What: sensors.Damaged(err)})
			return r.done(), r.notes, nil
		}
		if r.row(b); r.rows > mostRows {
			return nil, nil, &sensors.InputError{File: e.Name, What: finding.New("input.too_many", finding.Count("most", mostRows)), Remedy: finding.New("input.shorter")}
		}
	}
}

// reader reads the rows of a file.
type reader struct {
	file  string
	d     dialect
	asked []Ask
	cells [][]byte
	kind  int // column that names the sensor; −1 for none
	kinds map[string]*sheet
	order []*sheet
	rows  int
	odd   int // invalid rows
	notes []sensors.Note
}

func newReader(e packed.Entry, d dialect, asked []Ask) *reader {
	r := &reader{file: e.Name, d: d, asked: asked, kind: -1, kinds: map[string]*sheet{}}
	for i, name := range d.names {
		if got, _ := roleOf(name, nil); got == kind && r.kind < 0 {
			r.kind = i
		}
	}
	return r
}

// mostKinds is the maximum number of kinds of rows in one file.
const mostKinds = 64

// of finds the sheet for rows of a kind.
func (r *reader) of(kind string) *sheet {
	s, ok := r.kinds[kind]
	if !ok && len(r.kinds) < mostKinds {
		s = &sheet{file: r.file, columns: columnsOf(r.d, r.file, kind, r.asked)}
		r.kinds[kind] = s
		r.order = append(r.order, s)
	}
	return s
}

// row takes one line in.
func (r *reader) row(line []byte) {
	if len(line) == 0 || line[0] == '#' {
		return
	}
	r.cells = split(r.cells, line, r.d.separator)
	named := ""
	if r.kind >= 0 && r.kind < len(r.cells) {
		named = string(r.cells[r.kind])
	}
	r.rows++
	s := r.of(named)
	if s == nil || !s.add(r.cells, &r.d) {
		r.odd++
	}
}

func (r *reader) done() []*sheet {
	if r.odd > 0 {
		r.notes = append(r.notes, sensors.Note{File: r.file, Count: r.odd, What: finding.New("sheets.odd_rows")})
	}
	return r.order
}

// add adds a row; false if nothing of it could be read.
func (s *sheet) add(cells [][]byte, d *dialect) bool {
	some := false
	for _, c := range s.columns {
		v := math.NaN()
		if c.at < len(cells) {
			x, ok := d.number(cells[c.at])
			if !ok && c.role.quantity() == ofTime {
				var zoned bool
				if x, zoned, ok = moment(cells[c.at], &c.layout); ok {
					c.words, c.zoned = true, zoned
				}
			}
			if ok {
				v, some = x, true
			}
		}
		c.v = append(c.v, v)
	}
	if some || len(s.columns) == 0 {
		s.rows++
		return true
	}
	for _, c := range s.columns {
		c.v = c.v[:len(c.v)-1]
	}
	return false
}

// columnsOf finds the roles of the columns of a file.
func columnsOf(d dialect, file, sensor string, asked []Ask) []*column {
	base := path.Base(file)
	base = strings.TrimSuffix(base, path.Ext(base))
	around := wordsOf(base + " " + sensor)
	if d.names == nil {
		return unnamed(around)
	}
	var all []*column
	for i, name := range d.names {
		c := &column{name: name, at: i}
		c.role, c.rank = roleOf(name, around)
		c.apply(asked, file)
		if c.role == none || c.role == kind {
			continue
		}
		if !c.unit.known() {
			c.unit = unitInName(c.role.quantity(), name)
		}
		if !c.unit.known() && i < len(d.units) {
			c.unit = unitOf(c.role.quantity(), strings.Trim(d.units[i], "()[]"))
		}
		all = append(all, c)
	}
	return all
}

// unnamed are the columns of a table without a header, whose sensor is known
// from the file's name: a time and three axes.
func unnamed(around []string) []*column {
	first := map[sense]role{senseForce: force, senseLinear: linear, senseGravity: gravity, senseTurn: turn}[senseOf(around)]
	if first == none {
		return nil
	}
	all := []*column{{name: "1", role: clock, at: 0}}
	for i := range 3 {
		all = append(all, &column{name: string(rune('2' + i)), role: first + role(i), at: 1 + i})
	}
	return all
}

// find is the sheet's best column for a role, nil if none.
func (s *sheet) find(r role) *column {
	var best *column
	for _, c := range s.columns {
		if c.role == r && (best == nil || c.asked && !best.asked || c.asked == best.asked && c.rank < best.rank) {
			best = c
		}
	}
	return best
}
