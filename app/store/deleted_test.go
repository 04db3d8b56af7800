package store_test

import (
	"errors"
	"io/fs"
	"testing"
	"time"

	"stillair/app/platform/platformtest"
	"stillair/app/store"
)

// TestADeletionSurvivesACrash deletes a session and opens the storage again, as
// after a crash: it is still listed as deleted, can be restored within
// KeepDeleted, and is gone after that.
func TestADeletionSurvivesACrash(t *testing.T) {
	for _, c := range []struct {
		name  string
		later time.Duration
		kept  bool
	}{
		{"at once", time.Second, true},
		{"the last hour", store.KeepDeleted - time.Hour, true},
		{"after that", store.KeepDeleted + time.Hour, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			files, now := platformtest.NewMemory(), noon()
			id := recorded(t, store.NewSessions(files, now), 20)
			if err := store.NewSessions(files, now).Delete(id); err != nil {
				t.Fatal(err)
			}
			now.now = now.now.Add(c.later)
			s := store.NewSessions(files, now)
			if err := s.Purge(store.KeepDeleted); err != nil {
				t.Fatal(err)
			}
			if list := s.Deleted(); (len(list) == 1) != c.kept {
				t.Fatalf("deleted are %v, want it kept: %v", list, c.kept)
			}
			if !c.kept {
				if _, err := s.Read(id); !errors.Is(err, fs.ErrNotExist) {
					t.Errorf("the recording: %v, want no file", err)
				}
				return
			}
			if err := s.Undelete(id); err != nil {
				t.Fatal(err)
			}
			if got := ids(t, s); len(got) != 1 || len(s.Deleted()) != 0 {
				t.Errorf("brought back, the list is %v", got)
			}
		})
	}
}

func TestOnlyWhatWasDeletedIsRemoved(t *testing.T) {
	files, now := platformtest.NewMemory(), noon()
	s := store.NewSessions(files, now)
	keep, gone := recorded(t, s, 20), recorded(t, s, 20)
	if err := s.Remove(keep); !errors.Is(err, store.ErrNotDeleted) {
		t.Errorf("removing what was not deleted: %v", err)
	}
	if err := s.Delete(gone); err != nil {
		t.Fatal(err)
	}
	if err := s.Remove(gone); err != nil {
		t.Fatal(err)
	}
	if got := ids(t, s); len(got) != 1 || got[0] != keep || len(s.Deleted()) != 0 {
		t.Errorf("left are %v, deleted %v", got, s.Deleted())
	}
	infos, err := files.List()
	if err != nil || len(infos) != 2 {
		t.Errorf("files left: %v, %v", infos, err)
	}
}
