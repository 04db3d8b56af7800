package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
)

// deleteRide removes the open ride from the list and offers to undo that.
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

// withSession changes a session in the background, reads the lists again and
// draws them. Errors are shown with the problems of the bikes.
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
