package kit

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
)

// TestUnitsStayWithTheirNumbers: no line ends between a number and what belongs to it
// (SI brochure, 9th edition, 5.4.3: a space separates number and unit; that no line
// breaks there is common practice).
func TestUnitsStayWithTheirNumbers(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Power at 120 km/h: +1.1 ± 0.3 kW", "Power at 120_km/h: +1.1_±_0.3_kW"},
		{"about: +0.31 ± 0.12 l/100 km", "about: +0.31_±_0.12_l/100_km"},
		{"Launch, 0–100 km/h after 1 ft", "Launch, 0–100_km/h after 1_ft"},
		{"Start nach 1 Fuß, 5 Paare", "Start nach 1_Fuß, 5_Paare"},
		{"that takes 253 N.", "that takes 253_N."},
		{"Sure (95 %: 6 to 12 %)", "Sure (95_%: 6_to 12_%)"},
		{"kg and m alone", "kg and m alone"},
		{"shown (p = 0.78)", "shown (p_=_0.78)"},
		{"screen: CdA 0.55 ± 0.05 m²", "screen: CdA_0.55_±_0.05_m²"},
		{"back: x 0.12, y −0.20", "back: x_0.12, y_−0.20"},
		{"room for 4 h 10 min.", "room for 4_h_10_min."},
		{"settles about 3 of 10 cases", "settles about 3_of 10_cases"},
		{"Tue 24 Nov, 14:05", "Tue 24_Nov, 14:05"},
		{"2026 was warm", "2026 was warm"},
		{"9 coast-downs · heading east", "9_coast-downs_· heading~east"},
		{"one item that is much too long to be kept · two", "one item that is much too long to be kept_· two"},
	} {
		if got := strings.NewReplacer("\u00a0", "_", listed, "~").Replace(together(c.text)); got != c.want {
			t.Errorf("%q becomes %q, want %q", c.text, got, c.want)
		}
	}
}

// TestNoShortWordStandsAlone: the last line of a paragraph holds two words or more
// where one of them is short (common practice in typesetting), and no line is wider
// than its room, even where words that belong together have to part.
func TestNoShortWordStandsAlone(t *testing.T) {
	test.NewTempApp(t)
	p := New(Light(), 1).Text(Body, Plain, "It holds the true value 95 times out of 100 or so.\nshort screen · tall screen and panniers · no")
	alone := p.measure("so.")
	for width := float32(60); width < 400; width++ {
		lines := p.broke(width)
		for i, line := range lines {
			if p.measure(line) > width {
				t.Errorf("%q is wider than %g", line, width)
			}
			if line == "so." && len(strings.Fields(lines[i-1])) > 2 && alone <= 0.3*width {
				t.Errorf("width %g: %q leaves its last word alone", width, lines)
			}
		}
	}
	if got := p.broke(60)[0]; got != "It holds" {
		t.Errorf("the first line is %q", got)
	}
}

// TestAMarkIsNotHyphenated: a number and its unit that do not fit one line part
// between each other, not inside a word.
func TestAMarkIsNotHyphenated(t *testing.T) {
	test.NewTempApp(t)
	p := New(Light(), 1).Text(Strong, Plain, "0–100 km/h")
	if got := p.broke(p.measure("0–100") + 1); !slices.Equal(got, []string{"0–100", "km/h"}) {
		t.Errorf("it becomes %q", got)
	}
}
