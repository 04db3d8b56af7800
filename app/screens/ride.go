package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// RideActions are the actions of the results of a recording.
type RideActions struct {
	Back, Edit, Advice, Power, Compare func()
	Copy                               *Copying // nil: nothing to save elsewhere
	Run                                func(id int)
	Load                               func(index int)
}

// Copying is the step after a ride that saves a copy of it elsewhere.
type Copying struct {
	Why     string // what may happen to the ride in the app's storage
	Handing Handing
	Save    func()
}

// Ride draws the results of a recording.
func (s Screens) Ride(v view.Ride, on RideActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Ride
	var body []fyne.CanvasObject
	for _, a := range v.Answers {
		body = append(body, s.answer(a, on.Compare))
	}
	if v.Invented {
		body = append(body, k.Notice(kit.Info, kit.Accent, s.C.Book.Common.Invented, ""))
	}
	if v.Saved != "" {
		body = append(body, k.Notice(kit.Tick, kit.Good, "", v.Saved))
	}
	if c := on.Copy; c != nil {
		body = append(append(body, s.handing(c.Handing)...), k.Button(kit.Usual, kit.Hand, s.C.Book.Riding.Copy, c.Save), s.small(c.Why))
	}
	for _, l := range v.Loads {
		body = append(body, s.loadCard(l, on))
	}
	body = append(body, s.passes(v.Passes)...)
	if v.NoPairs {
		body = append(body, k.Notice(kit.Info, kit.Accent, "", t.NoPairs))
	}
	if len(v.Runs)+len(v.Rejected)+len(v.Passes) == 0 {
		body = append(body, k.Card(k.Text(kit.Heading, kit.Plain, t.NoRuns), k.Text(kit.Body, kit.Muted, t.NoRunsHint)))
	}
	if v.Advice {
		body = append(body, k.List(s.into(kit.Guide, s.C.Book.Advice.Title, "", on.Advice)))
	}
	if v.Power {
		body = append(body, k.List(s.into(kit.SPull, s.C.Names().Power(), s.C.Book.Power.Open, on.Power)))
	}
	body = append(body, s.runList(t.RunsTitle, v.Runs, on)...)
	body = append(body, s.stops(v.Stops)...)
	body = append(body, s.runList(t.RejectedTitle, v.Rejected, on)...)
	if len(v.Runs)+len(v.Passes) > 0 {
		body = append(body, s.small(s.C.Book.Common.PlusMinus))
	}
	for _, w := range v.Warnings {
		body = append(body, k.Notice(kit.Info, kit.Accent, "", w))
	}
	if len(v.Notes)+len(v.Sensed) > 0 {
		body = append(body, s.caption(t.NotesTitle))
		body = append(body, s.sensed(v.Sensed)...)
		for _, n := range v.Notes {
			body = append(body, s.small(n))
		}
	}
	head := k.Head(v.Title, s.C.Book.Common.Back, on.Back, s.editButton(on.Edit)...)
	where := k.Text(kit.Small, kit.Muted, joinLine(v.When, v.Length))
	return k.NewPage(head, k.Column(12, append([]fyne.CanvasObject{where}, body...)...), nil)
}

// sensed draws how the phone's sensors worked.
func (s Screens) sensed(lines []view.SenseLine) []fyne.CanvasObject {
	if len(lines) == 0 {
		return nil
	}
	k := s.Kit
	var parts []fyne.CanvasObject
	for _, l := range lines {
		symbol := senseSymbol(l.Sensor)
		if l.Sensor == "" {
			symbol = kit.Wait // the clocks
		}
		words := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, l.Title), k.Text(kit.Small, kit.Muted, l.Words)}
		if l.Detail != "" {
			words = append(words, k.Text(kit.Small, kit.Muted, l.Detail))
		}
		parts = append(parts, k.Row(14, kit.Top, k.Inset(4, 0, k.Icon(symbol, kit.Muted, 24)), kit.Grow(k.Column(0, words...), 1)).
			Spoken(l.Title+": "+l.Words+" "+l.Detail))
	}
	return []fyne.CanvasObject{k.Card(parts...)}
}

