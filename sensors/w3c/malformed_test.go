package w3c

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"stillair/sensors"
)

// endless generates lines up to a gigabyte.
type endless struct {
	line func(n int) string
	n    int
	done int
	buf  bytes.Buffer
}

func (e *endless) Read(p []byte) (int, error) {
	const gigabyte = 1 << 30
	if e.done > gigabyte {
		return 0, io.EOF
	}
	for e.buf.Len() < len(p) {
		e.buf.WriteString(e.line(e.n))
		e.n++
	}
	n, err := e.buf.Read(p)
	e.done += n
	return n, err
}

func TestMalformed(t *testing.T) {
	if testing.Short() {
		t.Skip("reads a gigabyte")
	}
	for _, c := range []struct {
		name string
		line func(n int) string
		want string
	}{
		{"motion without end", func(n int) string {
			return fmt.Sprintf(`{"accelerationIncludingGravity":{"x":0,"y":0,"z":9.8},"timeStamp":%d}`+"\n", n)
		}, "input.too_many"},
		{"positions without end", func(n int) string {
			return fmt.Sprintf(`{"coords":{"speed":1},"timeStamp":%d}`+"\n", n)
		}, "input.too_many"},
		{"one line without end", func(int) string { return `{"a":1,` }, "input.long_line most=65536"},
		{"one string without end", func(int) string { return `"aaaaaaaaa` }, "input.long_line most=65536"},
		{"brackets without end", func(int) string { return strings.Repeat("[", 60_000) + "\n" }, "w3c.hardly_any_line"},
		{"rubbish without end", func(int) string { return "{]\n" }, "w3c.hardly_any_line"},
	} {
		_, err := Read(&endless{line: c.line}, "page.jsonl")
		var input *sensors.InputError
		if !errors.As(err, &input) || input.Remedy.IsZero() || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want an InputError with %q", c.name, err, c.want)
		}
	}
}
