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
	// Create makes a new file for appending and refuses with fs.ErrExist where
	// the name is taken.
	Create(name string) (File, error)
	// Open reads a file, also one that is still being appended to: it then ends
	// where the file ended when it was opened, or later.
	Open(name string) (io.ReadCloser, error)
	// Replace writes a small file whole, on the disk when it returns. A crash
	// leaves either the old content or the new, never a mixture.
	Replace(name string, data []byte) error
	Remove(name string) error
	// List gives every file, in order of name.
	List() ([]Info, error)
	// Free tells how many more bytes the storage takes; ErrUnknown where the
	// system does not say.
	Free() (int64, error)
	// Lock takes the one lock of that name for this process, tab or app, until
	// unlock is called or the process ends in whatever way. ErrBusy where
	// somebody holds it already, be it in the same process.
	Lock(name string) (unlock func(), err error)
}

// File is a file being appended to.
type File interface {
	io.Writer
	// Sync returns once everything written so far survives the end of the
	// process and, as far as the system can promise it, of the power.
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

// What a Files can answer besides the errors of io/fs.
var (
	ErrName    = errors.New("not a name for a file of the app")
	ErrBusy    = errors.New("in use elsewhere")
	ErrFull    = errors.New("the storage is full")
	ErrUnknown = errors.New("the system does not say")
)

// CheckName returns ErrName unless name follows the rule of Files.
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
