package sheets

import (
	"slices"
	"strings"
	"unicode"
)

// brackets separates a name from the text in its brackets.
func brackets(name string) (outside string, inside []string) {
	var out strings.Builder
	for {
		i := strings.IndexAny(name, "([{")
		if i < 0 {
			break
		}
		n := strings.IndexAny(name[i:], ")]}")
		if n < 0 {
			break
		}
		out.WriteString(name[:i] + " ")
		inside = append(inside, name[i+1:i+n])
		name = name[i+n+1:]
	}
	out.WriteString(name)
	return out.String(), inside
}

// wordsOf are the words of a name in lower case: separated by anything but
// letters and digits, and between a small letter and a capital.
func wordsOf(name string) []string {
	var out []string
	var word strings.Builder
	end := func() {
		if word.Len() > 0 {
			out = append(out, strings.ToLower(word.String()))
			word.Reset()
		}
	}
	small := false
	for _, c := range name {
		if !unicode.IsLetter(c) && !unicode.IsDigit(c) {
			end()
			small = false
			continue
		}
		if unicode.IsUpper(c) && small {
			end()
		}
		small = unicode.IsLower(c)
		word.WriteRune(c)
	}
	end()
	return out
}

// has reports whether one of the words is in a list separated by bars; an entry
// that ends in "…" matches all words that begin with it.
func has(words []string, listed string) bool {
	for l := range strings.SplitSeq(listed, "|") {
		stem, open := strings.CutSuffix(l, "…")
		if slices.ContainsFunc(words, func(w string) bool { return w == l || open && strings.HasPrefix(w, stem) }) {
			return true
		}
	}
	return false
}
