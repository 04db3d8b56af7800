//go:build js

package web

import (
	"errors"
	"io/fs"
)

// File is a file being appended to. What is written is kept in memory until
// Sync. Where somebody clears the site's data meanwhile, the file starts again with
// what comes next.
type File struct {
	place  place
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

// Close syncs and closes. The place lets go of the file also where the sync fails.
func (f *File) Close() error {
	if f.closed {
		return fs.ErrClosed
	}
	err := f.Sync()
	f.closed = true
	_, lets := f.place.do("close", f.name)
	return errors.Join(err, lets)
}
