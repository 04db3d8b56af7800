package screens

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// RidingActions are the actions while the bike stands.
type RidingActions struct {
	End, Say, Setup func()
	Pocket          func() // nil: the phone's own screen can be switched off
	Read            func() // the note about a gap was read
}

// Riding is the screen while the recorder runs. While the bike moves, nothing
// on it responds to a touch. It is redrawn only when more than a few words
// change, since drawing delays a browser's sensors.
type Riding struct {
	Root                  fyne.CanvasObject
	speed, recorded, safe *kit.Prose
	shape                 string
}

// Riding makes the screen; it is always dark.
func (s Screens) Riding(v view.Riding, on RidingActions) *Riding {
	s.Kit.Palette = kit.Dark()
	k := s.Kit
	r := &Riding{shape: shapeOf(v)}
	r.recorded = k.Text(kit.Body, kit.Muted, v.Recorded)
	r.safe = k.Text(kit.Body, kit.Muted, v.Safe)
	symbol, ink := kit.Tick, kit.Good
	if !v.SafeGood {
		symbol, ink = kit.Caution, kit.Warn
	}
	kept := k.Row(8, kit.Centre, k.Icon(symbol, ink, 20), kit.Grow(k.Column(0, r.recorded, r.safe), 1))
	if !v.Standing {
		kept = k.Middle(k.Row(8, kit.Centre, k.Icon(symbol, ink, 20), k.Column(0, r.recorded, r.safe)))
	}
	if v.Standing {
		r.Root = s.standing(v, kept, on)
		return r
	}
	r.speed = k.Text(kit.Display, kit.Plain, v.Speed).Centred()
	state := kit.Wait
	if v.Locked {
		state = kit.Lock
	}
	top := k.Middle(k.Row(10, kit.Centre, k.Icon(state, kit.Muted, 22), k.Text(kit.Body, kit.Muted, v.State)))
	middle := k.Column(-28, r.speed, k.Text(kit.Title, kit.Muted, v.Unit).Centred())
	parts := append([]fyne.CanvasObject{top, middle}, s.troubles(v, on)...)
	parts = append(parts, k.Spare(s.noticed(v)), kept)
	if !v.Locked {
		end := k.HoldButton(kit.Usual, kit.End, s.C.Book.Riding.End, on.End)
		parts = append(parts, k.Column(10, append(s.intoPocket(on), end)...))
	}
	r.Root = k.Spread(parts...)
	return r
}

// Update changes the words that change often and reports whether that is
// enough; if not, the screen must be rebuilt.
func (r *Riding) Update(v view.Riding) bool {
	if shapeOf(v) != r.shape {
		return false
	}
	r.recorded.SetText(v.Recorded)
	r.safe.SetText(v.Safe)
	if r.speed != nil {
		r.speed.SetText(v.Speed)
	}
	return true
}

// shapeOf is everything in a view that Update does not change.
func shapeOf(v view.Riding) string {
	v.Speed, v.Recorded, v.Safe = "", "", ""
	return fmt.Sprint(v)
}

func (s Screens) noticed(v view.Riding) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Riding
	if len(v.Noticed) == 0 {
		return k.Text(kit.Body, kit.Muted, t.NothingYet).Centred()
	}
	rows := []fyne.CanvasObject{}
	for i, n := range v.Noticed {
		ink := kit.Plain
		if i > 0 {
			ink = kit.Muted
		}
		rows = append(rows, k.Row(12, kit.Centre, k.Icon(kindSymbol(n.Kind), ink, 24), k.Text(kit.Heading, ink, n.Text)))
	}
	if v.Standing {
		return k.Column(10, rows...)
	}
	return k.Middle(k.Column(10, rows...))
}

// troubles are what is wrong, on a screen that cannot be scrolled: the first warning,
// and the rest as far as it fits.
func (s Screens) troubles(v view.Riding, on RidingActions) []fyne.CanvasObject {
	k := s.Kit
	var out []fyne.CanvasObject
	for i, w := range v.Warnings {
		var notice fyne.CanvasObject = k.Notice(kit.Caution, kit.Warn, w, "")
		if i > 0 {
			notice = k.Spare(notice)
		}
		out = append(out, notice)
	}
	if v.Missing != "" {
		out = append(out, k.Spare(s.missing(v, on)))
	}
	return out
}

func (s Screens) ridingWarnings(v view.Riding) fyne.CanvasObject {
	return s.Kit.Notice(kit.Caution, kit.Warn, v.Warnings[0], strings.Join(v.Warnings[1:], "\n"))
}

