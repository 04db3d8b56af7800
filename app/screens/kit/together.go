package kit

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// units are those that stay on the line of their number.
const units = " kW hp PS N lbf kg lb m ft cm Fuß km mi s min h Hz MB m² ft² kg/m³ km/h mph m/s m/s² °C °F hPa bar psi rpm 1/min l/100 mpg kWh Wh/km Wh/mi "

// symbols are those that stay on the line of the number after them.
const symbols = " CdA Crr x y z p = × "

// listed stands for the spaces inside a short item of a list, whose items are
// separated by dots.
const listed = "\x1f"

// longestItem is the number of characters up to which an item of a list is kept on
// one line.
const longestItem = 24

// together keeps on one line what is read as one: ±, percent signs and units with
// their numbers, counts with what they count, the short items of a list.
func together(s string) string {
	s = strings.NewReplacer(" ± ", "\u00a0±\u00a0", "± ", "±\u00a0", " %", "\u00a0%", "/100 km", "/100\u00a0km").Replace(s)
	var b strings.Builder
	for i, word := range strings.Split(s, " ") {
		if i > 0 {
			b.WriteString(between(b.String(), word))
		}
		b.WriteString(word)
	}
	return items(b.String())
}

// between is the space after a text and before a word: one that breaks no line
// where the two belong together.
func between(before, word string) string {
	unit, _, _ := strings.Cut(word, "\u00a0")
	unit = strings.TrimRight(unit, ".,;:)")
	last := lastWord(before)
	first, _ := utf8.DecodeRuneInString(word)
	number := unicode.IsDigit(first) || strings.ContainsRune("+−=", first)
	switch {
	case unit != "" && endsInDigit(before) && strings.Contains(units, " "+unit+" "),
		isCount(last) && unicode.IsLetter(first),
		last != "" && number && strings.Contains(symbols, " "+last+" "),
		strings.HasSuffix(before, "\u00a0h") && unicode.IsDigit(first):
		return "\u00a0"
	}
	return " "
}

func lastWord(s string) string {
	words := strings.FieldsFunc(s, func(r rune) bool { return unicode.IsSpace(r) || r == '(' })
	if len(words) == 0 {
		return ""
	}
	return words[len(words)-1]
}

func endsInDigit(s string) bool { return s != "" && '0' <= s[len(s)-1] && s[len(s)-1] <= '9' }

// isCount reports a whole number of up to three digits.
func isCount(s string) bool { return s != "" && len(s) <= 3 && strings.Trim(s, "0123456789") == "" }

// items marks the spaces inside the short items of lists.
func items(s string) string {
	const dot = " · " // stays with the item before it
	if !strings.Contains(s, dot) {
		return s
	}
	lines := strings.Split(s, "\n")
	for i, line := range lines {
		parts := strings.Split(line, dot)
		for k, part := range parts {
			if len(parts) > 1 && utf8.RuneCountInString(part) <= longestItem {
				parts[k] = strings.ReplaceAll(part, " ", listed)
			}
		}
		lines[i] = strings.Join(parts, "\u00a0· ")
	}
	return strings.Join(lines, "\n")
}
