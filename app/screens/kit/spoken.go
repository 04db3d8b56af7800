package kit

import "strings"

// spoken is how words of a screen are read out: lines become clauses, and what
// was left empty leaves no mark behind.
func spoken(words string) string {
	s := strings.NewReplacer(".\n", ". ", "\n(", " (", "\n", ", ", "..", ".").Replace(strings.TrimSpace(words))
	return strings.TrimRight(s, ",:; ")
}
