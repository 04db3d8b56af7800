package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// Run draws a run with its curve.
func (s Screens) Run(v view.Run, back func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Run
	body := []fyne.CanvasObject{}
	if v.Detail != "" {
		body = append(body, k.Text(kit.Body, kit.Muted, v.Detail))
	}
	if len(v.Reasons) > 0 {
		body = append(body, k.Notice(kit.Cross, kit.Warn, t.WhyNot, "", s.paragraphs(append(v.Reasons, t.StillKept))...))
	}
	if len(v.Cautions) > 0 {
		body = append(body, k.Notice(kit.Caution, kit.Warn, t.Cautions, "", s.paragraphs(v.Cautions)...))
	}
	body = append(body, k.Card(k.Plot(v.Curve, 250)))
	if v.HasFit {
		body = append(body, k.Card(k.Text(kit.Strong, kit.Plain, t.Residual), k.Plot(v.Residual, 150)))
	}
	if len(v.Marks) > 0 {
		body = append(body, s.caption(t.MarksTitle), s.marks(v), s.small(s.C.Book.Common.PlusMinus))
	}
	body = append(body, s.pullPower(v)...)
	for _, h := range v.Hints {
		body = append(body, s.small(h))
	}
	return k.NewPage(k.Head(v.Title, s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}

func (s Screens) paragraphs(texts []string) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, t := range texts {
		out = append(out, s.Kit.Text(kit.Body, kit.Plain, t))
	}
	return out
}

// largeText is the scale of text from which a mark and both of its times do not fit
// side by side on a narrow phone.
const largeText = 1.1

// marks draws the table of times: a row for each mark, with a second column for
// times from one foot after the start, if there are any.
func (s Screens) marks(v view.Run) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Run
	var rows []fyne.CanvasObject
	if v.Rollout {
		rows = append(rows, k.Inset(8, 16, s.markRow(k.Space(1),
			k.Text(kit.Small, kit.Muted, t.AfterFoot), k.Text(kit.Small, kit.Muted, t.FromMoving))))
	}
	for _, m := range v.Marks {
		name := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, m.Name)}
		if m.More != "" {
			name = append(name, k.Text(kit.Small, kit.Muted, m.More))
		}
		times := []fyne.CanvasObject{s.cell(m.Time)}
		if v.Rollout {
			times = []fyne.CanvasObject{s.cell(m.Rollout), s.cell(m.Time)}
		}
		rows = append(rows, k.ListRow(s.markRow(k.Column(0, name...), times...)))
	}
	return k.List(rows...)
}

// markRow is a name beside its times, or above two of them in large text.
func (s Screens) markRow(name fyne.CanvasObject, times ...fyne.CanvasObject) fyne.CanvasObject {
	k := s.Kit
	cells := []fyne.CanvasObject{kit.Grow(name, 21)}
	above := k.Scale > largeText && len(times) > 1
	if above {
		cells = nil
	}
	for _, t := range times {
		cells = append(cells, kit.Grow(t, 20))
	}
	if above {
		return k.Column(2, name, k.Row(4, kit.Centre, cells...))
	}
	return k.Row(4, kit.Centre, cells...)
}

// cell is a time in a column whose heading has the unit.
func (s Screens) cell(r view.Reading) fyne.CanvasObject {
	if r.Number == "" {
		return s.Kit.Text(kit.Body, kit.Muted, "–")
	}
	spoken := r.Spoken()
	r.Unit = ""
	return s.Kit.SmallReading(r).Spoken(spoken)
}

// Load draws all coast-downs of a setup.
func (s Screens) Load(v view.Load, back func()) *kit.Page {
	k, t, name := s.Kit, s.C.Book.Load, s.C.Names()
	body := []fyne.CanvasObject{k.Text(kit.Body, kit.Muted, joinLine(v.Setup, v.Pairs)),
		s.quantity(name.DragArea(), v.CdA, v.CdABand, v.CdASure, v.CdAMeans),
		s.quantity(name.Rolling(), v.Crr, v.CrrBand, v.CrrSure, v.CrrMeans)}
	if len(v.Curves.Lines) > 0 {
		body = append(body, s.caption(t.AllRuns), k.Card(k.Plot(v.Curves, 260), k.Text(kit.Small, kit.Muted, v.CurvesHint)))
	}
	body = append(body,
		s.caption(t.ShareTitle), k.Card(k.Plot(v.Force, 220), k.Text(kit.Body, kit.Plain, v.Power), k.Text(kit.Small, kit.Muted, v.Assumed)),
		s.caption(t.MoreTitle), k.Card(k.Text(kit.Body, kit.Plain, v.MorePairs)))
	if len(v.Notes) > 0 {
		body = append(body, s.caption(t.Notes))
		for _, n := range v.Notes {
			body = append(body, s.small(n))
		}
	}
	return k.NewPage(k.Head(v.Title, s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}

func (s Screens) quantity(name string, r view.Reading, band view.Interval, sure, means string) fyne.CanvasObject {
	k := s.Kit
	return k.Card(k.Column(0, k.Text(kit.Heading, kit.Plain, name), k.Reading(r)), k.Interval(band),
		k.Text(kit.Body, kit.Plain, means), k.Text(kit.Small, kit.Muted, sure))
}
