// Package store keeps what the phone app remembers: recorded sessions with
// their names and notes, bikes with their setups, and the rider's choices.
//
// Everything is a file of its own in a platform.Files: a session is the session
// file that package export/session describes, untouched once it is closed, with
// a small JSON file of the same name for the rider's notes, and another for
// those of its results that a season needs; each bike is one JSON file; the
// choices are one more. All JSON files carry a version, are indented for
// people, and are replaced as a whole. A file of a later version is left alone
// and reported: it is never overwritten. One that is damaged is reported too,
// and copied aside, as NAME.1.aside, before anything is written in its place.
package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"reflect"

	"stillair/app/platform"
)

// Version is the version of every JSON file that this package writes, and the
// highest that it reads.
const Version = 1

// versioned is the beginning of every JSON file of this package.
type versioned struct {
	Version int `json:"version"`
}

func readJSON(files platform.Files, name string, into any) error {
	data, err := readAll(files, name)
	if err != nil {
		return err
	}
	return decode(name, data, into)
}

// mostJSON limits the size of a file of this package.
const mostJSON = 1 << 20

func readAll(files platform.Files, name string) ([]byte, error) {
	r, err := files.Open(name)
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(io.LimitReader(r, mostJSON))
	return data, errors.Join(err, r.Close())
}

// ErrLater is wrapped by the error of a file that a later version of the app
// wrote.
var ErrLater = errors.New("a later version of the app wrote it")

func decode(name string, data []byte, into any) error {
	var v versioned
	if err := json.Unmarshal(data, &v); err != nil {
		return unreadable(name, err)
	}
	if v.Version > Version {
		return unreadable(name, fmt.Errorf("%w: it has version %d, this app reads 1 to %d", ErrLater, v.Version, Version))
	}
	if v.Version < 1 {
		return unreadable(name, fmt.Errorf("it has version %d, this app reads 1 to %d", v.Version, Version))
	}
	if err := json.Unmarshal(data, into); err != nil {
		return unreadable(name, err)
	}
	return nil
}

func writeJSON(files platform.Files, name string, what any) error {
	data, err := json.MarshalIndent(what, "", "  ")
	if err != nil {
		return err
	}
	if err := guard(files, name, reflect.New(reflect.TypeOf(what)).Interface()); err != nil {
		return err
	}
	return files.Replace(name, append(data, '\n'))
}

// guard prevents data loss before a file is replaced: it returns an error if a
// later version of the app wrote the present file, and makes a copy of a
// damaged one. into is a value of the file's type.
func guard(files platform.Files, name string, into any) error {
	data, err := readAll(files, name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if err = decode(name, data, into); err == nil || errors.Is(err, ErrLater) {
		return err
	}
	return aside(files, name, data)
}

// aside saves a copy of a damaged file under an unused name.
func aside(files platform.Files, name string, data []byte) error {
	for n := 1; n < 1000; n++ {
		f, err := files.Create(fmt.Sprintf("%s.%d.aside", name, n))
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return err
		}
		k, err := f.Write(data)
		if err == nil && k < len(data) {
			err = io.ErrShortWrite
		}
		return errors.Join(err, f.Close())
	}
	return fmt.Errorf("%w: no free name for a copy of %s", fs.ErrExist, name)
}

// UnreadableError is the error for a file of the store that exists but cannot
// be used.
type UnreadableError struct {
	Name string
	Err  error
}

func (e *UnreadableError) Error() string { return e.Name + ": " + e.Err.Error() }

func (e *UnreadableError) Unwrap() error { return e.Err }

func unreadable(name string, err error) error { return &UnreadableError{Name: name, Err: err} }
