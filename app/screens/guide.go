package screens

import (
	"fmt"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
	"stillair/sensors"
)

// GuideSteps is the number of pages of the guide.
const GuideSteps = 6

// GuideActions are the actions of a page of the guide.
type GuideActions struct{ Back, Next, Done func() }

// Guide draws a page of the guided first coast-down, counted from 0.
func (s Screens) Guide(page int, on GuideActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Guide
	var body []fyne.CanvasObject
	title := ""
	switch page {
	case 0:
		title = t.WhatTitle
		body = []fyne.CanvasObject{k.Card(k.Plot(s.C.GuideCurve(), 200)), k.Text(kit.Body, kit.Plain, t.What)}
	case 1:
		title = t.RoadTitle
		body = []fyne.CanvasObject{k.Text(kit.Body, kit.Plain, t.Road), k.Notice(kit.Caution, kit.Warn, "", s.C.Names().CannotRoll()+" "+t.Caution)}
	case 2:
		title = t.BothTitle
		body = []fyne.CanvasObject{k.Card(k.Plot(s.C.GuideBothWays(), 200)), k.Text(kit.Body, kit.Plain, t.Both)}
	case 3:
		title = t.DoTitle
		var steps []fyne.CanvasObject
		for i, words := range t.Do {
			steps = append(steps, s.step(i+1, words))
		}
		body = []fyne.CanvasObject{k.Card(steps...)}
	case 4:
		title = t.StopTitle
		body = []fyne.CanvasObject{k.Notice(kit.Caution, kit.Warn, "", t.Stop)}
	default:
		title = t.AfterTitle
		body = []fyne.CanvasObject{k.Text(kit.Body, kit.Plain, t.After)}
	}
	body = append([]fyne.CanvasObject{k.Text(kit.Small, kit.Muted, fmt.Sprintf(t.Step, page+1, GuideSteps)),
		k.Progress(float64(page+1) / GuideSteps), k.Text(kit.Title, kit.Plain, title)}, body...)
	next := k.Button(kit.Main, kit.None, s.C.Book.Common.Next, on.Next)
	if page >= GuideSteps-1 {
		next = k.Button(kit.Main, kit.Tick, t.Ready, on.Done)
	}
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, on.Back), k.Column(14, body...), k.Foot(next))
}

// NeverRolls replaces the guide for a bike whose drive cannot be disengaged.
func (s Screens) NeverRolls(drive sensors.Drive, back, done func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Drive
	why := t.Belt
	if drive == sensors.DriveElectric {
		why = t.Motor
	}
	var ways []fyne.CanvasObject
	for i, words := range t.Can {
		ways = append(ways, s.step(i+1, words))
	}
	body := []fyne.CanvasObject{k.Text(kit.Body, kit.Plain, why), s.caption(t.CanTitle), k.Card(ways...), k.Notice(kit.Caution, kit.Warn, "", t.Limits)}
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, back), k.Column(14, body...), k.Foot(k.Button(kit.Main, kit.Tick, s.C.Book.Guide.Ready, done)))
}

// Advice explains to a novice how the coast-downs of a ride went.
func (s Screens) Advice(v view.Advice, back func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Advice
	var body []fyne.CanvasObject
	if v.HasGood {
		body = append(body, k.Notice(kit.Tick, kit.Good, t.Good, joinLine(v.Good, v.Pairs)))
	} else {
		body = append(body, k.Notice(kit.Info, kit.Accent, v.Good, ""))
	}
	if v.More != "" {
		body = append(body, k.Card(k.Text(kit.Strong, kit.Plain, s.C.Book.Load.MoreTitle), k.Text(kit.Body, kit.Plain, v.More)))
	}
	if len(v.Wrong) > 0 {
		body = append(body, s.caption(t.WentWrong))
	}
	for _, w := range v.Wrong {
		body = append(body, s.adviceCard(w))
	}
	return k.NewPage(k.Head(v.Title, s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}

func (s Screens) adviceCard(w view.AdviceLine) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Advice
	parts := []fyne.CanvasObject{k.Text(kit.Small, kit.Muted, w.Run)}
	if w.Why != "" {
		parts = append(parts, k.Row(8, kit.Top, k.Inset(2, 0, k.Icon(kit.Cross, kit.Warn, 18)), kit.Grow(k.Text(kit.Body, kit.Plain, w.Why), 1)))
	}
	parts = append(parts, k.Row(8, kit.Top, k.Inset(2, 0, k.Icon(kit.Forward, kit.Good, 18)),
		kit.Grow(k.Column(0, k.Text(kit.Small, kit.Muted, t.DoBetter), k.Text(kit.Strong, kit.Plain, w.Better)), 1)))
	return k.Card(parts...)
}
