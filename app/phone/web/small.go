package web

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
)

// Two things make Go programs large that this one can do without: methods kept for
// templates, and inlining.

// noTemplateMethods changes text/template: because a template can call any method by
// name, the linker keeps every exported method of every type, which was a fifth of
// the program. The templates of this project only call functions and read fields.
var noTemplateMethods = swap(`	// Unless it's an interface, need to get to a value of type *T to guarantee
	// we see all methods of T and *T.
	ptr := receiver
	if ptr.Kind() != reflect.Interface && ptr.Kind() != reflect.Pointer && ptr.CanAddr() {
		ptr = ptr.Addr()
	}
	if method := ptr.MethodByName(fieldName); method.IsValid() {
		return s.evalCall(dot, method, false, node, fieldName, args, final)
	}
`, "")

// templateFile is the path of the changed file below Go's root.
const templateFile = "src/text/template/exec.go"

// overlay writes a changed copy of Go's library file below root into work and returns
// the path of the overlay file for the compiler; "" if this version of Go has a
// different library: then the program is complete, and larger.
func overlay(root, work string) (string, error) {
	was, is := filepath.Join(root, filepath.FromSlash(templateFile)), filepath.Join(work, "exec.go")
	text, err := os.ReadFile(was)
	if err != nil {
		return "", err
	}
	if err := os.WriteFile(is, text, 0o644); err != nil {
		return "", err
	}
	if noTemplateMethods(is) != nil {
		return "", nil
	}
	list, err := json.Marshal(map[string]map[string]string{"Replace": {was: is}})
	if err != nil {
		return "", err
	}
	path := filepath.Join(work, "overlay.json")
	return path, os.WriteFile(path, list, 0o644)
}

// goRoot is Go's own folder.
func goRoot(ctx context.Context, folder string) (string, error) {
	root, err := tool(ctx, folder, "env", "GOROOT")
	return strings.TrimSpace(root), err
}

// short lists packages that are compiled without inlining: those that draw, that
// hold texts, or that run once a file. Packages that read recordings and calculate
// stay as fast as possible.
func short() (flags []string) {
	for _, p := range []string{"fyne.io/...", "github.com/go-text/...", "github.com/fyne-io/...", "github.com/srwiley/...", "encoding/xml", "encoding/json",
		"text/...", "html/...", "regexp/...", "net/...", "fmt", "stillair/app/...", "stillair/export/..."} {
		flags = append(flags, "-gcflags="+p+"=-l")
	}
	return append(flags, "-gcflags=stillair/export/session=")
}
