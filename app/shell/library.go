package shell

import (
	"slices"

	"stillair/app/platform"
	"stillair/app/store"
)

// library is what is kept on the device. It holds nothing that changes, so any
// goroutine may use it.
type library struct {
	files    platform.Files
	sessions *store.Sessions
	bikes    *store.Bikes
}

func newLibrary(d *platform.Device) library {
	return library{files: d.Files, sessions: store.NewSessions(d.Files, d.Clock), bikes: store.NewBikes(d.Files, d.Clock)}
}

// lists is what the storage held when it was read. It is a value: a new reading
// makes a new one, and nobody changes the old.
type lists struct {
	garage   []store.Bike
	rides    []store.Session
	deleted  []store.Session // that can be restored
	problems []error
	free     int64 // bytes; −1 if not known
}

// read reads the lists.
func (l library) read() lists {
	var out lists
	var ofRides []error
	out.garage, out.problems = l.bikes.List()
	out.rides, ofRides = l.sessions.List()
	out.problems = append(out.problems, ofRides...)
	out.deleted = l.sessions.Deleted()
	free, err := l.files.Free()
	if err != nil {
		free = -1
	}
	out.free = free
	return out
}

// changed is the result of changing the storage: the lists read again, and any
// error.
type changed struct {
	lists lists
	err   error
}

// change does something to the storage aside, reads the lists again, and then
// continues with what went wrong. The lists are in place by then, and an error is
// among the problems that the screen of the bikes shows.
func (s *Shell) change(do func(library) error, then func(error)) {
	l := s.library
	aside(s, func() changed {
		err := do(l)
		return changed{l.read(), err}
	}, func(c changed) {
		s.lists = c.lists
		s.problem(c.err)
		then(c.err)
	})
}

// problem keeps what went wrong, to be shown with the bikes.
func (s *Shell) problem(err error) {
	known := func(p error) bool { return p.Error() == err.Error() }
	if err != nil && !slices.ContainsFunc(s.problems, known) {
		s.problems = append(s.problems[:len(s.problems):len(s.problems)], err)
	}
}