func (s Screens) editButton(edit func()) []fyne.CanvasObject {
	if edit == nil {
		return nil
	}
	return []fyne.CanvasObject{s.Kit.SymbolButton(kit.Pencil, s.C.Book.Rides.Edit, edit)}
}

func joinLine(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "\n" + b
}

func (s Screens) loadCard(l view.LoadCard, on RideActions) fyne.CanvasObject {
	k, name := s.Kit, s.C.Names()
	title := name.Loads()
	if l.Setup != "" {
		title = l.Setup
	}
	head := k.Row(8, kit.Centre, kit.Grow(k.Column(0, k.Text(kit.Heading, kit.Plain, title), k.Text(kit.Small, kit.Muted, l.Pairs)), 1),
		k.Icon(kit.Forward, kit.Muted, 20))
	card := k.Card(head,
		k.Column(0, k.Text(kit.Body, kit.Muted, name.DragArea()), k.Reading(l.CdA)),
		k.Column(0, k.Text(kit.Body, kit.Muted, name.Rolling()), k.Reading(l.Crr)))
	spoken := title + ", " + name.DragArea() + " " + l.CdA.Spoken() + ", " + name.Rolling() + " " + l.Crr.Spoken()
	return k.Touchable(card, spoken, func() { on.Load(l.Index) })
}

func (s Screens) runList(title string, rows []view.RunRow, on RideActions) []fyne.CanvasObject {
	if len(rows) == 0 {
		return nil
	}
	var list []fyne.CanvasObject
	for _, r := range rows {
		list = append(list, s.runRow(r, on))
	}
	return []fyne.CanvasObject{s.caption(title), s.Kit.List(list...)}
}

func (s Screens) runRow(r view.RunRow, on RideActions) fyne.CanvasObject {
	k := s.Kit
	symbol, ink, tone := kindSymbol(r.Kind), kit.Accent, 0
	if r.Reason != "" {
		ink, tone = kit.Muted, 1
	}
	lines := []fyne.CanvasObject{k.Row(8, kit.Centre, k.Icon(symbol, ink, 20), kit.Grow(k.Text(kit.Body, kit.Plain, r.Title), 1))}
	switch {
	case r.Reason != "":
		lines = append(lines, k.Row(6, kit.Top, k.Inset(2, 0, k.Icon(kit.Cross, kit.Warn, 15)), kit.Grow(k.Text(kit.Small, kit.Plain, r.Reason), 1)))
	case r.Reading.Number != "":
		lines = append(lines, k.SmallReading(r.Reading))
	}
	if r.Detail != "" {
		lines = append(lines, k.Text(kit.Small, kit.Muted, r.Detail))
	}
	row := k.ListRow(k.Row(14, kit.Centre, k.Spark(r.X, r.Y, tone), kit.Grow(k.Column(1, lines...), 1), k.Icon(kit.Forward, kit.Muted, 18)))
	return k.Touchable(row, r.Spoken, func() { on.Run(r.ID) })
}

// Busy is shown while a recording is measured; share is 0 to 1.
func (s Screens) Busy(title string, share float64, back func()) *kit.Page {
	k := s.Kit
	return k.NewPage(k.Head(title, s.C.Book.Common.Back, back),
		k.Card(k.Text(kit.Heading, kit.Plain, s.C.Book.Ride.Analysing), k.Progress(share)), nil)
}

// Failed says why a recording could not be measured.
func (s Screens) Failed(title, why string, back, edit func()) *kit.Page {
	k := s.Kit
	return k.NewPage(k.Head(title, s.C.Book.Common.Back, back, s.editButton(edit)...), k.Notice(kit.Caution, kit.Warn, "", why), nil)
}
