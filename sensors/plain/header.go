package plain

import (
	"bytes"
	"errors"
	"io"
	"strings"

	"stillair/sensors/finding"
	"stillair/sensors/internal/decimal"
	"stillair/sensors/internal/packed"
)

// column is a column that a file may have.
type column struct {
	name   string
	needed bool
	unit   string // its symbol, for the error about a missing column
}

// header reads the header row and returns the index of each column, −1 for an
// optional one that is missing.
func (t *table) header(columns []column, y *tally) ([]int, error) {
	if err := t.next(); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, t.fail(0, finding.New("plain.empty_file"), finding.New("plain.needs_header"))
		}
		return nil, err
	}
	if err := t.checkEncoding(); err != nil {
		return nil, err
	}
	names := make([]string, len(t.cells))
	for i, c := range t.cells {
		names[i] = strings.ToLower(strings.TrimSpace(strings.TrimPrefix(string(c), "\ufeff")))
	}
	if _, state := decimal.Read([]byte(names[0])); state == decimal.Filled {
		return nil, t.fail(t.line, finding.New("plain.no_header"), finding.New("plain.put_header", finding.Text("columns", wanted(columns))))
	}
	where := make([]int, len(columns))
	for i, c := range columns {
		where[i] = -1
		for j, n := range names {
			switch {
			case n == c.name && where[i] < 0:
				where[i] = j
			case n == c.name:
				y.say(t.line, c.name+" twice", finding.New("plain.column_twice", finding.Text("column", c.name)))
			}
		}
		if where[i] < 0 && c.needed {
			return nil, t.missing(c, names)
		}
	}
	return where, nil
}

// checkEncoding detects text files with an encoding that CSV cannot have.
func (t *table) checkEncoding() error {
	first := bytes.Join(t.cells, []byte{','})
	switch {
	case bytes.HasPrefix(first, []byte{0xff, 0xfe}), bytes.HasPrefix(first, []byte{0xfe, 0xff}), bytes.IndexByte(first, 0) >= 0:
		return t.fail(t.line, finding.New("plain.not_utf8"), finding.New("plain.save_utf8"))
	case len(t.cells) == 1 && bytes.ContainsAny(first, ";\t"):
		return t.fail(t.line, finding.New("plain.no_commas"), finding.New("plain.save_commas"))
	}
	return nil
}

// missing names a missing column, and the one that may be meant.
func (t *table) missing(c column, names []string) error {
	what := finding.New("plain.column_missing", finding.Text("column", c.name))
	stem, _, _ := strings.Cut(c.name, "_")
	for _, n := range names {
		if has, _, _ := strings.Cut(n, "_"); has == stem && n != "" {
			what = finding.New("plain.column_other", finding.Text("column", c.name), packed.Cut("has", n, 40))
			break
		}
	}
	return t.fail(t.line, what, finding.New("plain.name_column", finding.Text("column", c.name), finding.Text("unit", c.unit)))
}

func wanted(columns []column) string {
	var names []string
	for _, c := range columns {
		if c.needed {
			names = append(names, c.name)
		}
	}
	return strings.Join(names, ",")
}
