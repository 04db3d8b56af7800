package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// BikesActions are the actions of the list of bikes.
type BikesActions struct {
	New       func()
	Edit      func(id string)
	Choose    func(id, setup string)
	AddSetup  func(id string)
	EditSetup func(id, setup string)
}

// Bikes draws the list of bikes with their setups.
func (s Screens) Bikes(rows []view.BikeRow, problems []string, on BikesActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Bikes
	var body []fyne.CanvasObject
	for _, p := range problems {
		body = append(body, k.Notice(kit.Caution, kit.Warn, p, ""))
	}
	if len(rows) == 0 {
		body = append(body, k.Card(k.Text(kit.Heading, kit.Plain, t.Empty), k.Text(kit.Body, kit.Muted, t.EmptyHint)))
	}
	for _, r := range rows {
		body = append(body, s.bikeCard(r, on))
	}
	rank := kit.Usual
	if len(rows) == 0 {
		rank = kit.Main
	}
	return k.NewPage(k.Head(t.Title, "", nil), k.Column(14, body...), k.Foot(k.Button(rank, kit.Plus, t.New, on.New)))
}

func (s Screens) bikeCard(r view.BikeRow, on BikesActions) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Bikes
	words := k.Column(1, k.Text(kit.Heading, kit.Plain, r.Name), k.Text(kit.Small, kit.Muted, r.Detail))
	head := k.ListRow(k.Row(12, kit.Centre, k.Icon(kit.BikeTab, kit.Accent, 30), kit.Grow(words, 1), k.Icon(kit.Pencil, kit.Accent, 22)))
	rows := []fyne.CanvasObject{k.Touchable(head, r.Name+", "+r.Detail, func() { on.Edit(r.ID) })}
	for _, st := range r.Setups {
		rows = append(rows, s.setupRow(r, st, on))
	}
	if len(r.Setups) == 0 {
		rows = append(rows, s.chooseRow(t.Choose, "", r.Chosen, func() { on.Choose(r.ID, "") }))
	}
	add := k.ListRow(k.Row(14, kit.Centre, k.Icon(kit.Plus, kit.Accent, 24), kit.Grow(k.Text(kit.Body, kit.Accent, t.AddSetup), 1)))
	rows = append(rows, k.Touchable(add, t.AddSetup, func() { on.AddSetup(r.ID) }))
	return k.List(rows...)
}

// setupRow is a row that selects a setup when touched; its pencil edits the setup.
func (s Screens) setupRow(r view.BikeRow, st view.SetupRow, on BikesActions) fyne.CanvasObject {
	k := s.Kit
	return k.Row(0, kit.Fill, kit.Grow(s.chooseRow(st.Name, st.Detail, st.Chosen, func() { on.Choose(r.ID, st.Name) }), 1),
		k.SymbolButton(kit.Pencil, s.C.Book.Bikes.EditSetup+" "+st.Name, func() { on.EditSetup(r.ID, st.Name) }), k.Space(0))
}

func (s Screens) chooseRow(title, detail string, chosen bool, tapped func()) fyne.CanvasObject {
	k := s.Kit
	symbol, ink := kit.Ring, kit.Muted
	if chosen {
		symbol, ink = kit.RingFull, kit.Good
	}
	lines := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, title)}
	if detail != "" {
		lines = append(lines, k.Text(kit.Small, kit.Muted, detail))
	}
	row := k.ListRow(k.Row(14, kit.Centre, k.Icon(symbol, ink, 24), kit.Grow(k.Column(1, lines...), 1)))
	return k.Touchable(row, title, tapped).Marked("radio", chosen)
}

// FormGroup is a card of fields.
type FormGroup struct {
	Title, Hint string
	Fields      []kit.Field
	Asks        []Question
	Add         string // label of a button that adds a field; empty: none
	OnAdd       func()
}

// Question is a switch in a form.
type Question struct {
	Name, Hint string
	Choice     Choice
}

// Form draws a screen with fields to fill in.
func (s Screens) Form(title string, groups []FormGroup, trouble string, back, save, remove func(), removeText, removeHint string) *kit.Page {
	k := s.Kit
	var body []fyne.CanvasObject
	if trouble != "" {
		body = append(body, k.Notice(kit.Caution, kit.Warn, trouble, ""))
	}
	for _, g := range groups {
		body = append(body, s.formGroup(g)...)
	}
	if remove != nil {
		body = append(body, k.Space(8), k.Button(kit.Usual, kit.Bin, removeText, remove), s.small(removeHint))
	}
	return k.NewPage(k.Head(title, s.C.Book.Common.Back, back), k.Column(12, body...),
		k.Foot(k.Button(kit.Main, kit.Tick, s.C.Book.Common.Save, save)))
}

func (s Screens) formGroup(g FormGroup) []fyne.CanvasObject {
	k := s.Kit
	var out, fields []fyne.CanvasObject
	if g.Title != "" {
		out = append(out, s.caption(g.Title))
	}
	if g.Hint != "" {
		out = append(out, s.small(g.Hint))
	}
	for _, f := range g.Fields {
		fields = append(fields, k.Field(f))
	}
	for _, q := range g.Asks {
		fields = append(fields, s.choice(q.Name, q.Hint, q.Choice))
	}
	if g.Add != "" {
		fields = append(fields, k.Button(kit.Quiet, kit.Plus, g.Add, g.OnAdd))
	}
	if fields != nil {
		out = append(out, k.Card(spaced(k, fields)...))
	}
	return out
}

func spaced(k kit.Kit, fields []fyne.CanvasObject) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for i, f := range fields {
		if i > 0 {
			out = append(out, k.Space(4))
		}
		out = append(out, f)
	}
	return out
}
