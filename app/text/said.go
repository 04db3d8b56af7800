package text

import "strings"

// Say gives the name of a mark in this language. It comes in English and is
// looked up with each number replaced by "#"; the numbers are put back in their
// order. What is not known stays as it is.
func (b *Book) Say(english string) string {
	template, numbers := numbersOf(english)
	s, ok := b.said[template]
	if !ok {
		return english
	}
	for _, n := range numbers {
		s = strings.Replace(s, "#", n, 1)
	}
	return s
}

// numbersOf splits a text into one with "#" for each number, such as 12 or
// 0.5, and the numbers.
func numbersOf(s string) (template string, numbers []string) {
	digit := func(i int) bool { return i < len(s) && '0' <= s[i] && s[i] <= '9' }
	var out strings.Builder
	for i := 0; i < len(s); {
		end := i
		for digit(end) || end > i && s[end:min(end+1, len(s))] == "." && digit(end+1) && !strings.Contains(s[i:end], ".") {
			end++
		}
		if end == i {
			out.WriteByte(s[i])
			i++
			continue
		}
		out.WriteByte('#')
		numbers = append(numbers, s[i:end])
		i = end
	}
	return out.String(), numbers
}

// germanSaid holds the marks.
func germanSaid() map[string]string {
	return map[string]string{
		"#/# mile": "#/# Meile", "# ft": "# Fuß",
	}
}
