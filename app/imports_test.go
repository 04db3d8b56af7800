package app

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// layers lists the packages of the tree from left to right: an import may
// point to the same layer or further left, never right.
var layers = []string{"sensors", "fusion", "runs", "export", "app"}

func layerOf(path string) int {
	for i, l := range layers {
		if path == l || strings.HasPrefix(path, l+"/") {
			return i
		}
	}
	return -1
}

// goFile is one source file: its path inside the tree and what it imports.
type goFile struct {
	path    string
	imports []string
}

func sourceFiles(t *testing.T) []goFile {
	t.Helper()
	root := ".."
	var files []goFile
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && path != root && (strings.HasPrefix(d.Name(), ".") || d.Name() == "node_modules") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		g := goFile{path: filepath.ToSlash(rel)}
		for _, s := range f.Imports {
			p, err := strconv.Unquote(s.Path.Value)
			if err != nil {
				return err
			}
			g.imports = append(g.imports, p)
		}
		files = append(files, g)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// TestImportsPointLeft checks the direction sensors ← fusion ← runs ← export ←
// app for every file of the tree, with any build tags, tests included.
func TestImportsPointLeft(t *testing.T) {
	const module = "stillair/"
	seen := 0
	for _, f := range sourceFiles(t) {
		own := layerOf(f.path)
		for _, imp := range f.imports {
			if !strings.HasPrefix(imp, module) {
				continue
			}
			seen++
			if to := layerOf(strings.TrimPrefix(imp, module)); to < 0 || to > own {
				t.Errorf("%s imports %s: imports point left only (%s)", f.path, imp, strings.Join(layers, " ← "))
			}
		}
	}
	if seen == 0 {
		t.Fatal("no import inside the module was seen: this test looks at nothing")
	}
}

// TestOuterImports checks two rules: only app imports Fyne, and only
// sensors/device touches cgo or the browser's JavaScript.
func TestOuterImports(t *testing.T) {
	for _, f := range sourceFiles(t) {
		for _, imp := range f.imports {
			switch {
			case strings.HasPrefix(imp, "fyne.io/") && !strings.HasPrefix(f.path, "app/"):
				t.Errorf("%s imports %s: only app may import Fyne", f.path, imp)
			case (imp == "C" || imp == "syscall/js") && !strings.HasPrefix(f.path, "sensors/device"):
				t.Errorf("%s imports %s: only sensors/device… may", f.path, imp)
			}
		}
	}
}
