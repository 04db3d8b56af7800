package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/view"
)

// RelabelActions are the actions for the setups of a ride.
type RelabelActions struct {
	Back, Save, Time func()
	Setup, Halt      func(int)
}

// Relabel lists the setups of a finished ride, and the times at which another may
// begin.
func (s Screens) Relabel(v view.Relabel, on RelabelActions) *kit.Page {
	k, t := s.Kit, s.C.Book.Relabel
	var setups, halts []fyne.CanvasObject
	for i, r := range v.Setups {
		detail := r.Detail
		if r.Ask != "" {
			detail += "\n" + r.Ask
		}
		setups = append(setups, s.into(kit.Pencil, r.Name, detail, func() { on.Setup(i) }))
	}
	for i, h := range v.Halts {
		halts = append(halts, s.into(kit.Plus, h, "", func() { on.Halt(i) }))
	}
	body := []fyne.CanvasObject{s.small(t.Hint), k.List(setups...)}
	if len(halts) > 0 {
		body = append(body, s.caption(t.AtHalt), k.List(halts...))
	}
	body = append(body, k.List(s.into(kit.Plus, t.AtTime, "", on.Time)))
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, on.Back), k.Column(12, body...),
		k.Foot(k.Button(kit.Main, kit.Tick, s.C.Book.Common.Save, on.Save)))
}
