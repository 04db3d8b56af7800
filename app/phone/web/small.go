package web

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
)

// Two things make Go's programs large that this one can do without.

// noTemplateMethods is a change of text/template: a template that can call any method
// by a name it reads has Go keep every method of every type, which was a fifth of the
// program. The templates of this project call functions and read fields.
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

// templateFile is where Go's library has it, below its root.
const templateFile = "src/text/template/exec.go"

// overlay writes the changed file of Go's library below root into work and returns the
// path of the file that tells the compiler of it; "" where the library of this version
// of Go is another one: then the program is complete, and larger.
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

// goRoot is the folder that Go itself is in.
func goRoot(ctx context.Context, folder string) (string, error) {
	root, err := tool(ctx, folder, "env", "GOROOT")
	return strings.TrimSpace(root), err
}

// short lists packages in which the compiler writes each function once and calls it,
// rather than at every call: what draws, what people read, what is done once a file.
// What reads recordings and calculates is left as fast as it can be.
func short() (flags []string) {
	for _, p := range []string{"fyne.io/...", "github.com/go-text/...", "github.com/fyne-io/...", "github.com/srwiley/...", "encoding/xml", "encoding/json",
		"text/...", "html/...", "regexp/...", "net/...", "fmt", "stillair/app/...", "stillair/export/..."} {
		flags = append(flags, "-gcflags="+p+"=-l")
	}
	return append(flags, "-gcflags=stillair/export/session=")
}
