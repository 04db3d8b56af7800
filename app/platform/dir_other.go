//go:build !(linux || android || darwin || ios || freebsd)

package platform

import (
	"errors"
	"io/fs"
	"os"
)

// lockFile takes a lock by holding a file open. On Windows a file that a
// running process holds open cannot be removed, so one that can be removed was
// left by a process that died.
func lockFile(path string) (unlock func(), err error) {
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, ErrBusy
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return nil, ErrBusy
	}
	if err != nil {
		return nil, full(err)
	}
	return func() {
		f.Close()
		os.Remove(path)
	}, nil
}

func freeBytes(string) (int64, error) { return 0, ErrUnknown }

func syncDir(string) error { return nil }
