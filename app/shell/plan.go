package shell

import (
	"bytes"

	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/view"
	"stillair/app/work"
	"stillair/runs/usual"
)

// planning is what the rider asks of a plan, and the last answer.
type planning struct {
	asked view.Asked
	begun bool
	plan  *view.Plan      // nil while it is being calculated
	hand  screens.Handing // of the card
	turn  int             // counts questions, so that a late answer is ignored
}

// openPlan opens the planning of a test.
func (s *Shell) openPlan() {
	if !s.planned.begun {
		s.planned.begun, s.planned.asked = true, view.UsualAsked()
	}
	s.planned.asked.Load, s.planned.asked.Measured, s.planned.asked.Like = view.UsualLoad(usual.Mass), false, nil
	never := s.neverRolls()
	if never && !s.planned.asked.NeverRolls {
		s.planned.asked.What = view.PowerMatters
	}
	s.planned.asked.NeverRolls = never
	if b := s.bike(); b != nil && b.Mass != nil {
		s.planned.asked.Load = view.UsualLoad(*b.Mass)
	}
	if o := s.opened; o.res != nil && o.id != "" && len(o.res.RoadLoads) > 0 {
		if l, err := o.res.LoadOf(o.res.RoadLoads[0].Setup); err == nil && l.Check() == nil {
			s.planned.asked.Load, s.planned.asked.Measured, s.planned.asked.Like = l, true, o.res.Estimate
		}
	}
	s.planned.asked.Power = 0
	if s.opened.res != nil {
		for _, p := range s.opened.res.Powers {
			_, top, _ := p.Curve.Peak()
			s.planned.asked.Power = max(s.planned.asked.Power, top.X)
		}
	}
	s.push(s.planScreen)
	s.calculatePlan()
}

// calculatePlan makes the plan in the background; the last question asked is the one answered.
func (s *Shell) calculatePlan() {
	p, c := &s.planned, s.screen.C
	p.turn++
	p.plan = nil
	turn := p.turn
	asked := p.asked
	s.again()
	go func() {
		made, err := c.MakePlan(asked)
		s.cfg.Do(func() {
			if s.planned.turn != turn || s.ctx.Err() != nil {
				return
			}
			v := c.Plan(made, err, asked)
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
			s.calculatePlan()
		}}
	}
	v := screens.PlanView{Wind: pick(words.Winds, &a.Wind), From: pick(words.From, &a.From), To: pick(words.To, &a.To),
		Setups: pick(words.Setups, &a.Setups), Chance: pick(words.Chances, &a.Sure), FullThrottle: a.What.Pushes(),
		Basis: c.PlanBasis(*a), WindWords: c.PlanWind(*a), Cautions: c.PlanCautions(*a), Plan: s.planned.plan,
		Handing: s.planned.hand}
	v.What = screens.Choice{Options: words.What, Chosen: int(a.What), Pick: func(i int) {
		a.What = view.Matter(i)
		s.calculatePlan()
	}}
	t := c.Book.Plan
	switch a.What {
	case view.TopMatters:
		v.Change, v.Top = pick(words.Faster, &a.Faster), s.topField(a)
	case view.PowerMatters:
		unsteady := pick(words.Unsteady, &a.Unsteady)
		v.Change, v.Repeats = pick(words.Stronger, &a.Stronger), &unsteady
		v.RepeatsName, v.RepeatsHint = t.Unsteady, t.UnsteadyHint
	case view.TimeMatters:
		over, repeats := pick(words.Over, &a.Over), pick(words.Repeats, &a.Repeats)
		v.Change, v.Over, v.Repeats = pick(words.Quicker, &a.Quicker), &over, &repeats
		v.RepeatsName, v.RepeatsHint = t.Repeats, t.RepeatsHint
	default:
		v.Change = pick(words.Changes, &a.Change)
	}
	return s.screen.Plan(v, s.giving(&s.planned.hand, s.cardFile), s.goBack)
}

// cardFile is the plan as a card to print.
func (s *Shell) cardFile() making {
	c, a, v := s.screen.C, s.planned.asked, s.planned.plan
	return func() (work.Made, error) {
		var b bytes.Buffer
		err := c.Card(&b, v.Made, a)
		return work.Made{Name: "card.html", Media: "text/html", Data: b.Bytes()}, err
	}
}

// topField asks for the top speed; what is typed counts with the next touch of
// a switch, so that the screen is not redrawn under the rider's hands.
func (s *Shell) topField(a *view.Asked) *kit.Field {
	c := s.screen.C
	q := c.SpeedQuantity()
	if a.TopSpeed == nil {
		usual := c.UsualTop()
		a.TopSpeed = &usual
	}
	return &kit.Field{Name: c.Book.Plan.TopField, Text: c.Write(a.TopSpeed, q), Unit: q.Unit, Keys: keysFor(q), Changed: func(typed string) {
		if x, err := c.Read(typed, q); err == nil && x != nil {
			a.TopSpeed = x
		}
	}}
}
