package words

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"stillair/export/shown"
	"stillair/sensors/finding"
)

// telltale are words so common that hardly a sentence of a language does without
// one, and that the other language does not have.
func telltale(l shown.Language) []string {
	if l == shown.German {
		return strings.Fields(`der das ein eine einen einem einer und oder ist sind wird wurde werden nicht kein keine mit ohne
			von vom zum zur auf aus bei nach für als auch nur sich sie es dem den des im am zu noch mehr weniger`)
	}
	return strings.Fields(`the an and or is are was were be been not no with without of from to at by for as also only it its
		that this these there which so but than more less on into if`)
}

// shared are words of both lists that stand in the other language too.
func shared() []string { return []string{"an", "also", "was", "so", "am", "des"} }

var (
	quoted = regexp.MustCompile(`"[^"]*"|„[^“]*“|--[a-z-]+`)
	word   = regexp.MustCompile(`[\pL_]+`)
)

// strangers are the telltale words of a language in a text, without what is
// quoted or typed.
func strangers(text string, l shown.Language) []string {
	var out []string
	for _, w := range word.FindAllString(quoted.ReplaceAllString(text, ""), -1) {
		w = strings.ToLower(w)
		if slices.Contains(telltale(l), w) && !slices.Contains(shared(), w) {
			out = append(out, w)
		}
	}
	return out
}

// TestOneLanguage renders every code in both languages: no word of the other
// stands there, from a finding in its arguments neither, and no bare code.
func TestOneLanguage(t *testing.T) {
	other := map[shown.Language]shown.Language{shown.English: shown.German, shown.German: shown.English}
	for _, style := range styles() {
		book := New(style)
		for _, e := range Catalogue() {
			text := book.Say(anonymous(finding.New(e.Code, e.Args...)))
			if found := strangers(text, other[style.Language]); len(found) > 0 {
				t.Errorf("%s in %q: %q holds %q", e.Code, style.Language, text, found)
			}
			checkCodes(t, book, finding.New(e.Code, e.Args...))
		}
	}
}

// TestStrangers checks that a foreign word is found.
func TestStrangers(t *testing.T) {
	tests := []struct {
		name, text string
		of         shown.Language
		want       int
	}{
		{"English in German", "der Lauf fehlt: the brake was touched", shown.English, 1},
		{"German in English", "the run is missing: die Bremse wurde berührt", shown.German, 1},
		{"German", "der Lauf fehlt", shown.English, 0},
		{"typed", `schreiben: --column "time=NAME as ms"`, shown.English, 0},
	}
	for _, tt := range tests {
		if got := strangers(tt.text, tt.of); len(got) != tt.want {
			t.Errorf("%s: %q", tt.name, got)
		}
	}
}

// anonymous is a finding without its texts: a name is the same in every
// language.
func anonymous(f finding.Finding) finding.Finding {
	f.Args = slices.Clone(f.Args)
	for i, a := range f.Args {
		f.Args[i].Text = ""
		if a.Finding != nil {
			inner := anonymous(*a.Finding)
			f.Args[i].Finding = &inner
		}
	}
	return f
}

// checkCodes checks that a code, and those in its arguments, stand in the book.
func checkCodes(t *testing.T, b *Book, f finding.Finding) {
	t.Helper()
	if _, ok := b.texts[f.Code]; !ok {
		t.Errorf("%q is not in the catalogue", f.Code)
	}
	for _, a := range f.Args {
		if a.Finding != nil {
			checkCodes(t, b, *a.Finding)
		}
	}
}
