package work

import (
	"slices"

	"stillair/app/formats"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Unreadable is an error of reading a recording, apart from those of measuring it.
type Unreadable struct{ error }

// Unwrap gives what it was.
func (u Unreadable) Unwrap() error { return u.error }

// ofRide is an error with one of several rides.
type ofRide struct {
	title string
	err   error
}

func (o ofRide) Error() string { return o.title + ": " + o.err.Error() }
func (o ofRide) Unwrap() error { return o.err }

// trouble is an error as it goes over: of a recording that holds no ride, or not
// enough for a file. Others have causes that may be a worker's alone, and the work
// is done again in the page, where the rider sees them.
type trouble struct {
	ride         string // which one of several
	unreadable   bool
	lacks        int // 1 and more: one of lacking
	file         string
	line         int
	what, remedy finding.Finding
}

// lacking are what a ride may lack for a file.
func lacking() []error {
	return []error{formats.ErrNoPlace, formats.ErrNothingLeft, formats.ErrNoResult}
}

// troubleOf is nil for an error that does not go over.
func troubleOf(err error) *trouble {
	var t trouble
	if e, ok := err.(ofRide); ok {
		t.ride, err = e.title, e.err
	}
	if e, ok := err.(Unreadable); ok {
		t.unreadable, err = true, e.error
	}
	if e, ok := err.(*sensors.InputError); ok && e.Err == nil {
		t.file, t.line, t.what, t.remedy = e.File, e.Line, e.What, e.Remedy
		return &t
	}
	if t.lacks = slices.Index(lacking(), err) + 1; t.lacks > 0 {
		return &t
	}
	return nil
}

func (t *trouble) error() error {
	var err error = &sensors.InputError{File: t.file, Line: t.line, What: t.what, Remedy: t.remedy}
	if all := lacking(); t.lacks > 0 && t.lacks <= len(all) {
		err = all[t.lacks-1]
	}
	if t.unreadable {
		err = Unreadable{err}
	}
	if t.ride != "" {
		err = ofRide{t.ride, err}
	}
	return err
}
