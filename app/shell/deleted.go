package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
)

// deleteRide takes the open ride out of the list and offers to take that back.
func (s *Shell) deleteRide() {
	id := s.opened.id
	s.piles[s.place] = s.piles[s.place][:1]
	s.withSession(s.sessions.Delete, id, func() {
		s.undo = func() {
			s.undo = nil
			s.bringBack(id)
		}
	})
}

// withSession does something to a session aside, reads the lists again and
// draws them. What went wrong is told with the bikes' problems.
func (s *Shell) withSession(do func(id string) error, id string, done func()) {
	var err error
	s.aside(func() {
		err = do(id)
		s.reread()
	}, func() {
		if err != nil {
			s.problems = append(s.problems, err)
		} else {
			done()
		}
		s.again()
	})
}

func (s *Shell) bringBack(id string) {
	s.withSession(s.sessions.Undelete, id, func() {})
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
				s.withSession(s.sessions.Remove, id, func() { sure = "" })
			}})
	})
}
