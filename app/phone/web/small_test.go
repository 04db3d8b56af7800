package web

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// TestTemplatesCallNoMethods runs the tests of everything that the browser's program
// writes from templates, with the library that it is compiled against.
func TestTemplatesCallNoMethods(t *testing.T) {
	const folder = "../../.."
	root, err := goRoot(t.Context(), folder)
	if err != nil {
		t.Fatal(err)
	}
	changed, err := overlay(root, t.TempDir())
	if err != nil || changed == "" {
		t.Fatalf("Go's library is not the one that is changed (%v)", err)
	}
	cmd := exec.CommandContext(t.Context(), "go", "test", "-overlay", changed, "./export/report/...", "./export/card", "./export/plot")
	cmd.Dir = folder
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}

// TestAnotherLibraryIsLeft checks that an unfamiliar library is compiled unchanged.
func TestAnotherLibraryIsLeft(t *testing.T) {
	root := t.TempDir()
	file := filepath.Join(root, filepath.FromSlash(templateFile))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte("package template\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if list, err := overlay(root, t.TempDir()); list != "" || err != nil {
		t.Errorf("%q, %v", list, err)
	}
}
