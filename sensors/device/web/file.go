//go:build js

package web

import (
	"errors"
	"io/fs"
)

// File is a file being appended to. Data is kept in memory until Sync. If the
// site's data is cleared meanwhile, the file starts again with the next data.
type File struct {
	place  place
	name   string
	size   int // bytes on the disk
	held   []byte
	closed bool
}

// mostHeld is the size from which data is written without a Sync.
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

// Sync writes the data to the disk. After an error it may be tried again.
func (f *File) Sync() error {
	if f.closed {
		return fs.ErrClosed
	}
	if len(f.held) == 0 {
		return nil
	}
	_, err := f.place.do("append", f.name, f.size, toJS(f.held))
	if errors.Is(err, fs.ErrNotExist) {
		if _, err = f.place.do("create", f.name); err == nil || errors.Is(err, fs.ErrExist) {
			f.size = 0
			_, err = f.place.do("append", f.name, 0, toJS(f.held))
		}
	}
	if err != nil {
		return err
	}
	f.size += len(f.held)
	f.held = f.held[:0]
	return nil
}

// Close syncs and closes. The file is released even if the sync fails.
func (f *File) Close() error {
	if f.closed {
		return fs.ErrClosed
	}
	err := f.Sync()
	f.closed = true
	_, lets := f.place.do("close", f.name)
	return errors.Join(err, lets)
}
