package screens

import (
	"strings"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
	"stillair/sensors"
)

// ReadyActions are the actions of the screen before the ride.
type ReadyActions struct {
	Start, Permit, Bike, Guide, Air func()
	Tick                            func(i int)
	Dismiss                         func() // the notice was read
	Notify                          func() // makes the phone ask for permission to notify
}

// NoticeText is a notice to be shown first; empty: none.
type NoticeText struct{ Title, Text string }

// Ready draws the screen before the ride.
func (s Screens) Ready(v view.Ready, notice NoticeText, on ReadyActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Ready
	body := []fyne.CanvasObject{s.phoneCard(v, on)}
	if notice.Title != "" {
		card := k.Notice(kit.Info, kit.Accent, notice.Title, notice.Text, k.Text(kit.Strong, kit.Accent, s.C.Book.Common.Close))
		body = append(body, k.Touchable(card, notice.Title+" "+notice.Text, on.Dismiss))
	}
	for _, o := range v.Obstacles {
		var ways []fyne.CanvasObject
		if o.Ask {
			ways = append(ways, k.Button(kit.Quiet, kit.None, s.C.Book.Background.Allow, on.Notify))
		}
		body = append(body, k.Notice(kit.Caution, kit.Warn, o.Title, o.Words, ways...))
	}
	body = append(body, k.List(s.into(kit.BikeTab, v.Bike, v.Setup, on.Bike), s.airRow(v, on.Air)))
	if v.FirstTime {
		body = append(body, k.List(s.into(kit.Guide, t.FirstTime, t.FirstTimeHint, on.Guide)))
	}
	body = append(body, s.checkList(v, on))
	foot := k.Foot(k.Text(kit.Small, kit.Muted, v.Hint).Centred(), k.Button(kit.Main, kit.Record, t.Start, on.Start))
	if !v.CanStart {
		foot = k.Foot(k.Row(10, kit.Top, k.Icon(kit.Caution, kit.Warn, 22), kit.Grow(k.Text(kit.Body, kit.Plain, v.Hint), 1)))
	}
	return k.NewPage(k.Head(t.Title, "", nil), k.Column(12, body...), foot)
}

// airRow opens the screen of the air; it says so if the values are out of date.
func (s Screens) airRow(v view.Ready, tapped func()) fyne.CanvasObject {
	title := s.C.Book.More.AirTitle
	if v.AirOld == "" {
		return s.into(kit.Barometer, title, v.Air, tapped)
	}
	k := s.Kit
	old := k.Row(6, kit.Top, k.Inset(1, 0, k.Icon(kit.Caution, kit.Warn, 16)), kit.Grow(k.Text(kit.Small, kit.Warn, v.AirOld), 1))
	return k.Touchable(k.ListRow(s.intoBody(kit.Barometer, title, v.Air, old)), title+", "+v.Air+". "+v.AirOld, tapped)
}

// ConditionsActions are the actions of the screen of the air.
type ConditionsActions struct {
	Back, Still, Empty func()
}

// Conditions asks for the current air and wind, and for the wind at a weather
// station; old says that the values there are out of date.
func (s Screens) Conditions(fields, station []kit.Field, old string, on ConditionsActions) *kit.Page {
	k, t := s.Kit, s.C.Book.More
	var body []fyne.CanvasObject
	if old != "" {
		body = append(body, k.Notice(kit.Caution, kit.Warn, old, "",
			k.Button(kit.Usual, kit.Tick, s.C.Book.Parts.AirStill, on.Still), k.Button(kit.Quiet, kit.None, s.C.Book.Parts.AirEmpty, on.Empty)))
	}
	p := s.C.Book.Parts
	body = append(body, s.formGroup(FormGroup{Hint: p.AirHint, Fields: fields})...)
	body = append(body, s.formGroup(FormGroup{Title: p.StationTitle, Hint: p.StationHint, Fields: station})...)
	return k.NewPage(k.Head(t.AirTitle, s.C.Book.Common.Back, on.Back), k.Column(12, body...), nil)
}

func (s Screens) phoneCard(v view.Ready, on ReadyActions) fyne.CanvasObject {
	k := s.Kit
	parts := []fyne.CanvasObject{k.Text(kit.Heading, kit.Plain, s.C.Book.Ready.PhoneTitle)}
	for _, l := range v.Senses {
		parts = append(parts, s.senseLine(l))
	}
	if v.AskPermit {
		parts = append(parts, k.Button(kit.Usual, kit.None, s.C.Book.Ready.Permit, on.Permit))
	}
	return k.Card(parts...)
}

func senseSymbol(x sensors.Sensor) kit.Symbol {
	switch x {
	case sensors.SensorFix:
		return kit.Satellite
	case sensors.SensorMotion, sensors.SensorTurn:
		return kit.Motion
	case sensors.SensorPressure:
		return kit.Barometer
	case sensors.SensorSound:
		return kit.Motion
	}
	return kit.Storage
}

func (s Screens) senseLine(l view.SenseLine) fyne.CanvasObject {
	k := s.Kit
	symbol, ink := grade(l.Grade)
	words := k.Column(0, k.Text(kit.Strong, kit.Plain, l.Title), k.Text(kit.Body, kit.Muted, l.Words))
	if l.Way != "" {
		words = k.Column(4, words, k.Text(kit.Body, kit.Plain, l.Way))
	}
	if l.Detail != "" {
		words = k.Column(0, words, k.Text(kit.Small, kit.Muted, l.Detail))
	}
	return k.Row(14, kit.Top, k.Inset(4, 0, k.Icon(senseSymbol(l.Sensor), kit.Muted, 26)), kit.Grow(words, 1),
		k.Inset(4, 0, k.Icon(symbol, ink, 24))).Spoken(strings.TrimSpace(l.Title + ": " + l.Words + ". " + l.Way))
}

func (s Screens) checkList(v view.Ready, on ReadyActions) fyne.CanvasObject {
	k := s.Kit
	head := k.ListRow(k.Row(8, kit.Centre, kit.Grow(k.Text(kit.Heading, kit.Plain, s.C.Book.Ready.CheckTitle), 1),
		k.Text(kit.Body, kit.Muted, v.Checked)))
	rows := []fyne.CanvasObject{head}
	for i, c := range v.Checks {
		symbol, ink := kit.Box0, kit.Muted
		if c.Done {
			symbol, ink = kit.Box1, kit.Good
		}
		words := k.Column(1, k.Text(kit.Strong, kit.Plain, c.Title), k.Text(kit.Small, kit.Muted, c.Why))
		row := k.ListRow(k.Row(14, kit.Centre, k.Icon(symbol, ink, 28), kit.Grow(words, 1)))
		rows = append(rows, k.Touchable(row, c.Title, func() { on.Tick(i) }).Marked("checkbox", c.Done))
	}
	return k.List(rows...)
}
