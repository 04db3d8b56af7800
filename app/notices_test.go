package app

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// TestNoticesNameWhatIsCompiled compares the headings of NOTICES.md with the
// modules that the command line and the browser app compile.
func TestNoticesNameWhatIsCompiled(t *testing.T) {
	text, err := os.ReadFile("NOTICES.md")
	if err != nil {
		t.Fatal(err)
	}
	var named []string
	for part := range strings.SplitSeq(string(text), "\n## ") {
		heading, body, _ := strings.Cut(part, "\n")
		if strings.HasPrefix(heading, "# ") {
			continue
		}
		named = append(named, heading)
		if !strings.Contains(body, "```") {
			t.Errorf("%s has no licence", heading)
		}
	}
	for _, target := range []struct{ path, env string }{{"./desk", "GOOS=linux"}, {"./phone", "GOOS=js"}} {
		cmd := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}", target.path)
		cmd.Env = append(os.Environ(), target.env, "CGO_ENABLED=0")
		if target.env == "GOOS=js" {
			cmd.Env = append(cmd.Env, "GOARCH=wasm")
		}
		out, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		for path := range strings.FieldsSeq(string(out)) {
			if !slices.Contains(named, path) {
				t.Errorf("%s is compiled into %s and not in NOTICES.md: run sh .ci/notices", path, target.path)
			}
		}
	}
}
