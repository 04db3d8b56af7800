package store

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
	"time"
)

// KeepDeleted is how long a deleted session can be brought back. An app that
// crashes, or a phone that dies, right after the deletion takes nothing from
// that.
const KeepDeleted = 7 * 24 * time.Hour

// Deleted gives the sessions that were deleted and are still there, the one
// deleted last first. What is wrong with files is reported by List.
func (s *Sessions) Deleted() []Session {
	var list []Session
	all, _ := s.all()
	for _, x := range all {
		if !x.About.Deleted.IsZero() {
			list = append(list, x)
		}
	}
	slices.SortStableFunc(list, func(a, b Session) int { return b.About.Deleted.Compare(a.About.Deleted) })
	return list
}

// Delete takes a session out of the list. Undelete brings it back, until Purge
// or Remove has removed it for good.
func (s *Sessions) Delete(id string) error {
	return s.Update(id, func(a *About) { a.Deleted = s.clock.Wall().UTC() })
}

// Undelete brings a deleted session back.
func (s *Sessions) Undelete(id string) error {
	return s.Update(id, func(a *About) { a.Deleted = time.Time{} })
}

// ErrNotDeleted is returned for a session that is to be removed for good and
// was not deleted before.
var ErrNotDeleted = errors.New("only what was deleted can be removed for good")

// Remove removes one deleted session for good.
func (s *Sessions) Remove(id string) error {
	about, err := s.about(id)
	if err != nil {
		return err
	}
	if about.Deleted.IsZero() {
		return ErrNotDeleted
	}
	return s.remove(id)
}

// remove takes the recording first: what a crash leaves of the files then still
// says that it was deleted.
func (s *Sessions) remove(id string) error {
	err := s.files.Remove(id + sessionEnding)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		err = s.forgetResults(id)
	}
	if err == nil {
		err = s.files.Remove(id + aboutEnding)
	}
	return err
}

// Purge removes for good what was deleted longer than age ago.
func (s *Sessions) Purge(age time.Duration) error {
	infos, err := s.files.List()
	if err != nil {
		return err
	}
	limit := s.clock.Wall().Add(-age)
	var errs []error
	for _, info := range infos {
		id, ok := strings.CutSuffix(info.Name, aboutEnding)
		if !ok {
			continue
		}
		about, err := s.about(id)
		if err != nil || about.Deleted.IsZero() || about.Deleted.After(limit) {
			continue
		}
		errs = append(errs, s.remove(id))
	}
	return errors.Join(errs...)
}
