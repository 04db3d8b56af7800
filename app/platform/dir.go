package platform

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"syscall"
)

// Dir implements Files in a folder of the file system.
type Dir struct {
	path string
	mu   sync.Mutex
	held map[string]bool
}

// NewDir uses the folder at path and creates it if it is missing.
func NewDir(path string) (*Dir, error) {
	if err := os.MkdirAll(path, 0o700); err != nil {
		return nil, err
	}
	return &Dir{path: path, held: map[string]bool{}}, nil
}

// hidden is the prefix of Dir's own files: no name that CheckName accepts
// begins with it.
const hidden = "."

func (d *Dir) at(name string) (string, error) {
	if err := CheckName(name); err != nil {
		return "", &fs.PathError{Op: "open", Path: name, Err: err}
	}
	return filepath.Join(d.path, name), nil
}

// Create implements Files.
func (d *Dir) Create(name string) (File, error) {
	path, err := d.at(name)
	if err != nil {
		return nil, err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL|os.O_APPEND, 0o600)
	if err != nil {
		return nil, full(err)
	}
	// The directory entry must reach the disk too, or a power cut loses the
	// file with its name.
	if err := syncDir(d.path); err != nil {
		return nil, errors.Join(full(err), f.Close())
	}
	return dirFile{f}, nil
}

// Open implements Files.
func (d *Dir) Open(name string) (io.ReadCloser, error) {
	path, err := d.at(name)
	if err != nil {
		return nil, err
	}
	return os.Open(path)
}

// Replace implements Files.
func (d *Dir) Replace(name string, data []byte) error {
	path, err := d.at(name)
	if err != nil {
		return err
	}
	tmp, err := os.CreateTemp(d.path, hidden+"new-*")
	if err != nil {
		return full(err)
	}
	_, err = tmp.Write(data)
	err = errors.Join(err, tmp.Sync())
	err = errors.Join(err, tmp.Close())
	if err == nil {
		err = os.Rename(tmp.Name(), path)
	}
	if err != nil {
		return full(errors.Join(err, os.Remove(tmp.Name())))
	}
	return full(syncDir(d.path))
}

// Remove implements Files.
func (d *Dir) Remove(name string) error {
	path, err := d.at(name)
	if err != nil {
		return err
	}
	return os.Remove(path)
}

// List implements Files.
func (d *Dir) List() ([]Info, error) {
	entries, err := os.ReadDir(d.path)
	if err != nil {
		return nil, err
	}
	var infos []Info
	for _, e := range entries {
		if CheckName(e.Name()) != nil || !e.Type().IsRegular() {
			continue
		}
		st, err := e.Info()
		if errors.Is(err, fs.ErrNotExist) {
			continue // removed in the meantime
		}
		if err != nil {
			return nil, err
		}
		infos = append(infos, Info{Name: e.Name(), Size: st.Size(), Modified: st.ModTime()})
	}
	return infos, nil
}

// Free implements Files.
func (d *Dir) Free() (int64, error) { return freeBytes(d.path) }

// Lock implements Files.
func (d *Dir) Lock(name string) (func(), error) {
	if err := CheckName(name); err != nil {
		return nil, err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.held[name] {
		return nil, ErrBusy
	}
	f, err := lockFile(filepath.Join(d.path, hidden+"lock-"+name))
	if err != nil {
		return nil, err
	}
	d.held[name] = true
	return sync.OnceFunc(func() {
		d.mu.Lock()
		defer d.mu.Unlock()
		delete(d.held, name)
		f()
	}), nil
}

type dirFile struct{ f *os.File }

func (f dirFile) Write(p []byte) (int, error) {
	n, err := f.f.Write(p)
	return n, full(err)
}

func (f dirFile) Sync() error { return full(f.f.Sync()) }

func (f dirFile) Close() error { return errors.Join(f.Sync(), f.f.Close()) }

// full maps the system's several errors for a full disk to one.
func full(err error) error {
	if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
		return errors.Join(ErrFull, err)
	}
	return err
}
