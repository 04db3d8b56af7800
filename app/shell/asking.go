package shell

import (
	"fyne.io/fyne/v2"

	"stillair/app/recorder"
	"stillair/app/view"
)

// askEnd asks once more before a recording ends: a glove touches too much.
func (s *Shell) askEnd() {
	s.asking = func() fyne.CanvasObject {
		return s.screen.EndSure(s.endRide, s.answered)
	}
	s.showRiding()
}

// answered goes back to the riding screen.
func (s *Shell) answered() {
	s.asking, s.riding = nil, nil
	s.showRiding()
}

func (s *Shell) endRide() {
	rec := s.rec
	aside(s, func() *recorder.Recording {
		rec.Stop()
		return rec
	}, func(ended *recorder.Recording) {
		if s.rec == ended {
			s.rideEnded()
		}
	})
}

// askSetup lets the rider say what the bike is ridden with from here on.
func (s *Shell) askSetup() {
	b := s.bike()
	if b == nil {
		return
	}
	s.asking = func() fyne.CanvasObject {
		var rows []view.SetupRow
		for _, r := range s.screen.C.Bikes(s.garage, b.ID, s.rec.Status().Setup) {
			if r.ID == b.ID {
				rows = r.Setups
			}
		}
		return s.screen.PickSetup(rows, func(name string) {
			s.rec.SetSetup(b.RideSetup(name, 0))
			s.choices.Setup = name
			s.keepChoices()
			s.answered()
		}, s.answered)
	}
	s.showRiding()
}
