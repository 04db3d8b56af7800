package app

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// prose is a run of words as only sentences have.
var prose = regexp.MustCompile(`[A-Za-z]{2,} [a-z]{2,} [a-z]{2,}`)

// notYet are packages whose sentences still have to become findings.
var notYet = []string{"sensors", "sensors/plain", "sensors/nmea", "sensors/w3c", "sensors/internal", "sensors/replay",
	"sensors/device", "sensors/sim", "sensors/sourcetest", "runs/roads.go", "runs/limits.go", "runs/gears.go", "runs/options.go", "runs/roadload", "runs/compare", "runs/plan", "runs/air", "runs/worth"}

// TestNoSentencesBelowExport reads every file of sensors, fusion and runs: what
// a person reads is a finding there, and its words stand in export/words. What
// a panic says to a programmer may be prose.
func TestNoSentencesBelowExport(t *testing.T) {
	for _, f := range sourceFiles(t) {
		layer := layerOf(f.path)
		if layer < 0 || layer > layerOf("runs") || strings.HasSuffix(f.path, "_test.go") || pending(f.path) {
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
				if x.Kind == token.STRING && prose.MatchString(x.Value) {
					t.Errorf("%s: the sentence %.80s belongs in export/words", set.Position(x.Pos()), x.Value)
				}
			}
			return true
		})
	}
}

func pending(path string) bool {
	for _, p := range notYet {
		dir := filepath.ToSlash(filepath.Dir(path))
		if path == p || dir == p || strings.HasPrefix(dir, p+"/") {
			return dir != "sensors/finding"
		}
	}
	return false
}
