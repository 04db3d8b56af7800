package text

import (
	"regexp"
	"strings"
)

// number is a number inside a sentence of the analysis.
var number = regexp.MustCompile(`\d+(?:\.\d+)?`)

// Say gives the name of a mark, or what package plan says, in this language.
// Both come in English; they are looked up with each number replaced by "#",
// and the numbers are put back in their order. What is not known stays as it
// is. What is a finding comes from package export/words.
func (b *Book) Say(english string) string {
	s, ok := b.said[number.ReplaceAllString(english, "#")]
	if !ok {
		return english
	}
	for _, n := range number.FindAllString(english, -1) {
		s = strings.Replace(s, "#", n, 1)
	}
	return s
}

// germanSaid holds the marks, and what package plan says.
func germanSaid() map[string]string {
	return map[string]string{
		"#/# mile": "#/# Meile", "# ft": "# Fuß",
		"from # to # km/h is too little to tell drag from rolling: give at least # km/h":     "von # bis # km/h ist zu wenig, um Luft- und Rollwiderstand zu trennen: mindestens # km/h angeben",
		"with # kW the bike does not get there within # s: it is not strong enough for that": "mit # kW schafft die Maschine das nicht in # s: Dafür ist sie zu schwach",
		"a change of # of the drag cannot be planned for: give one between # and # %":        "ein Anteil von # am Luftwiderstand lässt sich nicht planen: einen zwischen # und # % angeben",
	}
}