// standing is what the rider sees at a halt: the results so far, and the
// actions.
func (s Screens) standing(v view.Riding, kept fyne.CanvasObject, on RidingActions) fyne.CanvasObject {
	k, t := s.Kit, s.C.Book.Riding
	var body []fyne.CanvasObject
	if v.Missing != "" {
		body = append(body, s.missing(v, on))
	}
	if len(v.Warnings) > 0 {
		body = append(body, s.ridingWarnings(v))
	}
	body = append(body, s.soFar(v.SoFar)...)
	body = append(body, k.Card(append([]fyne.CanvasObject{k.Text(kit.Heading, kit.Plain, t.LastTitle)}, s.lastResults(v)...)...))
	if len(v.Last) > 0 && on.Say != nil {
		body = append(body, k.Button(kit.Usual, kit.Voice, t.Say, on.Say))
	}
	if len(v.Noticed) > 0 {
		body = append(body, k.Card(k.Text(kit.Heading, kit.Plain, t.NoticedTitle), s.noticed(v)))
	}
	body = append(body, kept)
	if v.Sensed != "" {
		body = append(body, k.Text(kit.Small, kit.Muted, v.Sensed))
	}
	body = append(body, s.intoPocket(on)...)
	setup := t.Setup
	if v.Setup != "" {
		setup += "\n(" + v.Setup + ")"
	}
	foot := k.Foot(k.Button(kit.Usual, kit.None, setup, on.Setup), k.HoldButton(kit.Main, kit.End, t.End, on.End))
	return k.NewPage(k.Head(v.State, "", nil), k.Column(14, body...), foot)
}

// soFar is the joint result of the coast-downs so far.
func (s Screens) soFar(v view.SoFar) []fyne.CanvasObject {
	if len(v.Pairs) == 0 {
		return nil
	}
	k := s.Kit
	parts := []fyne.CanvasObject{k.Text(kit.Small, kit.Muted, s.C.Book.Riding.SoFarTitle+" · "+strings.Join(v.Pairs, " · "))}
	for _, a := range v.Answers {
		if len(v.Answers) > 1 {
			parts = append(parts, k.Text(kit.Small, kit.Muted, a.Pair))
		}
		parts = append(parts, s.said(a.Said), k.Text(kit.Body, kit.Plain, a.Next))
	}
	if v.Next != "" {
		parts = append(parts, k.Text(kit.Body, kit.Muted, s.C.Names().DragArea()), k.Reading(v.Load), k.Text(kit.Body, kit.Plain, v.Next))
	}
	return []fyne.CanvasObject{k.Card(parts...)}
}

func (s Screens) lastResults(v view.Riding) []fyne.CanvasObject {
	k := s.Kit
	if len(v.Last) == 0 {
		return []fyne.CanvasObject{k.Text(kit.Body, kit.Muted, s.C.Book.Riding.LastNone)}
	}
	var out []fyne.CanvasObject
	for _, l := range v.Last {
		words := []fyne.CanvasObject{k.Text(kit.Body, kit.Plain, l.Title)}
		if l.Reading.Number != "" {
			words = append(words, k.Reading(l.Reading))
		}
		out = append(out, k.Row(12, kit.Top, k.Icon(kindSymbol(l.Kind), kit.Accent, 26), kit.Grow(k.Column(0, words...), 1)))
	}
	return out
}

// AskWeight asks whether the weight changed with a setup.
func (s Screens) AskWeight(setup string, fields []kit.Field, same, enter, back func()) fyne.CanvasObject {
	s.Kit.Palette = kit.Dark()
	k, t := s.Kit, s.C.Book.Riding
	body := []fyne.CanvasObject{k.Text(kit.Title, kit.Plain, fmt.Sprintf(t.WeightAsk, setup)),
		k.Button(kit.Main, kit.None, t.WeightSame, same)}
	var typed []fyne.CanvasObject
	for _, f := range fields {
		typed = append(typed, k.Field(f))
	}
	body = append(body, k.Card(append(typed, k.Button(kit.Usual, kit.None, t.WeightOther, enter))...))
	return k.NewPage(k.Head(t.Setup, s.C.Book.Common.Back, back), k.Column(16, body...), nil)
}

// PickSetup lets the rider say which setup is ridden from now on.
func (s Screens) PickSetup(rows []view.SetupRow, pick func(name string), back func()) fyne.CanvasObject {
	s.Kit.Palette = kit.Dark()
	k := s.Kit
	var list []fyne.CanvasObject
	for _, r := range rows {
		symbol := kit.None
		if r.Chosen {
			symbol = kit.Tick
		}
		list = append(list, s.into(symbol, r.Name, r.Detail, func() { pick(r.Name) }))
	}
	return k.NewPage(k.Head(s.C.Book.Riding.Setup, s.C.Book.Common.Back, back), k.List(list...), nil)
}
