//go:build js

package web

import (
	"errors"
	"io"
	"io/fs"
	"sync"
	"syscall/js"
	"time"

	"stillair/sensors/finding"
)

// What a storage answers besides the errors of io/fs.
var (
	ErrFull = finding.Fail("browser.storage_full")
	ErrBusy = finding.Fail("browser.storage_busy")
)

// Files holds named files in IndexedDB. Names are any text. A connection that the
// browser closes, or that does not answer, is opened anew with the next
// operation; an append that was done and never answered is not done twice.
type Files struct {
	keeping, storage js.Value
	name             string
}

// OpenFiles opens the storage called name, and makes it where it is missing.
// It asks the browser not to clear it when the phone runs full.
func OpenFiles(name string) (*Files, error) {
	f := &Files{keeping: js.Global().Get("stillairKeeping"), name: name}
	if f.keeping.IsUndefined() {
		return nil, finding.Fail("browser.script_missing", finding.Text("script", "keeping.js"))
	}
	storage, err := await(f.keeping.Call("open", name))
	if err != nil {
		return nil, err
	}
	f.storage = storage
	f.keeping.Call("persist")
	return f, nil
}

// Info describes a file.
type Info struct {
	Name     string
	Size     int64
	Modified time.Time
}

// do calls a function of keeping.js on the storage and waits for it.
func (f *Files) do(op, name string, args ...any) (js.Value, error) {
	v, err := await(f.keeping.Call(op, append([]any{f.storage, name}, args...)...))
	if err != nil {
		return v, &fs.PathError{Op: op, Path: name, Err: meaning(err)}
	}
	return v, nil
}

// meaning gives the errors of IndexedDB the names that Go knows.
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

// Create makes an empty file; fs.ErrExist where the name is taken.
func (f *Files) Create(name string) (*File, error) {
	if _, err := f.do("create", name); err != nil {
		return nil, err
	}
	return &File{files: f, name: name}, nil
}

// Open reads a file as long as it is now.
func (f *Files) Open(name string) (io.ReadCloser, error) {
	size, err := f.do("size", name)
	if err != nil {
		return nil, err
	}
	return &parts{files: f, name: name, size: size.Int()}, nil
}

// Replace writes a file whole, on the disk when it returns.
func (f *Files) Replace(name string, data []byte) error {
	_, err := f.do("replace", name, toJS(data))
	return err
}

// Remove deletes a file.
func (f *Files) Remove(name string) error {
	_, err := f.do("remove", name)
	return err
}

// List gives every file in order of name.
func (f *Files) List() ([]Info, error) {
	list, err := f.do("list", "")
	if err != nil {
		return nil, err
	}
	infos := make([]Info, list.Length())
	for i := range infos {
		e := list.Index(i)
		infos[i] = Info{e.Get("name").String(), int64(e.Get("size").Float()),
			time.UnixMilli(int64(e.Get("modified").Float()))}
	}
	return infos, nil
}

// Free tells how many more bytes the browser grants.
func (f *Files) Free() (int64, error) {
	v, err := await(f.keeping.Call("free"))
	if err != nil {
		return 0, err
	}
	return int64(v.Float()), nil
}

// Persisted reports whether the browser said that it will not clear the storage
// on its own when the phone runs full.
func (f *Files) Persisted() bool {
	v, err := await(f.keeping.Call("persisted"))
	return err == nil && v.Truthy()
}

// Lock takes the lock called name among all pages of this place until unlock
// is called or the page ends. ErrBusy where it is held.
func (f *Files) Lock(name string) (unlock func(), err error) {
	v, err := await(f.keeping.Call("lock", f.name+"/"+name))
	if err != nil {
		return nil, err
	}
	if v.IsNull() {
		return nil, ErrBusy
	}
	return sync.OnceFunc(func() { await(v.Invoke()) }), nil
}
