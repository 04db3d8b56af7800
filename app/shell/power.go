package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/view"
)

// openPower shows the power at the road of the open ride.
func (s *Shell) openPower() {
	standard, over := view.AsRidden, 0
	s.push(func() *kit.Page {
		t := s.screen.C.Book.Power
		return s.screen.Power(screens.PowerView{
			Power: s.screen.C.Power(s.opened.res, standard, over == 1),
			Standard: screens.Choice{Options: s.screen.C.Standards(), Chosen: int(standard), Pick: func(i int) {
				standard = view.Standard(i)
				s.again()
			}},
			Over: screens.Choice{Options: []string{t.OverSpeed, t.OverRPM}, Chosen: over, Pick: func(i int) {
				over = i
				s.again()
			}},
		}, s.goBack)
	})
}
