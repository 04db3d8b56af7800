package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"stillair/app/phone/web"
)

// written is a folder with a page around a stand-in for the program.
func written(t *testing.T) string {
	t.Helper()
	p, err := web.NewPage()
	if err != nil {
		t.Fatal(err)
	}
	p[web.Program], p["wasm_exec.js"] = []byte("\x00asm"), []byte("// glue")
	if err := p.Seal(); err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := p.Write(folder); err != nil {
		t.Fatal(err)
	}
	return folder
}

func phoneWorld() (*world, *bytes.Buffer, *bytes.Buffer) {
	var out, complaints bytes.Buffer
	return &world{Out: &out, Err: &complaints, Now: func() time.Time { return time.Date(2026, 5, 3, 10, 0, 0, 0, time.UTC) }},
		&out, &complaints
}

func TestPhoneServesUntilStopped(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	ctx, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
	defer cancel()
	w, out, complaints := phoneWorld()
	if code := run(ctx, w, []string{"phone", "--site", written(t), "--port", "0", "--here"}); code != exitDone {
		t.Fatalf("exit %d: %s", code, complaints)
	}
	for what, pattern := range map[string]string{
		"an address":    `https://\d+\.\d+\.\d+\.\d+:\d+/`,
		"a code":        `█▀`,
		"a fingerprint": `([0-9A-F]{2}:){15}[0-9A-F]{2}\n  ([0-9A-F]{2}:){15}[0-9A-F]{2}\n`,
	} {
		if !regexp.MustCompile(pattern).MatchString(out.String()) {
			t.Errorf("%s is missing from\n%s", what, out)
		}
	}
}

func TestPhoneMistakes(t *testing.T) {
	empty := t.TempDir()
	for _, c := range []struct {
		name string
		args []string
		code int
		says string
	}{
		{"an argument", []string{"here"}, exitUsage, "no arguments"},
		{"write and serve", []string{"--write", "a", "--site", "b"}, exitUsage, "give one of them"},
		{"a folder without a page", []string{"--site", empty}, exitFailed, "not a page that was written"},
		{"a folder that is not there", []string{"--site", filepath.Join(empty, "none")}, exitFailed, "none"},
		{"no source", []string{"--source", empty}, exitFailed, "--source"},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, _, complaints := phoneWorld()
			if code := run(t.Context(), w, append([]string{"phone"}, c.args...)); code != c.code || !strings.Contains(complaints.String(), c.says) {
				t.Errorf("exit %d, %s", code, complaints)
			}
		})
	}
}

func TestSourceIsFoundFromBelow(t *testing.T) {
	top := t.TempDir()
	deep := filepath.Join(top, "a", "b")
	if err := os.MkdirAll(deep, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Chdir(deep)
	if _, err := findSource(); err == nil {
		t.Error("a source was found where there is none")
	}
	if err := os.WriteFile(filepath.Join(top, "go.mod"), []byte("module stillair\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := findSource()
	if err != nil {
		t.Fatal(err)
	}
	if same, err := filepath.EvalSymlinks(top); err != nil || got != same && got != top {
		t.Errorf("found %s, want %s", got, top)
	}
}
