package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/formats"
	"stillair/app/screens/kit"
)

// EditActions are the actions for a recording; nil ones are not shown.
type EditActions struct {
	Back, Report, ShareAway, ShareRide, ShareResults, Others, Delete, Values, Setups func()
	Name, Note                                                                       func(string)
}

// Handing is the progress of sharing a file: that it is being made, or what
// went wrong. Both may be empty.
type Handing struct{ Making, Trouble string }

// EditRide draws the screen where a recording is named, annotated, shared or deleted.
func (s Screens) EditRide(name, note string, h Handing, on EditActions) *kit.Page {
	k, t, o := s.Kit, s.C.Book.Rides, s.C.Book.Formats
	var share []fyne.CanvasObject
	add := func(title, words string, tapped func()) {
		if tapped != nil {
			share = append(share, s.into(kit.Hand, title, words, tapped))
		}
	}
	add(o.Report, o.ReportHint, on.Report)
	add(t.ShareAway, t.ShareAwayHint, on.ShareAway)
	add(t.ShareRide, t.SharePositions, on.ShareRide)
	add(t.ShareResults, "", on.ShareResults)
	add(o.Open, o.OpenHint, on.Others)
	body := []fyne.CanvasObject{
		k.Card(k.Field(kit.Field{Name: t.Name, Text: name, Example: t.NamePlaceholder, Changed: on.Name}),
			k.Field(kit.Field{Name: t.Note, Text: note, Lines: 3, Changed: on.Note})),
		k.List(s.into(kit.PairTab, s.C.Book.Relabel.Title, s.C.Book.Relabel.Open, on.Setups), s.into(kit.BikeTab, s.C.Book.Parts.ValuesTitle, "", on.Values)),
		s.caption(t.Share),
	}
	body = append(append(body, s.handing(h)...), k.List(share...), s.small(t.ShareHint),
		k.Space(8), k.Button(kit.Usual, kit.Bin, t.Delete, on.Delete), s.small(t.DeleteHint))
	return k.NewPage(k.Head(t.Edit, s.C.Book.Common.Back, on.Back), k.Column(12, body...), nil)
}

func (s Screens) handing(h Handing) []fyne.CanvasObject {
	switch {
	case h.Making != "":
		return []fyne.CanvasObject{s.Kit.Notice(kit.Wait, kit.Accent, "", h.Making)}
	case h.Trouble != "":
		return []fyne.CanvasObject{s.Kit.Notice(kit.Caution, kit.Warn, h.Trouble, "")}
	}
	return nil
}

// Formats lists the formats for other programs.
func (s Screens) Formats(all []formats.Format, h Handing, give func(formats.Format), back func()) *kit.Page {
	k, t := s.Kit, s.C.Book.Formats
	words := map[formats.Kind][2]string{
		formats.Tables: {t.Tables, t.TablesHint}, formats.Columns: {t.Columns, t.ColumnsHint}, formats.Samples: {t.Samples, t.SamplesHint},
		formats.Track: {t.Track, t.TrackHint}, formats.Lines: {t.Lines, t.LinesHint},
	}
	var list []fyne.CanvasObject
	for _, f := range all {
		if w, ok := words[f.Kind]; ok {
			list = append(list, s.into(kit.Hand, w[0], w[1], func() { give(f) }))
		}
	}
	body := append(append([]fyne.CanvasObject{s.small(t.Hint)}, s.handing(h)...), k.List(list...))
	return k.NewPage(k.Head(t.Title, s.C.Book.Common.Back, back), k.Column(12, body...), nil)
}
