package shown

import (
	"unicode"
	"unicode/utf8"
)

// Sentence returns words as a sentence: with a capital and a full stop.
func Sentence(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	s = string(unicode.ToUpper(first)) + s[size:]
	if last := s[len(s)-1]; last != '.' && last != '!' && last != '?' {
		s += "."
	}
	return s
}
