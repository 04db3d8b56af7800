package app

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"stillair/export/words"
)

// prose matches a sequence of words that only occurs in sentences.
var prose = regexp.MustCompile(`[A-Za-z]{2,} [a-z]{2,} [a-z]{2,}`)

// values are values in files, defined by the format of the plain log: not texts.
var values = []string{`"specific force up"`, `"specific force down"`}

// TestNoSentencesBelowExport reads every file of sensors, fusion and runs:
// messages to users are findings there, with texts in export/words. Prose is
// permitted in panics, which programmers read, and in packages that import
// testing.
func TestNoSentencesBelowExport(t *testing.T) {
	suites := map[string]bool{} // folders of packages that are suites of tests
	for _, f := range sourceFiles(t) {
		if !strings.HasSuffix(f.path, "_test.go") && slices.Contains(f.imports, "testing") {
			suites[filepath.Dir(f.path)] = true
		}
	}
	for _, f := range sourceFiles(t) {
		layer := layerOf(f.path)
		if layer < 0 || layer > layerOf("runs") || strings.HasSuffix(f.path, "_test.go") || suites[filepath.Dir(f.path)] {
			continue
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, filepath.Join("..", f.path), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch x := n.(type) {
			case *ast.CallExpr:
				if id, ok := x.Fun.(*ast.Ident); ok && id.Name == "panic" {
					return false
				}
			case *ast.Field:
				if x.Tag != nil {
					x.Tag = nil
				}
			case *ast.BasicLit:
				if x.Kind == token.STRING && prose.MatchString(x.Value) && !slices.Contains(values, x.Value) {
					t.Errorf("%s: the sentence %.80s belongs in export/words", set.Position(x.Pos()), x.Value)
				}
			}
			return true
		})
	}
}

// TestEveryCodeHasWords finds each code in any package, as a constant of its
// type or in a call that makes a finding or an error, and checks that it has a
// text.
func TestEveryCodeHasWords(t *testing.T) {
	known := map[string]bool{}
	for _, e := range words.Catalogue() {
		known[strconv.Quote(string(e.Code))] = true
	}
	made := regexp.MustCompile(`finding\.(?:New|Fail)\(("[a-z0-9_.]+")|\bfinding\.Code = ("[a-z0-9_.]+")`)
	n := 0
	for _, f := range sourceFiles(t) {
		if layerOf(f.path) < 0 || strings.HasSuffix(f.path, "_test.go") || strings.HasPrefix(f.path, "sensors/finding/") {
			continue
		}
		text, err := os.ReadFile(filepath.Join("..", f.path))
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range made.FindAllStringSubmatch(string(text), -1) {
			n++
			if code := m[1] + m[2]; !known[code] {
				t.Errorf("%s: export/words has no text for %s", f.path, code)
			}
		}
	}
	if n < 100 {
		t.Errorf("found %d codes", n)
	}
}
