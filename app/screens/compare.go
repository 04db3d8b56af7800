package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// CompareActions are the actions of the screen of compared setups.
type CompareActions struct {
	Guide, Plan, Rides func()
	Speed              func(int)
}

// Compare draws how setups differ, what that means and what limits it, or how
// to find out.
func (s Screens) Compare(v view.Compare, on CompareActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Compare
	var body []fyne.CanvasObject
	plan := s.into(kit.Guide, s.C.Book.Plan.Title, s.C.Book.Plan.Open, on.Plan)
	if v.Empty() {
		body = s.howToCompare(on, plan)
	}
	if v.Weaker && !v.Empty() {
		body = append(body, k.Notice(kit.Caution, kit.Warn, "", s.C.Names().OtherDay()))
	}
	for _, g := range v.Groups {
		body = append(body, s.group(g)...)
	}
	if v.Note != "" && len(v.Groups) > 0 {
		body = append(body, s.small(v.Note))
	}
	for _, n := range v.Notes {
		body = append(body, s.small(n))
	}
	body = append(body, s.effects(v, on.Speed)...)
	body = append(body, s.limits(v.Limits)...)
	if !v.Empty() {
		body = append(body, s.small(s.C.Book.Common.PlusMinus))
	}
	next := []fyne.CanvasObject{s.into(kit.ListTab, s.C.Book.Effects.Which, "", on.Rides)}
	if !v.Empty() {
		next = append([]fyne.CanvasObject{plan}, next...)
	}
	body = append(body, k.List(next...))
	return k.NewPage(k.Head(t.Title, "", nil), k.Column(12, body...), nil)
}

// howToCompare is shown in place of a comparison until one has been ridden.
func (s Screens) howToCompare(on CompareActions, plan fyne.CanvasObject) []fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Compare
	var steps []fyne.CanvasObject
	for i, h := range []string{t.How1, t.How2, t.How3, t.How4} {
		steps = append(steps, s.step(i+1, h))
	}
	return []fyne.CanvasObject{k.Card(k.Text(kit.Heading, kit.Plain, t.Empty), k.Text(kit.Body, kit.Plain, t.EmptyHint)),
		k.List(plan), s.caption(t.HowTitle), k.Card(steps...), k.List(s.into(kit.Guide, s.C.Book.More.GuideAgain, "", on.Guide))}
}

func (s Screens) difference(r view.CompareRow, scale string) fyne.CanvasObject {
	k := s.Kit
	r.Band.ScaleText, r.Band.ShowZero = scale, true
	return k.Card(k.Text(kit.Small, kit.Muted, r.Pair), s.said(r.Said), k.Interval(r.Band), s.delta(r.Delta))
}

// delta is a difference in its own unit, next to the band in percent.
func (s Screens) delta(r view.Reading) fyne.CanvasObject {
	if r.Number == "" {
		return nil
	}
	k := s.Kit
	return k.Row(8, kit.Centre, kit.Grow(k.Text(kit.Small, kit.Muted, s.C.Book.Compare.Delta), 1), k.SmallReading(r))
}

// step is one numbered line of what to do.
func (s Screens) step(n int, words string) fyne.CanvasObject {
	k := s.Kit
	return k.Row(12, kit.Top, k.Sized(22, 0, k.Text(kit.Heading, kit.Accent, s.C.Number(float64(n), 0))),
		kit.Grow(k.Inset(1, 0, k.Text(kit.Body, kit.Plain, words)), 1))
}
