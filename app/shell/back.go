package shell

import "stillair/app/screens"

// Back is the phone's own way back: one screen up, and from the first screen of a
// place to the one before the ride. While a recording runs it closes a question
// and does nothing else. It reports false where the app has nowhere to go back to.
func (s *Shell) Back() bool {
	defer s.tellDepth()
	switch {
	case s.rec != nil:
		if s.asking != nil {
			s.answered()
		}
	case s.back():
	case s.place != screens.PlaceRide:
		s.goTo(screens.PlaceRide)
	default:
		return false
	}
	return true
}

// depth is how often Back has something to do; while a recording runs it is
// never used up.
func (s *Shell) depth() int {
	n := 0
	switch {
	case s.rec != nil:
		n = 1
		if s.asking != nil {
			n++
		}
	default:
		n = len(s.stacks[s.place]) - 1
		if s.place != screens.PlaceRide {
			n++
		}
	}
	return n
}

// tellDepth reports the depth of navigation to the device.
func (s *Shell) tellDepth() {
	if s.dev.Deep != nil {
		s.dev.Deep(s.depth(), s.rec != nil)
	}
}

// listenForBack makes the browser's own way back go up a screen.
func (s *Shell) listenForBack() {
	if s.dev.WentBack != nil {
		s.dev.WentBack(func() { s.cfg.Do(func() { s.Back() }) })
	}
}
