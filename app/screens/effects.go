package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// effects draws what differences mean on the road.
func (s Screens) effects(v view.Compare, pick func(int)) []fyne.CanvasObject {
	if len(v.Effects)+len(v.Steady) == 0 {
		return nil
	}
	k, t := s.Kit, s.C.Book.Effects
	parts := []fyne.CanvasObject{s.choice(t.At+", "+s.C.SpeedUnit(), "", Choice{Options: v.Speeds, Chosen: v.Speed, Pick: pick})}
	for _, l := range v.Steady {
		parts = append(parts, s.effectLine(l))
	}
	if v.TopNote != "" {
		parts = append(parts, k.Text(kit.Small, kit.Muted, v.TopNote))
	}
	out := []fyne.CanvasObject{s.caption(t.Title), k.Card(parts...)}
	for _, w := range v.Effects {
		lines := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, w.Pair)}
		for _, l := range w.Lines {
			lines = append(lines, s.effectLine(l))
		}
		for _, n := range w.Notes {
			lines = append(lines, k.Text(kit.Small, kit.Muted, n))
		}
		out = append(out, k.Card(lines...))
	}
	return out
}

func (s Screens) effectLine(l view.EffectLine) fyne.CanvasObject {
	k := s.Kit
	parts := []fyne.CanvasObject{k.Text(kit.Body, kit.Muted, l.Name), k.SmallReading(l.Reading)}
	if l.Words != "" {
		parts = append(parts, k.Text(kit.Small, kit.Muted, l.Words))
	}
	return k.Column(0, parts...)
}

// limits draws bars of the causes of each setup's uncertainty.
func (s Screens) limits(all []view.Limits) []fyne.CanvasObject {
	if len(all) == 0 {
		return nil
	}
	k, t := s.Kit, s.C.Book.Effects
	out := []fyne.CanvasObject{s.caption(s.C.Names().Limits())}
	for _, l := range all {
		parts := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, l.Lead)}
		for _, b := range l.Bars {
			line := k.Row(8, kit.Centre, kit.Grow(k.Text(kit.Small, kit.Plain, b.Name), 1), k.Text(kit.Small, kit.Muted, b.Text))
			parts = append(parts, k.Column(1, line, k.Progress(b.Share)).Spoken(b.Spoken))
		}
		out = append(out, k.Card(append(parts, k.Text(kit.Body, kit.Plain, l.Help))...))
	}
	return append(out, s.small(t.LimitHint))
}

func (s Screens) group(g view.CompareGroup) []fyne.CanvasObject {
	out := []fyne.CanvasObject{s.caption(g.Title)}
	for _, r := range g.Rows {
		out = append(out, s.difference(r, g.Scale))
	}
	return out
}

// PickRides lets the rider choose which rides are compared.
func (s Screens) PickRides(rows []view.RideRow, chosen map[string]bool, trouble string, tick func(id string), back, done func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Effects
	body := []fyne.CanvasObject{s.small(t.WhichHint)}
	if trouble != "" {
		body = append(body, k.Notice(kit.Caution, kit.Warn, "", trouble))
	}
	var list []fyne.CanvasObject
	for _, r := range rows {
		symbol, ink := kit.Box0, kit.Muted
		if chosen[r.ID] {
			symbol, ink = kit.Box1, kit.Good
		}
		words := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, r.Title)}
		for _, w := range []string{r.When, r.Bike, r.Found} {
			if w != "" {
				words = append(words, k.Text(kit.Small, kit.Muted, w))
			}
		}
		row := k.ListRow(k.Row(14, kit.Centre, k.Icon(symbol, ink, 26), kit.Grow(k.Column(1, words...), 1)))
		list = append(list, k.Touchable(row, r.Title, func() { tick(r.ID) }).Marked("checkbox", chosen[r.ID]))
	}
	if list == nil {
		return k.NewPage(k.Head(t.Which, s.C.Book.Common.Back, back), k.Card(k.Text(kit.Body, kit.Plain, t.WhichNone)), nil)
	}
	return k.NewPage(k.Head(t.Which, s.C.Book.Common.Back, back), k.Column(12, append(body, k.List(list...))...),
		k.Foot(k.Button(kit.Main, kit.Tick, t.WhichDone, done)))
}
