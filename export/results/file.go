package results

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"

	"stillair/sensors"
	"stillair/sensors/finding"
)

// maxFile is the most that Read takes: hundreds of times what a day gives.
const maxFile = 256 << 20

// Write writes the document, indented so that a person can read it too.
func Write(w io.Writer, d *Document) error { return encode(w, d) }

func encode(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(v)
}

// Read reads a document. The name is for messages.
func Read(r io.Reader, name string) (*Document, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, sensors.Unreadable(name, 0, err)
	}
	if len(data) > maxFile {
		return nil, &sensors.InputError{File: name, What: finding.New("input.large_file", finding.Size("most", maxFile)), Remedy: finding.New("input.check_file")}
	}
	var d Document
	if err := json.Unmarshal(data, &d); err != nil {
		return nil, &sensors.InputError{File: name, Line: lineOf(data, err), What: finding.New("results.no_document", sensors.Cause(err)),
			Remedy: finding.New("results.make_again"), Err: err}
	}
	if d.Version < 1 || d.Version > Version {
		return nil, &sensors.InputError{File: name, What: finding.New("results.other_version", finding.Num("version", float64(d.Version)), finding.Count("most", Version)),
			Remedy: finding.New("results.newer_program")}
	}
	return &d, nil
}

// lineOf returns the line of a JSON error, 0 if it is not given.
func lineOf(data []byte, err error) int {
	at := int64(-1)
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		at = syntax.Offset
	case errors.As(err, &kind):
		at = kind.Offset
	}
	if at < 0 || at > int64(len(data)) {
		return 0
	}
	return 1 + bytes.Count(data[:at], []byte("\n"))
}
