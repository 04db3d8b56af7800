package store

import (
	"errors"

	"stillair/app/platform"
)

// RecorderLock is the lock that a running recorder holds.
const RecorderLock = "recorder"

// Recovered describes a session that a crash had left open.
type Recovered struct {
	ID      string
	Seconds float64 // how much of it is there
	Damaged float64 // seconds missing inside
}

// Recover finds the sessions that a crash, a kill or an empty battery left
// open, reads what is there and marks them as cut off. While a recorder is at
// work anywhere on this storage it does nothing and returns
// platform.ErrBusy. A session of which nothing can be read is kept as it is,
// but a file without a single byte is removed.
func (s *Sessions) Recover() ([]Recovered, error) { return s.RecoverBy(s.Look) }

// RecoverBy is Recover with look in place of Look, for one that reads a file
// elsewhere.
func (s *Sessions) RecoverBy(look func(id string) (Recovered, error)) ([]Recovered, error) {
	unlock, err := s.files.Lock(RecorderLock)
	if err != nil {
		return nil, err
	}
	defer unlock()
	list, problems := s.List()
	var found []Recovered
	for _, l := range list {
		if l.Bytes == 0 {
			// Killed before the first byte: there is nothing to keep.
			problems = append(problems, s.Discard(l.ID))
			continue
		}
		if l.About.Stage != Recording {
			continue
		}
		r, err := s.recoverOne(l.ID, look)
		if err != nil {
			problems = append(problems, err)
		}
		found = append(found, r)
	}
	return found, errors.Join(problems...)
}

// Look reads how much is there of a session.
func (s *Sessions) Look(id string) (Recovered, error) {
	r := Recovered{ID: id}
	rec, err := s.Read(id)
	if err != nil {
		return r, err
	}
	r.Seconds = Length(rec.Log)
	for _, m := range rec.Missing {
		r.Damaged += m.To - m.From
	}
	return r, nil
}

func (s *Sessions) recoverOne(id string, look func(id string) (Recovered, error)) (Recovered, error) {
	r, err := look(id)
	r.ID = id
	return r, errors.Join(err, s.Update(id, func(a *About) {
		a.Stage, a.Seconds = CutOff, r.Seconds
	}))
}

// Busy reports whether err says that a recorder is at work elsewhere.
func Busy(err error) bool { return errors.Is(err, platform.ErrBusy) }
