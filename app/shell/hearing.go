package shell

import (
	"stillair/app/screens"
	"stillair/app/store"
)

// hearing is the switch of the microphone; nil where there is none.
func (s *Shell) hearing() *screens.Choice {
	if s.dev.Hear == nil {
		return nil
	}
	t := s.screen.C.Book.More
	c := screens.Choice{Options: []string{t.Off, t.On}, Pick: func(i int) { s.setHearing(i == 1) }}
	if s.choices.Sound {
		c.Chosen = 1
	}
	return &c
}

// setHearing switches the microphone; on only once the rider gave permission.
func (s *Shell) setHearing(on bool) {
	if !on || s.dev.PermitHearing == nil {
		s.heard(on, on)
		return
	}
	aside(s, s.dev.PermitHearing, func(granted bool) { s.heard(on, granted) })
}

// heard keeps the result of switching the microphone, and checks the sensors
// again.
func (s *Shell) heard(wanted, granted bool) {
	s.unheard = ""
	if wanted && !granted {
		s.unheard = s.screen.C.Book.Hearing.Refused
	}
	watch := s.watch
	s.changed(func(c *store.Choices) { c.Sound = granted })
	if watch == nil {
		return
	}
	s.watch = nil
	aside(s, stopped(watch), func(none) { s.startWatch() })
}
