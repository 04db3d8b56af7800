//go:build js

package web

import (
	"errors"
	"io"
	"io/fs"
	"slices"
	"strings"
	"sync"
	"syscall/js"
	"time"

	"stillair/sensors/finding"
)

// Errors of a storage in addition to those of io/fs.
var (
	ErrFull = finding.Fail("browser.storage_full")
	ErrBusy = finding.Fail("browser.storage_busy")
)

// Files holds named files. Files that are appended to are in the private folder of
// the page, if the browser has one and lets a worker write in it, else in
// IndexedDB; files that are replaced are in IndexedDB, which does that in one step.
// A file is found wherever it is, so recordings of programs that only used
// IndexedDB need no conversion. A connection or worker that ends, or does not
// answer, is reopened with the next operation; an append that was done but never
// answered is not done twice, since it names its file and the position in it, and
// existing data has to be the same.
type Files struct {
	tables place
	disk   *place // nil: the browser has none
	name   string
}

// OpenFiles opens the storage called name, and creates it if it is missing. It
// asks the browser not to clear it when the phone's storage is full.
func OpenFiles(name string) (*Files, error) {
	f, err := OpenTables(name)
	if err != nil {
		return nil, err
	}
	if disk, err := openPlace("stillairDisk", name); err == nil {
		f.disk = &disk
	}
	return f, nil
}

// OpenTables is OpenFiles for a browser without a private folder.
func OpenTables(name string) (*Files, error) {
	tables, err := openPlace("stillairKeeping", name)
	if err != nil {
		return nil, err
	}
	tables.script.Call("persist")
	return &Files{tables: tables, name: name}, nil
}

// places are where a file may be, in the order in which they are searched.
func (f *Files) places() []place {
	if f.disk == nil {
		return []place{f.tables}
	}
	return []place{f.tables, *f.disk}
}

// find returns the place of a file, and its size.
func (f *Files) find(name string) (at place, size int, err error) {
	for _, at := range f.places() {
		var v js.Value
		if v, err = at.do("size", name); err == nil {
			return at, v.Int(), nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			break
		}
	}
	return place{}, 0, err
}

// Info describes a file.
type Info struct {
	Name     string
	Size     int64
	Modified time.Time
}

// Create makes an empty file; fs.ErrExist if the name is taken.
func (f *Files) Create(name string) (*File, error) {
	if _, _, err := f.find(name); err == nil {
		return nil, &fs.PathError{Op: "create", Path: name, Err: fs.ErrExist}
	} else if !errors.Is(err, fs.ErrNotExist) {
		return nil, err
	}
	if f.disk != nil {
		_, err := f.disk.do("create", name)
		if err == nil {
			return &File{place: *f.disk, name: name}, nil
		}
		if errors.Is(err, fs.ErrExist) {
			return nil, err
		}
	}
	if _, err := f.tables.do("create", name); err != nil {
		return nil, err
	}
	return &File{place: f.tables, name: name}, nil
}

// Open reads a file as long as it is now.
func (f *Files) Open(name string) (io.ReadCloser, error) {
	at, size, err := f.find(name)
	if err != nil {
		return nil, err
	}
	return &parts{place: at, name: name, size: size}, nil
}

// Replace writes a whole file, which is on the disk when it returns.
func (f *Files) Replace(name string, data []byte) error {
	if _, err := f.tables.do("replace", name, toJS(data)); err != nil || f.disk == nil {
		return err
	}
	if _, err := f.disk.do("remove", name); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// Remove deletes a file.
func (f *Files) Remove(name string) error {
	there := false
	for _, at := range f.places() {
		_, err := at.do("remove", name)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		there = there || err == nil
	}
	if !there {
		return &fs.PathError{Op: "remove", Path: name, Err: fs.ErrNotExist}
	}
	return nil
}

// List returns every file, ordered by name.
func (f *Files) List() ([]Info, error) {
	var infos []Info
	for _, at := range f.places() {
		list, err := at.do("list", "")
		if err != nil {
			return nil, err
		}
		for i := range list.Length() {
			e := list.Index(i)
			info := Info{e.Get("name").String(), int64(e.Get("size").Float()), time.UnixMilli(int64(e.Get("modified").Float()))}
			if !slices.ContainsFunc(infos, func(x Info) bool { return x.Name == info.Name }) {
				infos = append(infos, info)
			}
		}
	}
	slices.SortFunc(infos, func(a, b Info) int { return strings.Compare(a.Name, b.Name) })
	return infos, nil
}

// Free is the remaining quota in bytes.
func (f *Files) Free() (int64, error) {
	v, err := await(f.tables.script.Call("free"))
	if err != nil {
		return 0, err
	}
	return int64(v.Float()), nil
}

// Persisted reports whether the browser has promised not to clear the storage
// by itself when the phone's storage is full.
func (f *Files) Persisted() bool {
	v, err := await(f.tables.script.Call("persisted"))
	return err == nil && v.Truthy()
}

// Lock takes the lock called name among all pages of this place until unlock is
// called or the page ends. ErrBusy if it is held.
func (f *Files) Lock(name string) (unlock func(), err error) {
	v, err := await(f.tables.script.Call("lock", f.name+"/"+name))
	if err != nil {
		return nil, err
	}
	if v.IsNull() {
		return nil, ErrBusy
	}
	return sync.OnceFunc(func() { await(v.Invoke()) }), nil
}
