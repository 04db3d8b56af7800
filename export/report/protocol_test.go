package report

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"testing"
)

// TestProtocolTexts looks up every key that templates and code ask for, and asks
// for every text: none is missing in a language, none is left over.
func TestProtocolTexts(t *testing.T) {
	asked := regexp.MustCompile(`say(?: |\()"([^"]+)"|(?:row)\("([^"]+)"`)
	files, err := filepath.Glob("*")
	if err != nil {
		t.Fatal(err)
	}
	var used []string
	for _, name := range files {
		if ext := filepath.Ext(name); ext != ".go" && ext != ".html" {
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
	for _, key := range used {
		if texts := said[key]; texts[0] == "" || texts[1] == "" {
			t.Errorf("%q lacks a text", key)
		}
	}
	for key := range said {
		if !slices.Contains(used, key) {
			t.Errorf("nobody asks for %q", key)
		}
	}
}
