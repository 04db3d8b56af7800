package screens

import (
	"fyne.io/fyne/v2"

	"stillair/app/screens/kit"
	"stillair/app/text"
)

// Choice is one switch of the choices.
type Choice struct {
	Options []string
	Chosen  int
	Pick    func(int)
}

// MoreView holds the rider's settings, and the actions to change them.
type MoreView struct {
	Units, Power, Language, Look, TextSize, Aloud Choice
	HasVoice                                      bool
	Sound                                         *Choice // nil: there is no microphone
	SoundTrouble                                  string
	Air                                           []kit.Field
	Trouble                                       string
	Guide                                         func()
	Test                                          func() // of a phone that the package has never run on; nil: not shown
}

// More draws the settings and the information about the app.
func (s Screens) More(v MoreView) *kit.Page {
	k, t := s.Kit, s.C.Book.More
	var body []fyne.CanvasObject
	if v.Trouble != "" {
		body = append(body, k.Notice(kit.Caution, kit.Warn, v.Trouble, ""))
	}
	choices := []fyne.CanvasObject{s.choice(t.Units, "", v.Units), s.choice(s.C.Names().PowerQuantity(), "", v.Power), s.choice(t.Language, "", v.Language), s.choice(t.Look, "", v.Look),
		s.choice(t.TextSize, "", v.TextSize)}
	if v.HasVoice {
		choices = append(choices, s.choice(t.Aloud, t.AloudHint, v.Aloud))
	}
	if v.Sound != nil {
		choices = append(choices, s.choice(s.C.Book.Hearing.Use, s.C.Book.Hearing.UseHint, *v.Sound))
		if v.SoundTrouble != "" {
			choices = append(choices, k.Notice(kit.Caution, kit.Warn, v.SoundTrouble, ""))
		}
	}
	ways := []fyne.CanvasObject{s.into(kit.Guide, t.GuideAgain, "", v.Guide)}
	if v.Test != nil {
		ways = append(ways, s.into(kit.Tick, s.C.Book.Trial.Title, "", v.Test))
	}
	body = append(body, k.List(ways...), k.Card(spaced(k, choices)...))
	body = append(body, s.formGroup(FormGroup{Title: t.AirTitle, Hint: t.AirHint, Fields: v.Air})...)
	for _, p := range []struct{ title, words string }{{t.SafetyTitle, t.Safety}, {t.AccuracyTitle, t.Accuracy},
		{t.PrivacyTitle, t.Privacy}, {t.AboutTitle, t.About + " " + t.PaletteNote}} {
		body = append(body, s.caption(p.title), k.Card(k.Text(kit.Body, kit.Plain, p.words)))
	}
	return k.NewPage(k.Head(t.Title, "", nil), k.Column(12, body...), nil)
}

func (s Screens) choice(name, hint string, c Choice) fyne.CanvasObject {
	k := s.Kit
	parts := []fyne.CanvasObject{k.Text(kit.Strong, kit.Plain, name), k.Switch(c.Options, c.Chosen, c.Pick)}
	if hint != "" {
		parts = append(parts, k.Text(kit.Small, kit.Muted, hint))
	}
	return k.Column(5, parts...)
}

// Languages lists every language by its own name, the system's first.
func Languages(b *text.Book) []string {
	names := []string{b.More.System}
	for _, x := range text.All() {
		names = append(names, x.Language)
	}
	return names
}
