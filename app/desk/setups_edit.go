package main

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"stillair/sensors"
)

// setupEdits are the changes asked for, as they were typed.
type setupEdits struct{ splits, halts, names, masses, tyres, notes []string }

func (e *setupEdits) none() bool {
	return len(e.splits)+len(e.halts)+len(e.names)+len(e.masses)+len(e.tyres)+len(e.notes) == 0
}

// mostSetupText bounds what may be said of a setup, in characters: a reader of
// recordings takes no longer text than 10 000 bytes.
const mostSetupText = 2000

// apply changes the table: splits first, so that all numbers are of the setups
// after them.
func (e *setupEdits) apply(t *setupTable) error {
	for _, typed := range e.splits {
		if err := t.split("split", typed, t.time); err != nil {
			return err
		}
	}
	for _, typed := range e.halts {
		if err := t.split("split-halt", typed, t.haltTime); err != nil {
			return err
		}
	}
	for _, x := range []struct {
		flag  string
		typed []string
		set   func(s *sensors.Setup, text string) error
	}{
		{"name", e.names, func(s *sensors.Setup, text string) error { s.Name = text; return nil }},
		{"mass", e.masses, setMass},
		{"tyres", e.tyres, func(s *sensors.Setup, text string) error { s.Tyres = text; return nil }},
		{"notes", e.notes, func(s *sensors.Setup, text string) error { s.Notes = text; return nil }},
	} {
		for _, typed := range x.typed {
			number, text, err := cutEdit(x.flag, typed)
			if err != nil {
				return err
			}
			n, err := strconv.Atoi(number)
			if err != nil || n < 1 || n > len(t.setups) {
				return usage("--%s %q: there is no setup %s; there are %d", x.flag, typed, number, len(t.setups))
			}
			if err := x.set(&t.setups[n-1], text); err != nil {
				return err
			}
		}
	}
	return nil
}

// cutEdit parts "2=text".
func cutEdit(flag, typed string) (key, text string, err error) {
	key, text, ok := strings.Cut(typed, "=")
	key, text = strings.TrimSpace(key), strings.TrimSpace(text)
	switch {
	case !ok || key == "" || text == "":
		return "", "", usage("--%s %q lacks a part: write it as 2=…", flag, typed)
	case utf8.RuneCountInString(text) > mostSetupText:
		return "", "", usage("--%s: a text may have %d characters, not %d", flag, mostSetupText, utf8.RuneCountInString(text))
	case !utf8.ValidString(text):
		return "", "", usage("--%s: the text is not UTF-8", flag)
	}
	return key, text, nil
}

func setMass(s *sensors.Setup, text string) error {
	kg, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "kg")), 64)
	if err != nil || !(kg >= 30 && kg <= 2000) {
		return usage("--mass %q is not possible; it must be from 30 to 2000 kg", text)
	}
	s.Mass = kg
	return nil
}

// split has another setup begin. Where it has the name of one that is there, it
// is that one again, with its mass and tyres. Otherwise it has the tyres of the
// setup that it parts and no mass, which is asked for.
func (t *setupTable) split(flag, typed string, when func(string) (float64, error)) error {
	key, name, err := cutEdit(flag, typed)
	if err != nil {
		return err
	}
	at, err := when(key)
	if err != nil {
		return err
	}
	if slices.ContainsFunc(t.setups, func(s sensors.Setup) bool { return math.Abs(s.From-at) < 0.5 }) {
		return usage("--%s %q: a setup begins there already; --name gives it another name", flag, typed)
	}
	s := sensors.Setup{From: at, Name: name, Mass: math.NaN(), Tyres: t.at(at).Tyres}
	if i := slices.IndexFunc(t.setups, func(s sensors.Setup) bool { return s.Name == name }); i >= 0 {
		s.Mass, s.Tyres = t.setups[i].Mass, t.setups[i].Tyres
	}
	t.setups = append(t.setups, s)
	t.sort()
	return nil
}

func (t *setupTable) at(time float64) sensors.Setup {
	return sensors.Ride{Setups: t.setups}.SetupAt(time)
}

func (t *setupTable) sort() {
	slices.SortStableFunc(t.setups, func(a, b sensors.Setup) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return 0
	})
}

// time reads "750", "12:30" or "1:02:03" since the start as a time on the clock.
func (t *setupTable) time(typed string) (float64, error) {
	seconds, parts := 0.0, strings.Split(typed, ":")
	for i, part := range parts {
		x, err := strconv.ParseFloat(part, 64)
		if err != nil || !(x >= 0 && x < 1e6) || i > 0 && x >= 60 || i > 2 {
			return 0, usage("%q is no time: write minutes and seconds, as in 12:30", typed)
		}
		seconds = 60*seconds + x
	}
	if at := t.from + seconds; at > t.from && at < t.to {
		return at, nil
	}
	return 0, usage("%s is not within the recording, which is %s long", typed, clock(t.to-t.from))
}

// haltTime is the middle of a halt: its setup was changed while the bike stood.
func (t *setupTable) haltTime(typed string) (float64, error) {
	n, err := strconv.Atoi(typed)
	if err != nil || n < 1 || n > len(t.halts) {
		return 0, usage("there is no halt %s; the recording has %d", typed, len(t.halts))
	}
	return (t.halts[n-1].from + t.halts[n-1].to) / 2, nil
}

// halt is a stretch of time in which the bike stood.
type halt struct{ from, to float64 }

// What counts as a halt. A receiver at rest shows a few tenths of a metre per
// second, and nobody changes a bike in less than ten seconds (common practice).
const (
	haltSpeed   = 1.0 // m/s
	haltSeconds = 10.0
)

// haltsOf finds the halts in the fixes. A halt goes on through a hole without
// fixes: where the bike stands behind it as before it, it is taken to have stood.
func haltsOf(fixes []sensors.Fix) []halt {
	var out []halt
	var now *halt
	end := func() {
		if now != nil && now.to-now.from >= haltSeconds {
			out = append(out, *now)
		}
		now = nil
	}
	for _, f := range fixes {
		switch {
		case math.IsNaN(f.Speed):
		case f.Speed >= haltSpeed:
			end()
		case now == nil:
			now = &halt{f.T, f.T}
		default:
			now.to = f.T
		}
	}
	end()
	return out
}
