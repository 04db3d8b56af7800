package kit

import (
	"strings"
	"testing"
)

// TestUnitsStayWithTheirNumbers: no line ends between a number and what belongs to it
// (SI brochure, 9th edition, 5.4.3: a space separates number and unit; that no line
// breaks there is common practice).
func TestUnitsStayWithTheirNumbers(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"Power at 120 km/h: +1.1 ± 0.3 kW", "Power at 120_km/h: +1.1_±_0.3_kW"},
		{"about: +0.31 ± 0.12 l/100 km", "about: +0.31_±_0.12_l/100_km"},
		{"Launch, 0–100 km/h after 1 ft", "Launch, 0–100_km/h after 1_ft"},
		{"Start nach 1 Fuß, 5 Paare", "Start nach 1_Fuß, 5 Paare"},
		{"that takes 253 N.", "that takes 253_N."},
		{"Sure (95 %: 6 to 12 %)", "Sure (95_%: 6 to 12_%)"},
		{"kg and m alone", "kg and m alone"},
	} {
		if got := strings.ReplaceAll(together(c.text), "\u00a0", "_"); got != c.want {
			t.Errorf("%q becomes %q, want %q", c.text, got, c.want)
		}
	}
}
