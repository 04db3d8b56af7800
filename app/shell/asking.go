package shell

import (
	"math"

	"fyne.io/fyne/v2"

	"stillair/app/recorder"
	"stillair/app/view"
	"stillair/sensors"
)

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

// askSetup lets the rider choose the setup from now on.
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
			st, setup := s.rec.Status(), b.RideSetup(name, 0)
			if name == st.Setup || !math.IsNaN(setup.Mass) {
				s.useSetup(setup)
				return
			}
			s.askWeight(setup, st.Mass)
		}, s.answered)
	}
	s.showRiding()
}

// useSetup notes the setup from now on.
func (s *Shell) useSetup(setup sensors.Setup) {
	s.rec.SetSetup(setup)
	s.choices.Setup = setup.Name
	s.keepChoices()
	s.answered()
}

// askWeight asks whether the weight changed with the setup: 10 kg more that
// nobody entered look like that much less drag. was is the weight until now, kg.
func (s *Shell) askWeight(setup sensors.Setup, was float64) {
	c, typed := s.screen.C, (*float64)(nil)
	f := newForm(c)
	f.numberWas("mass", c.Book.Riding.WeightField, "", &typed, c.MassQuantity(60, 1500), was)
	same := func() {
		setup.Mass = was
		s.useSetup(setup)
	}
	enter := func() {
		if !f.check() || typed == nil {
			s.showRiding()
			return
		}
		setup.Mass = *typed
		s.useSetup(setup)
	}
	s.asking = func() fyne.CanvasObject {
		return s.screen.AskWeight(setup.Name, f.fields("mass"), same, enter, s.answered)
	}
	s.showRiding()
}
