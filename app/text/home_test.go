package text

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"stillair/export/words"
)

// TestOneHome fails if a text stands both here and in export/words, which names
// what an analysis, a report and a screen have in common: a second text of the
// same would soon say something else. A single word may be the label of a field
// and the head of a column at once, unless it names something that the analysis
// reports.
func TestOneHome(t *testing.T) {
	english, german := texts(English()), texts(German())
	here, hier := map[string][]string{}, map[string][]string{}
	for path := range english {
		here[path], hier[path] = wordsOf(english[path]), wordsOf(german[path])
	}
	for _, e := range words.Catalogue() {
		area, _, _ := strings.Cut(string(e.Code), ".")
		name := len(e.Args) == 0 && slices.Contains([]string{"caution", "compare", "help", "kind", "limit", "quantity", "revs", "sensor", "stage", "verdict"}, area)
		in, auf := wordsOf(e.English), wordsOf(e.German)
		for path := range english {
			if twins(here[path], in, name) && twins(hier[path], auf, name) {
				t.Errorf("%s (%q, %q) stands in export/words as %s (%q, %q)", path, english[path], german[path], e.Code, e.English, e.German)
			}
		}
	}
}

func TestTwins(t *testing.T) {
	for _, c := range []struct {
		name, here, there string
		named, want       bool
	}{
		{"a name of the analysis", "Gusts", "gusts", true, true},
		{"so many of what is named", "1 launch", "launch", true, false},
		{"a label", "Date", "Date", false, false},
		{"values aside", "%d pairs needed", "{n} pairs needed", false, true},
		{"a little longer", "Weigh bike and rider on a truck scale.", "weigh bike and rider as ridden, on a truck scale", true, true},
		{"different", "Weigh bike and rider on a truck scale.", "keep head, elbows and knees in the same place", true, false},
		{"values alone", "%s", "{from} to {to}", true, false},
	} {
		if got := twins(wordsOf(c.here), wordsOf(c.there), c.named); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

var (
	value   = regexp.MustCompile(`%%|%[0-9]*[a-z]|\{[^}]*\}`)
	letters = regexp.MustCompile(`[\pL\d'-]+`)
)

// wordsOf are the words of a text, sorted, without its values.
func wordsOf(s string) []string {
	all := letters.FindAllString(strings.ToLower(value.ReplaceAllString(s, " ")), -1)
	slices.Sort(all)
	return all
}

// twins reports whether two texts have the same words, or, if they are long, most
// of them: three of four. A single word counts only as a name.
func twins(x, y []string, name bool) bool {
	if len(x) == 0 || len(y) == 0 || !name && len(x) < 2 {
		return false
	}
	both := 0
	for i, j := 0, 0; i < len(x) && j < len(y); {
		switch strings.Compare(x[i], y[j]) {
		case 0:
			i, j, both = i+1, j+1, both+1
		case 1:
			j++
		default:
			i++
		}
	}
	if len(x) < 5 {
		return both == len(x) && len(x) == len(y)
	}
	return 4*2*both >= 3*(len(x)+len(y)) // the Dice coefficient
}
