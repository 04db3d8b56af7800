package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// SeasonActions are the actions of the season.
type SeasonActions struct {
	Back func()
	Bike func(i int)
	Open func(id string) // a ride
}

// seasonPlotHeight is the height of the plot of drag area over time.
const seasonPlotHeight = 190

// Season draws the joint result of all rides of a bike, the answer first.
func (s Screens) Season(v view.Season, on SeasonActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Season
	var body []fyne.CanvasObject
	if v.Empty() {
		body = append(body, k.Card(k.Text(kit.Heading, kit.Plain, t.Empty), k.Text(kit.Body, kit.Muted, t.EmptyHint)))
	} else {
		body = append(body, s.seasonLead(v.Lead))
	}
	if len(v.Bikes) > 1 {
		body = append(body, k.Card(s.choice(t.Bike, "", Choice{Options: v.Bikes, Chosen: v.Bike, Pick: on.Bike})))
	}
	for _, n := range v.Notes {
		body = append(body, k.Notice(kit.Caution, kit.Warn, "", n))
	}
	if len(v.Parts.Rows) > 0 {
		body = append(append(body, s.group(v.Parts)...), s.small(v.Counted))
	}
	body = append(body, s.seasonSetups(v.Setups)...)
	body = append(body, s.seasonTwoWays(v.TwoWays)...)
	body = append(body, s.passes(v.Passes)...)
	body = append(body, s.seasonBattery(v)...)
	if len(v.Rides) > 0 {
		var list []fyne.CanvasObject
		for _, r := range v.Rides {
			list = append(list, s.seasonRide(r, on.Open))
		}
		body = append(body, s.caption(t.RidesTitle), k.List(list...))
	}
	if len(v.Left) > 0 {
		body = append(body, s.caption(t.LeftTitle))
		for _, l := range v.Left {
			body = append(body, s.small(l))
		}
	}
	if !v.Empty() {
		body = append(body, s.small(s.C.Book.Common.PlusMinus))
	}
	title := t.Title
	if len(v.Bikes) == 1 {
		title += ", " + v.Bikes[0]
	}
	return k.NewPage(k.Head(title, s.C.Book.Common.Back, on.Back), k.Column(12, body...), nil)
}

func (s Screens) seasonLead(a view.Answer) fyne.CanvasObject {
	k := s.Kit
	var parts []fyne.CanvasObject
	if a.Pair != "" {
		parts = append(parts, k.Text(kit.Small, kit.Muted, a.Pair))
	}
	if a.Verdict != "" {
		parts = append(parts, s.said(a.Said))
	}
	for _, m := range a.Means {
		parts = append(parts, k.Text(kit.Body, kit.Plain, m))
	}
	return k.Card(parts...)
}

func (s Screens) seasonSetups(all []view.SeasonSetup) []fyne.CanvasObject {
	if len(all) == 0 {
		return nil
	}
	k := s.Kit
	out := []fyne.CanvasObject{s.caption(s.C.Book.Season.SetupsTitle)}
	for _, setup := range all {
		parts := []fyne.CanvasObject{k.Text(kit.Heading, kit.Plain, setup.Title)}
		for _, f := range setup.Figures {
			lines := []fyne.CanvasObject{k.Text(kit.Body, kit.Muted, f.Name), k.SmallReading(f.Reading)}
			for _, w := range f.Words {
				lines = append(lines, k.Text(kit.Small, kit.Muted, w))
			}
			if len(f.Plot.Lines) > 0 {
				lines = append(lines, k.Plot(f.Plot, seasonPlotHeight))
			}
			parts = append(parts, k.Column(1, lines...))
		}
		out = append(out, k.Card(parts...))
	}
	return out
}

func (s Screens) seasonBattery(v view.Season) []fyne.CanvasObject {
	if len(v.Battery) == 0 {
		return nil
	}
	return []fyne.CanvasObject{s.caption(v.Steady), s.effectCard(v.Battery), s.small(v.Drive)}
}

func (s Screens) effectCard(lines []view.EffectLine) fyne.CanvasObject {
	var parts []fyne.CanvasObject
	for _, l := range lines {
		parts = append(parts, s.effectLine(l))
	}
	return s.Kit.Card(parts...)
}

func (s Screens) seasonTwoWays(lines []view.EffectLine) []fyne.CanvasObject {
	if len(lines) == 0 {
		return nil
	}
	t := s.C.Book.Season
	return []fyne.CanvasObject{s.caption(t.TwoWayTitle), s.effectCard(lines), s.small(t.TwoWayHint)}
}

func (s Screens) seasonRide(r view.SeasonRide, open func(string)) fyne.CanvasObject {
	k := s.Kit
	lines := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, r.Title)}
	for _, words := range append([]string{r.When}, r.Words...) {
		if words != "" {
			lines = append(lines, k.Text(kit.Small, kit.Muted, words))
		}
	}
	row := k.ListRow(k.Row(12, kit.Centre, kit.Grow(k.Column(2, lines...), 1), k.Icon(kit.Forward, kit.Muted, 20)))
	return k.Touchable(row, r.Spoken, func() { open(r.ID) })
}
