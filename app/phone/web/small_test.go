package web

import (
	"os/exec"
	"testing"
)

// TestTemplatesCallNoMethods runs the tests of all that is written from templates in
// the browser's program with the library that it is compiled against.
func TestTemplatesCallNoMethods(t *testing.T) {
	const folder = "../../.."
	changed, err := overlay(t.Context(), folder, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.CommandContext(t.Context(), "go", "test", "-overlay", changed, "./export/report/...", "./export/card", "./export/plot")
	cmd.Dir = folder
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}

// TestTheLibraryIsTheOneThatIsChanged has the change refuse another one.
func TestTheLibraryIsTheOneThatIsChanged(t *testing.T) {
	if _, err := changed(t, noTemplateMethods, "package template\n"); err == nil {
		t.Error("a library was changed in which nothing is as it was")
	}
}
