package plain

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
)

// column is one that a file may have.
type column struct {
	name   string
	needed bool
	unit   string // in words, for the error that says that it is missing
}

// header reads the header row and returns where each column stands, −1 for one
// that is missing and may be.
func (t *table) header(columns []column, y *tally) ([]int, error) {
	if err := t.next(); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, t.fail(0, "the file is empty", "it needs a header row that names the columns, and a row for each sample")
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
	if _, state := number([]byte(names[0])); state == filled {
		return nil, t.fail(t.line, "the first row holds numbers, not the names of columns", "put "+wanted(columns)+" above it")
	}
	where := make([]int, len(columns))
	for i, c := range columns {
		where[i] = -1
		for j, n := range names {
			switch {
			case n == c.name && where[i] < 0:
				where[i] = j
			case n == c.name:
				y.say(t.line, c.name+" twice", fmt.Sprintf("column %s is there twice; the first is read", c.name))
			}
		}
		if where[i] < 0 && c.needed {
			return nil, t.missing(c, names)
		}
	}
	return where, nil
}

// checkEncoding finds files that are text, but not text of the kind that CSV is.
func (t *table) checkEncoding() error {
	first := bytes.Join(t.cells, []byte{','})
	switch {
	case bytes.HasPrefix(first, []byte{0xff, 0xfe}), bytes.HasPrefix(first, []byte{0xfe, 0xff}), bytes.IndexByte(first, 0) >= 0:
		return t.fail(t.line, "the file is not UTF-8 text", "save it as CSV in UTF-8")
	case len(t.cells) == 1 && bytes.ContainsAny(first, ";\t"):
		return t.fail(t.line, "the columns are not separated by commas", "save it with commas between columns and points in decimals")
	}
	return nil
}

// missing names a column that is not there, and the one that may be meant.
func (t *table) missing(c column, names []string) error {
	what := fmt.Sprintf("column %s is missing", c.name)
	stem, _, _ := strings.Cut(c.name, "_")
	for _, n := range names {
		if has, _, _ := strings.Cut(n, "_"); has == stem && n != "" {
			what += fmt.Sprintf("; there is %.40q", n)
			break
		}
	}
	return t.fail(t.line, what, fmt.Sprintf("name it %s and give it in %s", c.name, c.unit))
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
