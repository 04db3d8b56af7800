package shell

import (
	"fmt"
	"time"

	"stillair/app/recorder"
	"stillair/app/view"
)

// pocket is what the shell knows of a phone that records in a pocket, and of the
// holes that the rider has read.
type pocket struct {
	chosen bool   // it goes dark again whenever the bike moves
	dark   bool   // it is now
	shown  string // on the dark screen
	read   int    // holes
}

// ridden is the view of a recording, without the holes that were read.
func (s *Shell) ridden(st recorder.Status) view.Riding {
	st.Holes = st.Holes[min(s.pocket.read, len(st.Holes)):]
	return s.screen.C.Riding(st)
}

func (s *Shell) intoPocket() {
	s.pocket.chosen, s.pocket.dark, s.asking = true, true, nil
	s.showRiding()
}

func (s *Shell) unlock() {
	s.pocket.dark, s.riding = false, nil
	s.showRiding()
}

func (s *Shell) readMissing() {
	s.pocket.read, s.riding = len(s.rec.Status().Holes), nil
	s.showRiding()
}

// followPocket reports whether the dark screen is shown, and updates it. It
// shows only what is wrong, since drawing costs power.
func (s *Shell) followPocket(st recorder.Status) bool {
	if s.pocket.chosen && st.Phase == recorder.Moving && !s.pocket.dark {
		s.intoPocket()
	}
	if !s.pocket.dark {
		return false
	}
	if now := pocketShape(s.ridden(st)); now != s.pocket.shown {
		s.showPocket()
	}
	return true
}

func pocketShape(v view.Riding) string { return fmt.Sprint(v.Missing, v.MissingWhy, v.Warnings) }

func (s *Shell) showPocket() {
	v := s.ridden(s.rec.Status())
	s.riding, s.pocket.shown = nil, pocketShape(v)
	s.set(s.screen.Pocket(v, s.unlock))
}

// later runs a function after a while on the drawing goroutine.
func (s *Shell) later(d time.Duration, f func()) {
	passed := s.dev.Clock.After(d)
	go func() {
		select {
		case <-passed:
			s.cfg.Do(f)
		case <-s.ctx.Done():
		}
	}()
}
