package main

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"stillair/app/relabel"
	"stillair/sensors"
)

// setupEdits are the changes asked for, as they were typed.
type setupEdits struct{ splits, halts, names, masses, tyres, notes []string }

func (e *setupEdits) none() bool {
	return len(e.splits)+len(e.halts)+len(e.names)+len(e.masses)+len(e.tyres)+len(e.notes) == 0
}

// mostSetupText bounds what may be said about a setup, in characters: a reader of
// recordings takes no longer text than 10 000 bytes.
const mostSetupText = 2000

// apply changes the table: splits first, so that all numbers are of the setups
// after them.
func (e *setupEdits) apply(t *relabel.Table) error {
	for _, typed := range e.splits {
		if err := split(t, "split", typed, splitTime); err != nil {
			return err
		}
	}
	for _, typed := range e.halts {
		if err := split(t, "split-halt", typed, haltTime); err != nil {
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
			if err != nil || n < 1 || n > len(t.Setups) {
				return usage("--%s %q: there is no setup %s; there are %d", x.flag, typed, number, len(t.Setups))
			}
			if err := x.set(&t.Setups[n-1], text); err != nil {
				return err
			}
		}
	}
	return nil
}

// cutEdit splits "2=text".
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

// split begins another setup.
func split(t *relabel.Table, flag, typed string, when func(*relabel.Table, string) (float64, error)) error {
	key, name, err := cutEdit(flag, typed)
	if err != nil {
		return err
	}
	at, err := when(t, key)
	if err != nil {
		return err
	}
	if t.Split(at, name) != nil {
		return usage("--%s %q: a setup begins there already; --name gives it another name", flag, typed)
	}
	return nil
}

func splitTime(t *relabel.Table, typed string) (float64, error) {
	at, err := t.Time(typed)
	switch {
	case errors.Is(err, relabel.ErrOutside):
		return 0, usage("%s is not within the recording, which is %s long", typed, clock(t.To-t.From))
	case err != nil:
		return 0, usage("%q is no time: write minutes and seconds, as in 12:30", typed)
	}
	return at, nil
}

func haltTime(t *relabel.Table, typed string) (float64, error) {
	n, err := strconv.Atoi(typed)
	if err != nil || n < 1 || n > len(t.Halts) {
		return 0, usage("there is no halt %s; the recording has %d", typed, len(t.Halts))
	}
	return t.Halts[n-1].Middle(), nil
}
