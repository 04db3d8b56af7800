package words

import (
	"compress/gzip"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"stillair/export/shown"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// styles are all the ways in which a person may read.
func styles() []shown.Style {
	var out []shown.Style
	for _, l := range shown.Languages() {
		for _, s := range []shown.System{shown.Metric, shown.Imperial, shown.Both} {
			out = append(out, shown.Style{System: s, Language: l})
		}
	}
	return out
}

// TestEveryCodeIsSaid renders each entry in each language and system of units:
// every argument is there, none is left over, nothing falls back to another
// language, and the imperial text holds no metric unit.
func TestEveryCodeIsSaid(t *testing.T) {
	seen := map[finding.Code]bool{}
	var books []*Book
	for _, style := range styles() {
		books = append(books, New(style))
	}
	for _, e := range Catalogue() {
		if seen[e.Code] {
			t.Errorf("%s stands twice", e.Code)
		}
		seen[e.Code] = true
		if e.English == "" || e.German == "" || len(e.English) > 20 && e.English == e.German {
			t.Errorf("%s lacks a language", e.Code)
		}
		for _, a := range e.Args {
			for _, text := range []string{e.English, e.German} {
				if !strings.Contains(text, "{"+a.Name) {
					t.Errorf("%s: %q does not say %q", e.Code, text, a.Name)
				}
			}
		}
		for _, book := range books {
			style := book.Style
			text := book.Say(finding.New(e.Code, e.Args...))
			if strings.ContainsAny(strings.ReplaceAll(text, "u|u|", ""), "{}#|") || strings.Contains(text, "NaN") || strings.HasPrefix(text, string(e.Code)) {
				t.Errorf("%s, %v: %q", e.Code, style, text)
			}
			if style.System == shown.Imperial && (strings.Contains(text, "km/h") || strings.Contains(text, " kg")) {
				t.Errorf("%s in imperial units: %q", e.Code, text)
			}
		}
	}
}

// TestBraces renders each form that a text may hold.
func TestBraces(t *testing.T) {
	at := finding.Speed("at", 100/3.6)
	tests := []struct {
		name, text string
		arg        finding.Arg
		style      shown.Style
		want       string
	}{
		{"unit", "at {at}", at, shown.Style{System: shown.Metric, Language: shown.English}, "at 100 km/h"},
		{"imperial", "at {at}", at, shown.Style{System: shown.Imperial, Language: shown.English}, "at 62 mph"},
		{"both", "at {at}", at, shown.Style{System: shown.Both, Language: shown.English}, "at 100 km/h (62 mph)"},
		{"decimals, German", "bei {at.1}", at, shown.Style{System: shown.Metric, Language: shown.German}, "bei 100,0 km/h"},
		{"bare", "{at~} or so", at, shown.Style{System: shown.Metric, Language: shown.English}, "100 or so"},
		{"band", "{t±}", finding.Time("t", 4.3149).With(0.0209), shown.Style{System: shown.Metric, Language: shown.English}, "4.31 ± 0.04 s"},
		{"one", "{n|one run|# runs}", finding.Count("n", 1), shown.Style{Language: shown.English}, "one run"},
		{"many", "{n|one run|# runs}", finding.Count("n", 4), shown.Style{Language: shown.English}, "4 runs"},
		{"temperature", "{x}", finding.Temperature("x", 20), shown.Style{System: shown.Imperial, Language: shown.English}, "68 °F"},
		{"share", "{x.1}", finding.Share("x", 0.0125), shown.Style{System: shown.Metric, Language: shown.German}, "1,2 %"},
		{"unknown", "{x}", finding.Mass("x", math.NaN()), shown.Style{System: shown.Metric, Language: shown.English}, "–"},
	}
	for _, tt := range tests {
		if got := New(tt.style).fill(tt.text, finding.New("test.case", tt.arg)); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// TestError renders an error however it comes: bare, wrapped or joined, never as
// its code.
func TestError(t *testing.T) {
	bad := &sensors.InputError{File: "a.gz", Line: 3, What: finding.New("session.not_json"), Remedy: finding.New("session.give_session")}
	fail := finding.Fail("session.too_much")
	const badText, failText = "a.gz:3: a line that is not a JSON object is left out; give a session file", "it unpacks to more than any session holds"
	tests := []struct {
		name string
		err  error
		want string
	}{
		{"none", nil, ""},
		{"of an input", bad, badText},
		{"a finding", fail, failText},
		{"wrapped", fmt.Errorf("ride: %w", bad), "ride: " + badText},
		{"joined with nothing", errors.Join(bad, nil), badText},
		{"joined", errors.Join(bad, fail), badText + "\n" + failText},
		{"wrapped and joined", errors.Join(fmt.Errorf("ride: %w", bad)), "ride: " + badText},
		{"cut off", fmt.Errorf("ride: %w", io.ErrUnexpectedEOF), "ride: it ends in the middle"},
		{"damaged", gzip.ErrChecksum, "its compressed data are damaged"},
		{"another", errors.New("disk full"), "disk full"},
	}
	for _, tt := range tests {
		if got := ForMachines().Error(tt.err); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}
