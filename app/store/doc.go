// Package store keeps what the phone app remembers: recorded sessions with
// their names and notes, bikes with their setups, and the rider's choices.
//
// Everything is a file of its own in a platform.Files: a session is the
// session file that package export/session describes, untouched once it is
// closed, with a small JSON file of the same name beside it for what the
// rider says about it; each bike is one JSON file; the choices are one more.
// All JSON files carry a version, are indented for people, and are replaced
// as a whole. A file of a later version, or one that cannot be read, is left
// alone and told of: it is never written over.
package store

import (
	"encoding/json"
	"fmt"
	"io"

	"stillair/app/platform"
)

// Version is the version of every JSON file that this package writes, and the
// highest that it reads.
const Version = 1

// versioned is what every JSON file of this package begins with.
type versioned struct {
	Version int `json:"version"`
}

func readJSON(files platform.Files, name string, into any) error {
	r, err := files.Open(name)
	if err != nil {
		return err
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, 1<<20))
	if err != nil {
		return err
	}
	var v versioned
	if err := json.Unmarshal(data, &v); err != nil {
		return unreadable(name, err)
	}
	if v.Version < 1 || v.Version > Version {
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
	return files.Replace(name, append(data, '\n'))
}

// UnreadableError is a file of the store that is there and cannot be used.
type UnreadableError struct {
	Name string
	Err  error
}

func (e *UnreadableError) Error() string { return e.Name + ": " + e.Err.Error() }

func (e *UnreadableError) Unwrap() error { return e.Err }

func unreadable(name string, err error) error { return &UnreadableError{Name: name, Err: err} }
