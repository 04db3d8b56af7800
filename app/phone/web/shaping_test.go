package web

import (
	"slices"
	"testing"

	"golang.org/x/text/unicode/bidi"
)

// TestPlainLinesRunToTheRight holds the letters against the Unicode Character
// Database, as golang.org/x/text has it, by the types of Unicode Standard Annex 9,
// table 4: without R, AL and AN, an explicit formatting character or a paragraph
// separator, the rules W1 to I2 leave a paragraph that runs to the right one run.
func TestPlainLinesRunToTheRight(t *testing.T) {
	harmless := []bidi.Class{bidi.L, bidi.EN, bidi.ES, bidi.ET, bidi.CS, bidi.NSM, bidi.BN, bidi.WS, bidi.ON}
	for _, s := range leftToRight {
		for r := s.from; r <= s.to; r++ {
			p, _ := bidi.LookupRune(r)
			if !slices.Contains(harmless, p.Class()) {
				t.Errorf("%U has the bidirectional class %v", r, p.Class())
			}
		}
	}
}

// TestPlainLinesAreTheAppsOwn checks that what the app says most is among them, and
// Hebrew and Arabic are not.
func TestPlainLinesAreTheAppsOwn(t *testing.T) {
	for _, c := range []struct {
		text  string
		plain bool
	}{
		{"Aufzeichnung läuft: 0–100 km/h, ±0.05 s · ½ρu² → 1 °C − 2", true},
		{"שלום", false},
		{"\u0645\u0631\u062d\u0628\u0627", false},
		{"a\u202eb", false},
		{"a\nb", false},
	} {
		plain := true
		for _, r := range c.text {
			plain = plain && slices.ContainsFunc(leftToRight, func(s span) bool { return r >= s.from && r <= s.to })
		}
		if plain != c.plain {
			t.Errorf("%q is plain: %v", c.text, plain)
		}
	}
}
