package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// TrialActions are the actions of the screen that tests a phone; nil ones are
// not shown.
type TrialActions struct{ Back, Begin, Share func() }

// Trial draws the screen that tests a phone that the package has never run on.
func (s Screens) Trial(v view.Trial, h Handing, on TrialActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Trial
	var body []fyne.CanvasObject
	if v.Now != "" {
		body = append(body, k.Notice(kit.Wait, kit.Accent, v.Now, ""))
	} else {
		body = append(body, k.Card(k.Text(kit.Body, kit.Plain, t.Intro)))
	}
	if len(v.Lines) > 0 {
		var lines []fyne.CanvasObject
		for _, l := range v.Lines {
			lines = append(lines, s.trialLine(l))
		}
		body = append(body, k.Card(lines...))
	}
	body = append(body, s.handing(h)...)
	var foot []fyne.CanvasObject
	if on.Begin != nil {
		begin := t.Begin
		if len(v.Lines) > 0 {
			begin = t.Again
		}
		foot = append(foot, k.Button(kit.Usual, kit.None, begin, on.Begin))
	}
	if on.Share != nil {
		foot = append(foot, k.Button(kit.Main, kit.Hand, t.Share, on.Share), k.Text(kit.Small, kit.Muted, t.Shared).Centred())
	}
	page := fyne.CanvasObject(nil)
	if len(foot) > 0 {
		page = k.Foot(foot...)
	}
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, on.Back), k.Column(12, body...), page)
}

func (s Screens) trialLine(l view.SenseLine) fyne.CanvasObject {
	k := s.Kit
	symbol, ink := grade(l.Grade)
	words := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, l.Title), k.Text(kit.Body, kit.Muted, l.Words)}
	if l.Detail != "" {
		words = append(words, k.Text(kit.Small, kit.Muted, l.Detail))
	}
	return k.Row(14, kit.Top, kit.Grow(k.Column(0, words...), 1), k.Inset(4, 0, k.Icon(symbol, ink, 24))).Spoken(l.Title + ": " + l.Words)
}
