package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// PlanView is the question to a plan, and the answer.
type PlanView struct {
	What, Change, Wind, From, To, Setups, Chance Choice
	Top                                          *kit.Field // if the question is about top speed
	Over, Repeats                                *Choice    // if the question is about power or a time: which time, and the spread of repeats
	RepeatsName, RepeatsHint                     string
	FullThrottle                                 bool // no speeds to roll between
	Basis, WindWords                             string
	Cautions                                     []string
	Handing                                      Handing    // the state of sharing the card
	Plan                                         *view.Plan // nil while it is being calculated
}

// Plan draws the planning of a test: the answer, the questions that lead to it, and below
// them how to ride it. card shares it for printing.
func (s Screens) Plan(v PlanView, card, back func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Plan
	unit := ", " + s.C.SpeedUnit()
	what := []fyne.CanvasObject{s.choice(t.What, "", v.What)}
	if v.Over != nil {
		what = append(what, s.choice(t.Over, "", *v.Over))
	}
	if v.Top != nil {
		what = append(what, k.Field(*v.Top), s.choice(t.Faster+unit, "", v.Change))
	} else {
		what = append(what, k.Switch(v.Change.Options, v.Change.Chosen, v.Change.Pick))
	}
	ride := []fyne.CanvasObject{s.choice(t.Wind, t.WindHint, v.Wind)}
	if v.Repeats != nil {
		ride = append(ride, s.choice(v.RepeatsName, v.RepeatsHint, *v.Repeats))
	}
	if !v.FullThrottle {
		ride = append(ride, s.choice(t.From+unit, "", v.From), s.choice(t.To+unit, "", v.To))
	}
	ride = append(ride, s.choice(t.Setups, "", v.Setups), s.choice(t.Chance, "", v.Chance))
	body := []fyne.CanvasObject{s.small(t.Lead), s.verdict(v.Plan), k.Card(what...), k.Card(spaced(k, ride)...)}
	if v.Plan != nil && v.Plan.Trouble == "" {
		body = append(body, s.planned(*v.Plan)...)
		body = append(append(body, s.handing(v.Handing)...), k.List(s.into(kit.Hand, t.Card, t.CardHint, card)))
	}
	body = append(body, s.small(v.Basis), s.small(v.WindWords), k.Notice(kit.Caution, kit.Warn, "", "", s.paragraphs(v.Cautions)...))
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}

// verdict is the answer in words, or that it is still being calculated.
func (s Screens) verdict(p *view.Plan) fyne.CanvasObject {
	switch {
	case p == nil:
		return s.Kit.Notice(kit.Wait, kit.Muted, s.C.Book.Plan.Calculating, "")
	case p.Trouble != "":
		return s.Kit.Notice(kit.Caution, kit.Warn, "", p.Trouble)
	}
	symbol, ink := grade(p.Grade)
	return s.Kit.Notice(symbol, ink, p.Answer, "", s.paragraphs(p.Facts)...)
}

// planned is how to ride the test, and what would help if it cannot succeed.
func (s Screens) planned(p view.Plan) []fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Plan
	var out []fyne.CanvasObject
	if len(p.Help) > 0 {
		out = append(out, s.caption(t.Help), k.List(s.helps(p.Help)...))
	}
	var order []fyne.CanvasObject
	for i, b := range p.Order {
		order = append(order, s.step(i+1, b.Words))
	}
	order = append(order, k.Text(kit.Small, kit.Muted, t.OrderHint))
	var table []fyne.CanvasObject
	for _, row := range p.Table {
		table = append(table, k.ListRow(k.Row(10, kit.Centre, kit.Grow(k.Text(kit.Body, kit.Muted, row[0]), 1), k.Text(kit.Strong, kit.Plain, row[1]))))
	}
	return append(out, s.caption(t.Order), k.Card(order...), k.List(table...))
}

func (s Screens) helps(all []view.PlanHelp) []fyne.CanvasObject {
	k := s.Kit
	var out []fyne.CanvasObject
	for _, h := range all {
		out = append(out, k.ListRow(k.Column(1, k.Text(kit.Strong, kit.Plain, h.What), k.Text(kit.Small, kit.Muted, h.Then))))
	}
	return out
}
