package main

import (
	"bytes"
	"crypto/rand"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/finding"
)

func TestEscape(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain words", "Größe 5 m², −2 °C\n\tok …", "Größe 5 m², −2 °C\n\tok …"},
		{"a colour", "\x1b[31mred", `\x1b[31mred`},
		{"one byte that begins a command", "\u009b2Jgone", `\u009b2Jgone`},
		{"back to the beginning of the line", "evil\rgood", `evil\x0dgood`},
		{"a bell and a deletion", "\a\x7f", `\x07\x7f`},
		{"turned around", "a\u202egpj.exe\u2066b\u2069\u200f", `a\u202egpj.exe\u2066b\u2069\u200f`},
		{"no UTF-8", "a\xffb", `a\xffb`},
		{"a mark of byte order, a line separator", "\ufeffa\u2028", `\ufeffa\u2028`},
	} {
		if got := escape(c.in); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestArgument(t *testing.T) {
	for in, want := range map[string]string{"out/ride.jsonl.gz": "out/ride.jsonl.gz", "an out/a": "'an out/a'", "it's": `'it'\''s'`, "$(x)": "'$(x)'", "": ""} {
		if got := argument(in); got != want {
			t.Errorf("%q becomes %s, want %s", in, got, want)
		}
	}
}

// TestNoNameCommandsTheTerminal analyses and exports a recording in which every
// text contains control sequences for a terminal, as do the path, a flag and a
// verb.
func TestNoNameCommandsTheTerminal(t *testing.T) {
	t.Parallel()
	const evil = "\x1b]0;owned\a\x1b[2J\u202e\u009b31m"
	path := filepath.Join(t.TempDir(), "ride\x1b[31m\u202e.jsonl.gz")
	f, err := os.Create(path)
	if err != nil {
		t.Skip("this file system does not take such a name")
	}
	log := exportRide(t, filepath.Join(t.TempDir(), "ride.jsonl.gz"))
	log.Ride.Bike, log.Ride.Setups = "bike"+evil, []sensors.Setup{{From: 0, Name: "setup" + evil, Mass: 290}}
	log.States = append(log.States, sensors.State{T: log.Motion[0].T, Sensor: "motion", Condition: "working", Detail: finding.New("session.old_sentence", finding.Text("text", evil))})
	rec := &session.Recording{Header: session.Header{ID: session.ID{1}, Device: evil}, Name: evil, Log: log, Remarks: []session.Remark{{T: log.Motion[9].T, Text: evil}}}
	if err := session.WriteRecording(session.ToFile(f), rec); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"analyse", path}, {"compare", path}, {"export", path, "--as", "gpx,session", "--into", filepath.Join(t.TempDir(), "o"+evil)},
		{"analyse", path + evil}, {"analyse", "--rollon", evil, path}, {"analyse", "--mass", evil, path}, {evil}, {"plan", "--change", evil}, {"simulate", "--ride", evil}} {
		_, out, errs := desk(t, args...)
		for _, text := range []string{out, errs} {
			if strings.ContainsAny(text, "\x1b\a\r\u202e\u009b") {
				t.Errorf("desk %.30q prints %.300q", args, text)
			}
		}
	}
}

// TestProgressStillMovesTheLine checks that the program's own control sequences
// still reach the terminal.
func TestProgressStillMovesTheLine(t *testing.T) {
	var errs bytes.Buffer
	now := time.Time{}
	w := &world{Err: escaped{&errs}, Random: rand.Reader, Live: true, Now: func() time.Time { now = now.Add(2 * time.Second); return now }}
	p := w.progress()
	p.at("reading a\x1b[2J", 0.5)
	p.end()
	if got := errs.String(); got != "\r\x1b[Kreading a\\x1b[2J, 50 %\r\x1b[K" {
		t.Errorf("%q", got)
	}
}

// TestOutputsFollowNoLinks checks that only regular files are replaced, and that
// the target of a link is unchanged.
func TestOutputsFollowNoLinks(t *testing.T) {
	dir := t.TempDir()
	precious := filepath.Join(dir, "precious")
	if err := os.WriteFile(precious, []byte("kept"), 0o600); err != nil {
		t.Fatal(err)
	}
	link, dangling, folder := filepath.Join(dir, "link"), filepath.Join(dir, "dangling"), filepath.Join(dir, "folder")
	for at, to := range map[string]string{link: precious, dangling: filepath.Join(dir, "nowhere")} {
		if err := os.Symlink(to, at); err != nil {
			t.Skip("no links here")
		}
	}
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for _, path := range []string{link, dangling, folder, os.DevNull} {
		before, err := os.Lstat(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := save(path, func(w io.Writer) error { _, err := w.Write([]byte("new")); return err }); err == nil {
			t.Errorf("%s was replaced", path)
		}
		if after, err := os.Lstat(path); err != nil || after.Mode() != before.Mode() {
			t.Errorf("%s is now %v, %v", path, after, err)
		}
	}
	if data, err := os.ReadFile(precious); err != nil || string(data) != "kept" {
		t.Errorf("behind the link is %q, %v", data, err)
	}
	if err := save(precious, func(w io.Writer) error { _, err := w.Write([]byte("new")); return err }); err != nil {
		t.Errorf("a regular file: %v", err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 4 {
		t.Errorf("left behind: %v, %v", entries, err)
	}
}
