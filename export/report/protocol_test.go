package report

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"stillair/export/words"
)

// TestProtocolTexts checks that every key used by templates and code has a text
// in each language, and that every text is used.
func TestProtocolTexts(t *testing.T) {
	asked := regexp.MustCompile(`(?:say(?: |\()"|"protocol\.)([^"]+)"|row\("([^"]+)"`)
	files, err := filepath.Glob("*")
	if err != nil {
		t.Fatal(err)
	}
	var used []string
	for _, name := range files {
		if ext := filepath.Ext(name); ext != ".go" && ext != ".html" || strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range asked.FindAllStringSubmatch(string(text), -1) {
			used = append(used, m[1]+m[2])
		}
	}
	texts := map[string]bool{}
	for _, e := range words.Catalogue() {
		if key, of := strings.CutPrefix(string(e.Code), "protocol."); of {
			texts[key] = true
		}
	}
	for _, key := range used {
		if !texts[key] {
			t.Errorf("%q lacks a text", key)
		}
	}
	for key := range texts {
		if !slices.Contains(used, key) {
			t.Errorf("nobody asks for %q", key)
		}
	}
}
