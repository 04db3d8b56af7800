package platform

import (
	"errors"
	"io"
	"time"
)

// Files is the app's own storage: a flat set of named files that no other app
// sees. Names are made of ASCII letters, digits, dot, hyphen and underscore,
// do not begin with a dot and are at most 100 bytes long; anything else is
// refused with ErrName. A name that is not there gives an error that is
// fs.ErrNotExist.
type Files interface {
	// Create makes a new file for appending; it fails with fs.ErrExist if the
	// name is taken.
	Create(name string) (File, error)
	// Open reads a file, even one that is still being appended to: the end is
	// then where it was on opening, or later.
	Open(name string) (io.ReadCloser, error)
	// Replace writes a small file atomically; it is on the disk when Replace
	// returns. A crash leaves either the old content or the new, never a
	// mixture.
	Replace(name string, data []byte) error
	Remove(name string) error
	// List returns every file, ordered by name.
	List() ([]Info, error)
	// Free returns the free space in bytes, or ErrUnknown if the system does
	// not report it.
	Free() (int64, error)
	// Lock takes the lock of that name for this process, tab or app, until
	// unlock is called or the process ends in any way. It returns ErrBusy if
	// the lock is held already, even by the same process.
	Lock(name string) (unlock func(), err error)
}

// File is a file being appended to.
type File interface {
	io.Writer
	// Sync returns once everything written so far survives the end of the
	// process and, as far as the system can promise it, a power cut.
	Sync() error
	// Close syncs and closes.
	Close() error
}

// Info describes a file.
type Info struct {
	Name     string
	Size     int64 // bytes
	Modified time.Time
}

// Errors of a Files in addition to those of io/fs.
var (
	ErrName    = errors.New("not a name for a file of the app")
	ErrBusy    = errors.New("in use elsewhere")
	ErrFull    = errors.New("the storage is full")
	ErrUnknown = errors.New("the system does not say")
)

// CheckName returns ErrName unless name follows the rules of Files.
func CheckName(name string) error {
	if name == "" || len(name) > 100 || name[0] == '.' {
		return ErrName
	}
	for i := range len(name) {
		switch c := name[i]; {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '.', c == '-', c == '_':
		default:
			return ErrName
		}
	}
	return nil
}
