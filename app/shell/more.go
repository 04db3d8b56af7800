package shell

import (
	"stillair/app/screens"
	"stillair/app/screens/kit"
	"stillair/app/store"
	"stillair/app/text"
	"stillair/sensors"
)

// changed keeps the choices and redraws the app with them.
func (s *Shell) changed(change func(*store.Choices)) {
	change(&s.choices)
	s.keepChoices()
	s.look()
	s.again()
}

// among makes a switch of values, the first of which is taken where none of
// them is chosen.
func (s *Shell) among(words, values []string, chosen string, set func(*store.Choices, string)) screens.Choice {
	c := screens.Choice{Options: words, Pick: func(i int) { s.changed(func(ch *store.Choices) { set(ch, values[i]) }) }}
	for i, v := range values {
		if v == chosen {
			c.Chosen = i
		}
	}
	return c
}

// textSizes are the sizes offered beside the system's own.
var textSizes = [3]float32{1, 1.2, 1.45}

func (s *Shell) more() *kit.Page {
	t, ch := s.screen.C.Book.More, s.choices
	tags := []string{""}
	for _, b := range text.All() {
		tags = append(tags, b.Tag)
	}
	units, powers := []string{"metric", "imperial"}, []string{"kW", "hp"}
	v := screens.MoreView{
		Units: s.among([]string{t.Metric, t.Imperial}, units, string(s.screen.C.System), func(c *store.Choices, v string) { c.Units = v }),
		Power: s.among([]string{"kW", s.screen.C.Book.Horsepower}, powers, string(s.screen.C.PowerUnit), func(c *store.Choices, v string) { c.Power = v }),
		Language: s.among(screens.Languages(s.screen.C.Book), tags, ch.Language,
			func(c *store.Choices, v string) { c.Language = v }),
		Look: s.among([]string{t.LookSystem, t.LookLight, t.LookDark}, []string{"", "light", "dark"}, ch.Look,
			func(c *store.Choices, v string) { c.Look = v }),
		TextSize: s.sizes(), HasVoice: s.dev.Voice != nil, Air: s.air(), Guide: s.openGuide,
	}
	aloud := 0
	if ch.Aloud {
		aloud = 1
	}
	v.Aloud = screens.Choice{Options: []string{t.Off, t.On}, Chosen: aloud,
		Pick: func(i int) { s.changed(func(c *store.Choices) { c.Aloud = i == 1 }) }}
	v.Sound, v.SoundTrouble = s.hearing(), s.unheard
	if s.dev.Trial {
		v.Test = s.openTrial
	}
	return s.screen.More(v)
}

func (s *Shell) sizes() screens.Choice {
	t := s.screen.C.Book.More
	c := screens.Choice{Options: []string{t.TextNormal, t.TextLarge, t.TextLargest},
		Pick: func(i int) { s.changed(func(c *store.Choices) { c.TextSize = textSizes[i] }) }}
	for i, size := range textSizes {
		if s.choices.TextSize == size {
			c.Chosen = i
		}
	}
	return c
}

// openGuide opens the guide at its first page, over where one is; for a bike
// that never rolls free, what else it can be measured by.
func (s *Shell) openGuide() {
	if s.neverRolls() {
		drive := sensors.Drive(s.bike().Drive)
		s.push(func() *kit.Page { return s.screen.NeverRolls(drive, s.goBack, s.guideDone) })
		return
	}
	s.guidePage(0)
}

// neverRolls reports whether the drive of the bike chosen never lets its wheel go.
func (s *Shell) neverRolls() bool {
	b := s.bike()
	return b != nil && !sensors.Drive(b.Drive).RollsFree()
}

func (s *Shell) guidePage(page int) {
	s.push(func() *kit.Page {
		return s.screen.Guide(page, screens.GuideActions{Back: s.goBack, Next: func() { s.guidePage(page + 1) }, Done: s.guideDone})
	})
}

func (s *Shell) guideDone() {
	s.home(s.place)
	s.place = screens.PlaceRide
	s.home(s.place)
	s.changed(func(c *store.Choices) { c.GuideSet = true })
}
