package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// PowerView is the power at the road, and how to show it.
type PowerView struct {
	view.Power
	Standard Choice
	Over     Choice // shown if the engine speed is known
}

// Power draws the power curves of all setups.
func (s Screens) Power(v PowerView, back func()) *kit.Page {
	k, t, name := s.Kit, s.C.Book.Power, s.C.Names()
	picture := []fyne.CanvasObject{k.Plot(v.Plot, 280)}
	if v.Gears {
		picture = append(picture, s.choice(t.Over, "", v.Over))
	}
	picture = append(picture, s.choice(t.Correction, "", v.Standard))
	for _, n := range v.Notes {
		picture = append(picture, k.Text(kit.Small, kit.Muted, n))
	}
	body := []fyne.CanvasObject{s.small(name.PowerLead()), k.Card(picture...)}
	for _, p := range v.Peaks {
		body = append(body, s.peak(p))
	}
	body = append(body, k.Notice(kit.Info, kit.Accent, "", name.NoBench()), s.small(s.C.Book.Common.PlusMinus))
	return k.NewPage(k.Head(name.Power(), s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}

func (s Screens) peak(p view.PowerPeak) fyne.CanvasObject {
	k := s.Kit
	parts := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, p.Name),
		k.Column(0, k.Reading(p.Reading), k.Text(kit.Body, kit.Muted, p.Where))}
	if p.AtEnd != "" {
		parts = append(parts, k.Row(8, kit.Top, k.Icon(kit.Caution, kit.Warn, 18), kit.Grow(k.Text(kit.Small, kit.Plain, p.AtEnd), 1)))
	}
	for _, n := range p.Notes {
		parts = append(parts, k.Text(kit.Small, kit.Muted, n))
	}
	return k.Card(parts...)
}

// pullPower draws the curve that a pull is part of.
func (s Screens) pullPower(v view.Run) []fyne.CanvasObject {
	if !v.HasPower {
		return nil
	}
	k, t := s.Kit, s.C.Book.Power
	return []fyne.CanvasObject{s.caption(t.PullTitle), k.Card(k.Plot(v.Power, 220), k.Text(kit.Small, kit.Muted, s.C.Names().NoBench()))}
}

// stops draws the shortest stopping distances, with their caution.
func (s Screens) stops(rows []view.StopRow) []fyne.CanvasObject {
	if len(rows) == 0 {
		return nil
	}
	k := s.Kit
	var list []fyne.CanvasObject
	for _, r := range rows {
		words := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, r.Name)}
		if r.Words != "" {
			words = append(words, k.Text(kit.Small, kit.Muted, r.Words))
		}
		list = append(list, k.ListRow(k.Row(10, kit.Centre, kit.Grow(k.Column(0, words...), 1), k.SmallReading(r.Reading))))
	}
	return []fyne.CanvasObject{s.caption(s.C.Book.Power.StopTitle), k.List(list...), s.small(s.C.Book.Power.StopHint + " " + s.C.Book.Run.StopCaution)}
}
