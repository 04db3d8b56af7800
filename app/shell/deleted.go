package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
)

// deleteRide takes the open ride out of the list and offers to take that back.
func (s *Shell) deleteRide() {
	id := s.opened.id
	s.home(s.place)
	s.withSession(s.library.sessions.Delete, id, func() {
		s.undo = func() {
			s.undo = nil
			s.bringBack(id)
		}
	})
}

// withSession does something to a session aside, reads the lists again and
// draws them. What went wrong is shown with the bikes' problems.
func (s *Shell) withSession(do func(id string) error, id string, done func()) {
	s.change(func(library) error { return do(id) }, func(err error) {
		if err == nil {
			done()
		}
		s.again()
	})
}

func (s *Shell) bringBack(id string) {
	s.withSession(s.library.sessions.Undelete, id, func() {})
}

// openDeleted lists what was deleted and can still be brought back.
func (s *Shell) openDeleted() {
	sure := ""
	s.push(func() *kit.Page {
		return s.screen.Deleted(s.screen.C.Deleted(s.deleted, s.dev.Clock.Wall()), sure, screens.DeletedActions{
			Back: s.goBack, BringBack: s.bringBack, Remove: func(id string) {
				if sure != id {
					sure = id
					s.again()
					return
				}
				s.withSession(s.library.sessions.Remove, id, func() { sure = "" })
			}})
	})
}
