package report

import (
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stillair/export/shown"
	"stillair/export/words"
	"stillair/sensors/finding"
)

var (
	markup   = regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`)
	spoken   = regexp.MustCompile(`aria-label="([^"]*)"`)
	ordinary = regexp.MustCompile(`[\pL_]{3,}`)
)

// wordsIn are the words of a text, in small letters.
func wordsIn(text string) []string {
	return ordinary.FindAllString(strings.ToLower(html.UnescapeString(text)), -1)
}

// wordsOfBook are all words of a language's texts.
func wordsOfBook(l shown.Language) map[string]bool {
	out := map[string]bool{}
	add := func(text string) {
		for _, w := range wordsIn(text) {
			out[w] = true
		}
	}
	book := words.New(shown.Style{System: shown.Metric, Language: l})
	for _, e := range words.Catalogue() {
		f := finding.New(e.Code, e.Args...)
		for i := range f.Args {
			f.Args[i].Text = ""
		}
		add(book.Say(f))
	}
	return out
}

// TestGermanReport writes the page in German: it contains no word that only the
// English texts have, visible or for screen readers, apart from names that the
// rider gave.
func TestGermanReport(t *testing.T) {
	english, german := wordsOfBook(shown.English), wordsOfBook(shown.German)
	names := wordsIn("Evening invented gust felt A section from elsewhere one Stillair panniers on off invented 700 May UTC")
	for _, system := range []shown.System{shown.Metric, shown.Imperial, shown.Both} {
		page := wholeIn(t, shown.Style{System: system, Language: shown.German})
		if !strings.Contains(page, `<html lang="de">`) {
			t.Error("the page does not say that it is German")
		}
		text := markup.ReplaceAllString(page, " ")
		for _, m := range spoken.FindAllStringSubmatch(page, -1) {
			text += " " + m[1]
		}
		var left []string
		for _, w := range wordsIn(text) {
			if english[w] && !german[w] && !slices.Contains(names, w) && !slices.Contains(left, w) {
				left = append(left, w)
			}
		}
		if len(left) > 0 {
			t.Errorf("%s: English words on the German page: %q", system, left)
		}
	}
}

// TestReportTexts checks that every text of the page is in the catalogue, and
// that the catalogue has no unused texts for the page.
func TestReportTexts(t *testing.T) {
	asked := regexp.MustCompile(`text "([a-z_]+)"|\b(?:text|fill|add)\("([a-z_]+)"|key :?= "([a-z_]+)"|key, p\.X = "([a-z_]+)"|(?:report|figure)\.([a-z_]+)"`)
	known, used := map[string]bool{}, map[string]bool{}
	for _, e := range words.Catalogue() {
		known[string(e.Code)] = true
	}
	var files []string
	for _, pattern := range []string{"*.go", "*.html", "figure/*.go"} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, found...)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range asked.FindAllStringSubmatch(string(text), -1) {
			key := strings.Join(m[1:], "")
			if !known["report."+key] && !known["figure."+key] {
				t.Errorf("%s asks for %q", name, key)
			}
			used["report."+key], used["figure."+key] = true, true
			used["figure."+key+"_axis"], used["figure."+key+"_caption"] = true, true
		}
	}
	for code := range known {
		if (strings.HasPrefix(code, "report.") || strings.HasPrefix(code, "figure.")) && !used[code] {
			t.Errorf("nobody asks for %s", code)
		}
	}
}
