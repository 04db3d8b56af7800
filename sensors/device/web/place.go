//go:build js

package web

import (
	"errors"
	"io"
	"io/fs"
	"syscall/js"

	"stillair/sensors/finding"
)

// place is one of the two stores of files: keeping.js (IndexedDB) or
// keeping-disk.js (the private folder), whose functions have the same names.
type place struct{ script, storage js.Value }

// openPlace opens a storage of a script, and creates it if it is missing.
func openPlace(script, name string) (place, error) {
	p := place{script: js.Global().Get(script)}
	if p.script.IsUndefined() {
		return p, finding.Fail("browser.script_missing", finding.Text("script", script))
	}
	storage, err := await(p.script.Call("open", name))
	p.storage = storage
	return p, err
}

// do calls a function of the script and waits for it.
func (p place) do(op, name string, args ...any) (js.Value, error) {
	v, err := await(p.script.Call(op, append([]any{p.storage, name}, args...)...))
	if err != nil {
		return v, &fs.PathError{Op: op, Path: name, Err: meaning(err)}
	}
	return v, nil
}

// meaning converts the errors of a storage to Go's.
func meaning(err error) error {
	e, ok := err.(*Error)
	if !ok {
		return err
	}
	switch e.Name {
	case "ConstraintError":
		return fs.ErrExist
	case "NotFoundError":
		return fs.ErrNotExist
	case "QuotaExceededError":
		return errors.Join(ErrFull, err)
	}
	return err
}

// parts reads a file.
type parts struct {
	place    place
	name     string
	at, size int
	held     []byte
}

var errHole = finding.Fail("browser.part_missing")

// Read implements io.Reader.
func (p *parts) Read(to []byte) (int, error) {
	if len(p.held) == 0 {
		if p.at >= p.size {
			return 0, io.EOF
		}
		if err := p.fetch(); err != nil {
			return 0, err
		}
	}
	n := copy(to, p.held)
	p.held = p.held[n:]
	return n, nil
}

// Close implements io.Closer.
func (p *parts) Close() error {
	p.held, p.at = nil, p.size
	return nil
}

// fetch takes the next parts.
func (p *parts) fetch() error {
	list, err := p.place.do("read", p.name, p.at, p.size)
	if err != nil {
		return err
	}
	if list.Length() == 0 {
		return &fs.PathError{Op: "read", Path: p.name, Err: errHole}
	}
	p.held = p.held[:0]
	for i := range list.Length() {
		p.held = append(p.held, bytesOf(js.Value(list.Index(i)))...)
	}
	p.at += len(p.held)
	return nil
}
