package sheets

import (
	"bytes"
	"strings"

	"stillair/sensors/internal/decimal"
)

// dialect is the format of a table.
type dialect struct {
	separator byte
	comma     bool     // is the decimal sign
	names     []string // of the columns; nil if the table has no header
	units     []string // from a second header row; may be nil
	first     int      // line of the first row, from 0
}

// fewestCells make a table: a time and one value.
const fewestCells = 2

// sniff detects the format of the table that begins with these lines; ok is
// false if it is not a table.
func sniff(head [][]byte) (d dialect, ok bool) {
	best := 0.0
	for _, separator := range []byte{',', ';', '\t', '|'} {
		if share, n := numeric(head, separator); n >= fewestCells && share > best {
			d.separator, best = separator, share
		}
	}
	if best == 0 {
		return d, false
	}
	var rows [][][]byte
	points, commas := 0, 0
	for _, line := range head {
		row := split(nil, bytes.Clone(line), d.separator)
		rows = append(rows, row)
		for _, c := range row {
			switch {
			case isNumber(c) && bytes.IndexByte(c, '.') >= 0:
				points++
			case isNumber(c) && bytes.IndexByte(c, ',') >= 0:
				commas++
			}
		}
	}
	d.comma = commas > points
	width := modal(rows)
	for d.first < len(rows) && !isRow(rows[d.first], width) {
		d.first++
	}
	if d.first == len(rows) {
		return d, false
	}
	d.header(rows, width)
	return d, true
}

// header takes the names, and the units if they are in a separate row, from
// above the first row.
func (d *dialect) header(rows [][][]byte, width int) {
	at := d.first - 1
	if at < 0 || !isHeader(rows[at], width) {
		return
	}
	if at > 0 && isHeader(rows[at-1], width) && allUnits(rows[at]) {
		d.units = texts(rows[at])
		at--
	}
	d.names = texts(rows[at])
	d.names[0] = strings.TrimSpace(strings.TrimLeft(d.names[0], "#%/ "))
}

// numeric returns the share of cells that are numbers or empty, among lines of
// the most common width, and that width.
func numeric(head [][]byte, separator byte) (share float64, width int) {
	var rows [][][]byte
	for _, line := range head {
		rows = append(rows, split(nil, bytes.Clone(line), separator))
	}
	width = modal(rows)
	good, all := 0, 0
	for _, r := range rows {
		for _, c := range r {
			all++
			if len(r) == width && (len(c) == 0 || isNumber(c)) {
				good++
			}
		}
	}
	return float64(good) / float64(max(all, 1)), width
}

// modal is the most common number of cells.
func modal(rows [][][]byte) (width int) {
	count := map[int]int{}
	for _, r := range rows {
		count[len(r)]++
		if n := len(r); count[n] > count[width] || count[n] == count[width] && n > width {
			width = n
		}
	}
	return width
}

// isRow reports whether cells are values: of the usual number, with a number
// among them, and not mostly words.
func isRow(cells [][]byte, width int) bool {
	numbers, words := 0, 0
	for _, c := range cells {
		switch {
		case isNumber(c):
			numbers++
		case len(c) > 0 && !isMoment(c):
			words++
		}
	}
	return len(cells) == width && numbers > 0 && words <= max(numbers, 1)
}

// isHeader reports whether cells are names, of the usual number except for one
// that a separator at the end of each row makes.
func isHeader(cells [][]byte, width int) bool {
	words := 0
	for _, c := range cells {
		if isNumber(c) {
			return false
		}
		if len(c) > 0 {
			words++
		}
	}
	return words >= fewestCells && len(cells) >= width-1 && len(cells) <= width+1
}

// allUnits reports whether a second row of names contains only units.
func allUnits(cells [][]byte) bool {
	known := 0
	for _, c := range cells {
		text := strings.Trim(string(c), "()[]")
		for q := ofTime; q <= ofPressure; q++ {
			if unitOf(q, text).known() {
				known++
				break
			}
		}
	}
	return known >= fewestCells
}

func texts(cells [][]byte) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = strings.ToValidUTF8(string(c), "�")
	}
	return out
}

// isNumber reports whether a cell is a number, with a point or a comma.
func isNumber(c []byte) bool {
	if i := bytes.IndexByte(c, ','); i >= 0 {
		c = bytes.Clone(c)
		c[i] = '.'
	}
	_, state := decimal.Read(c)
	return state == decimal.Filled
}

// number reads a cell.
func (d *dialect) number(c []byte) (float64, bool) {
	if d.comma {
		if i := bytes.IndexByte(c, ','); i >= 0 {
			c[i] = '.'
		}
	}
	v, state := decimal.Read(c)
	return v, state == decimal.Filled
}
