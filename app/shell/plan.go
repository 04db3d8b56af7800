package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/view"
	"stillair/runs/plan"
)

// planning is what the rider asks of a plan, and the last answer.
type planning struct {
	asked view.Asked
	begun bool
	plan  *view.Plan // nil while it is reckoned
	turn  int        // counts questions, so that a late answer is left
}

// openPlan opens the planning of a test.
func (s *Shell) openPlan() {
	if !s.planned.begun {
		s.planned.begun, s.planned.asked = true, view.UsualAsked()
	}
	s.planned.asked.Load, s.planned.asked.Measured = view.MiddlingLoad(280), false
	if b := s.bike(); b != nil && b.Mass != nil {
		s.planned.asked.Load = view.MiddlingLoad(*b.Mass)
	}
	if o := s.opened; o.res != nil && o.id != "" && len(o.res.RoadLoads) > 0 {
		if l, err := o.res.LoadOf(o.res.RoadLoads[0].Setup); err == nil && l.Check() == nil {
			s.planned.asked.Load, s.planned.asked.Measured = l, true
		}
	}
	s.push(s.planScreen)
	s.reckon()
}

// reckon makes the plan aside; the last question asked is the one answered.
func (s *Shell) reckon() {
	p, c := &s.planned, s.screen.C
	p.turn++
	p.plan = nil
	turn := p.turn
	q, k := c.Question(p.asked)
	s.again()
	go func() {
		made, err := plan.Make(q, k)
		s.cfg.Do(func() {
			if s.planned.turn != turn || s.ctx.Err() != nil {
				return
			}
			v := c.Plan(made, err, q)
			s.planned.plan = &v
			if s.place == screens.PlaceCompare && s.rec == nil {
				s.again()
			}
		})
	}()
}

func (s *Shell) planScreen() *kit.Page {
	a := &s.planned.asked
	c := s.screen.C
	words := c.PlanChoices()
	pick := func(options []string, at *int) screens.Choice {
		return screens.Choice{Options: options, Chosen: *at, Pick: func(i int) {
			*at = i
			s.reckon()
		}}
	}
	v := screens.PlanView{Wind: pick(words.Winds, &a.Wind), From: pick(words.From, &a.From), To: pick(words.To, &a.To),
		Setups: pick(words.Setups, &a.Setups), Chance: pick(words.Chances, &a.Sure),
		Basis: c.PlanBasis(*a), WindWords: c.PlanWind(*a), Plan: s.planned.plan}
	v.What = screens.Choice{Options: words.What, Pick: func(i int) {
		a.ByTop = i == 1
		s.reckon()
	}}
	if v.Change = pick(words.Changes, &a.Change); a.ByTop {
		v.What.Chosen, v.Change = 1, pick(words.Faster, &a.Faster)
		v.Top = s.topField(a)
	}
	return s.screen.Plan(v, s.goBack)
}

// topField asks for the top speed; what is typed counts with the next touch of
// a switch, so that the screen is not drawn anew under the rider's hands.
func (s *Shell) topField(a *view.Asked) *kit.Field {
	c := s.screen.C
	q := c.SpeedQuantity()
	if a.TopSpeed == nil {
		usual := c.UsualTop()
		a.TopSpeed = &usual
	}
	return &kit.Field{Name: c.Book.Plan.TopField, Text: c.Write(a.TopSpeed, q), Unit: q.Unit, Changed: func(typed string) {
		if x, err := c.Read(typed, q); err == nil && x != nil {
			a.TopSpeed = x
		}
	}}
}
