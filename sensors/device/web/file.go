//go:build js

package web

import (
	"errors"
	"io"
	"io/fs"
	"syscall/js"

	"stillair/sensors/finding"
)

// File is a file being appended to. What is written is kept in memory until
// Sync. Where somebody clears the site's data meanwhile, the file begins anew with
// what comes next.
type File struct {
	files  *Files
	name   string
	size   int // bytes on the disk
	held   []byte
	closed bool
}

// mostHeld is how much is kept before it is written without a Sync.
const mostHeld = 1 << 18

// Write implements io.Writer.
func (f *File) Write(p []byte) (int, error) {
	if f.closed {
		return 0, fs.ErrClosed
	}
	if len(f.held)+len(p) > mostHeld {
		if err := f.Sync(); err != nil {
			return 0, err
		}
	}
	f.held = append(f.held, p...)
	return len(p), nil
}

// Sync puts what was written on the disk. After an error it may be tried again.
func (f *File) Sync() error {
	if f.closed {
		return fs.ErrClosed
	}
	if len(f.held) == 0 {
		return nil
	}
	_, err := f.files.do("append", f.name, f.size, toJS(f.held))
	if errors.Is(err, fs.ErrNotExist) {
		if _, err = f.files.do("create", f.name); err == nil || errors.Is(err, fs.ErrExist) {
			f.size = 0
			_, err = f.files.do("append", f.name, 0, toJS(f.held))
		}
	}
	if err != nil {
		return err
	}
	f.size += len(f.held)
	f.held = f.held[:0]
	return nil
}

// Close syncs and closes.
func (f *File) Close() error {
	err := f.Sync()
	f.closed = true
	return err
}

// parts reads a file.
type parts struct {
	files    *Files
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
	list, err := p.files.do("read", p.name, p.at, p.size)
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
