package kit

import "strings"

// spoken is a text of a screen as it is read out: lines become clauses, and
// empty parts leave no punctuation behind.
func spoken(words string) string {
	s := strings.NewReplacer(".\n", ". ", "\n(", " (", "\n", ", ", "..", ".").Replace(strings.TrimSpace(words))
	return strings.TrimRight(s, ",:; ")
}
