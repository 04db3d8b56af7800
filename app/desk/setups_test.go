package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/app/input"
	"stillair/app/relabel"
	"stillair/export/session"
	"stillair/sensors"
	"stillair/sensors/plain"
)

// stoppedTwice is an invented recording of 100 s, whose clock begins at 50 s:
// the bike stands from 20 to 40 s and from 60 to 80 s after that.
func stoppedTwice() *sensors.Log {
	log := &sensors.Log{Ride: sensors.UnknownRide()}
	log.Ride.Bike, log.Ride.Mass = "invented bike", 286
	for t := 0.0; t <= 100; t++ {
		v := 15.0
		if t >= 20 && t <= 40 || t >= 60 && t <= 80 {
			v = 0.2
		}
		f := sensors.NewFix(50+t, v)
		f.UTC = time.Date(2026, 5, 9, 10, 0, int(t), 0, time.UTC)
		f.BearingDeg, f.LatDeg, f.LonDeg = 84, 50, 10+t*1e-4
		log.Fixes = append(log.Fixes, f)
		for k := range 50 {
			log.Motion = append(log.Motion, sensors.Motion{T: 50 + t + float64(k)/50, Force: r3.Vec{Z: 9.81}, Turn: r3.Vec{X: 0.01}})
		}
	}
	return log
}

// recordings writes the invented ride in every format that a copy keeps.
func recordings(t *testing.T) map[string]string {
	t.Helper()
	dir := t.TempDir()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	var zip bytes.Buffer
	must(plain.WriteZip(&zip, stoppedTwice()))
	must(os.WriteFile(filepath.Join(dir, "packed.zip"), zip.Bytes(), 0o600))
	must(plain.Write(filepath.Join(dir, "folder"), stoppedTwice()))
	must(saveSession(filepath.Join(dir, "ride.jsonl.gz"), stoppedTwice(), session.Header{ID: session.ID{1}}))
	return map[string]string{"session": filepath.Join(dir, "ride.jsonl.gz"), "zip": filepath.Join(dir, "packed.zip"), "folder": filepath.Join(dir, "folder")}
}

// contents are all bytes of a file or of the files of a folder.
func contents(t *testing.T, path string) string {
	t.Helper()
	all := ""
	err := filepath.WalkDir(path, func(p string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		b, err := os.ReadFile(p)
		all += p + "\n" + string(b)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestSetups splits, names and weighs the setups of recordings of each kind, and
// checks that the copy has the changes, that its samples are the recording's,
// and that the recording is unchanged.
func TestSetups(t *testing.T) {
	t.Parallel()
	for kind, path := range recordings(t) {
		t.Run(kind, func(t *testing.T) {
			before := contents(t, path)
			copied := filepath.Join(t.TempDir(), "copy"+strings.TrimPrefix(filepath.Base(path), strings.SplitN(filepath.Base(path), ".", 2)[0]))
			out := good(t, "setups", path, "--split-halt", "1=tall screen", "--split", "1:10=bare", "--name", "1=bare", "--mass", "2=291.5",
				"--tyres", "2=road, 2.5 bar", "--notes", "3=strap loose\nsecond line", "--out", copied)
			for _, want := range []string{"setup 2, 0:30 to 1:10: tall screen", "291.5 kg", "the ride's 286 kg", "strap loose second line",
				"from setup 2 to 3? If so: --mass 3=KG", "halt 2, 1:00 to 1:20", copied} {
				if !strings.Contains(strings.Join(strings.Fields(out), " "), want) {
					t.Errorf("it does not say %q:\n%s", want, out)
				}
			}
			if strings.Contains(out, "from setup 1 to 2?") {
				t.Errorf("it asks for a weight that was entered:\n%s", out)
			}
			if contents(t, path) != before {
				t.Error("the recording was changed")
			}
			got, err := input.Open(copied)
			if err != nil {
				t.Fatal(err)
			}
			checkCopied(t, path, got.Log)
		})
	}
}

func checkCopied(t *testing.T, path string, got *sensors.Log) {
	t.Helper()
	want := []sensors.Setup{{From: 50, Name: "bare", Mass: math.NaN()}, {From: 80, Name: "tall screen", Mass: 291.5, Tyres: "road, 2.5 bar"},
		{From: 120, Name: "bare", Mass: math.NaN(), Notes: "strap loose\nsecond line"}}
	if len(got.Ride.Setups) != len(want) {
		t.Fatalf("setups %+v", got.Ride.Setups)
	}
	for i, s := range got.Ride.Setups {
		same := s.Mass == want[i].Mass || math.IsNaN(s.Mass) && math.IsNaN(want[i].Mass)
		s.Mass, want[i].Mass = 0, 0
		if !same || s != want[i] {
			t.Errorf("setup %d is %+v, want %+v", i+1, s, want[i])
		}
	}
	from, err := input.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Motion) != len(from.Log.Motion) || len(got.Fixes) != len(from.Log.Fixes) {
		t.Fatalf("%d and %d samples, want %d and %d", len(got.Motion), len(got.Fixes), len(from.Log.Motion), len(from.Log.Fixes))
	}
	for i, m := range from.Log.Motion {
		if got.Motion[i].T != m.T || got.Motion[i].Force != m.Force {
			t.Fatalf("motion %d is %+v, want %+v", i, got.Motion[i], m)
		}
	}
	for i, f := range from.Log.Fixes {
		if g := got.Fixes[i]; g.T != f.T || g.Speed != f.Speed || g.LonDeg != f.LonDeg || !g.UTC.Equal(f.UTC) {
			t.Fatalf("fix %d is %+v, want %+v", i, g, f)
		}
	}
}

// TestSetupsAreOnlyListed checks that nothing is written without a change, and
// where a copy goes without --out.
func TestSetupsAreOnlyListed(t *testing.T) {
	t.Parallel()
	path := recordings(t)["session"]
	if out := good(t, "setups", path); strings.Contains(out, "Written") || strings.Contains(out, "Did the weight") || !strings.Contains(out, "setup 1, 0:00 to 1:41") {
		t.Errorf("one setup without a name gives\n%s", out)
	}
	if files, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*-setups*")); err != nil || len(files) > 0 {
		t.Errorf("written: %v %v", files, err)
	}
	good(t, "setups", path, "--name", "1=bare")
	code, _, err := desk(t, "setups", path, "--name", "1=other")
	if code != exitUsage || !strings.Contains(err, "is not replaced") {
		t.Errorf("a copy that is there already: exit %d, %s", code, err)
	}
	if out := good(t, "setups", strings.TrimSuffix(path, ".jsonl.gz")+"-setups.jsonl.gz"); !strings.Contains(out, ": bare") {
		t.Errorf("the first copy was replaced:\n%s", out)
	}
}

// TestSetupAgain checks that a split with the name of an earlier setup refers
// to that setup, and that a new one has the same tyres and no mass.
func TestSetupAgain(t *testing.T) {
	log := stoppedTwice()
	log.Ride.Setups = []sensors.Setup{{From: 0, Name: "bare", Mass: 280, Tyres: "2.5 bar"}}
	table := relabel.TableOf(log)
	e := &setupEdits{splits: []string{"30=screen", "70=bare"}}
	if err := e.apply(table); err != nil {
		t.Fatal(err)
	}
	if s := table.Setups[1]; !math.IsNaN(s.Mass) || s.Tyres != "2.5 bar" || s.From != 80 {
		t.Errorf("the new setup is %+v", s)
	}
	if s := table.Setups[2]; s.Mass != 280 || s.Tyres != "2.5 bar" {
		t.Errorf("the setup that is there again is %+v", s)
	}
}

func TestSetupsRefuses(t *testing.T) {
	t.Parallel()
	path := recordings(t)["session"]
	tests := []struct {
		name string
		args []string
		says string
	}{
		{"no recording", nil, "one recording"},
		{"a copy of nothing", []string{path, "--out", "x"}, "nothing was changed"},
		{"no such setup", []string{path, "--name", "2=a"}, "there is no setup 2"},
		{"no name", []string{path, "--name", "1="}, "lacks a part"},
		{"no number", []string{path, "--name", "bare"}, "lacks a part"},
		{"no such halt", []string{path, "--split-halt", "3=a"}, "no halt 3"},
		{"no time", []string{path, "--split", "noon=a"}, "12:30"},
		{"seventy seconds", []string{path, "--split", "0:70=a"}, "12:30"},
		{"at the start", []string{path, "--split", "0=a"}, "not within"},
		{"behind the end", []string{path, "--split", "1:42=a"}, "not within"},
		{"not a number", []string{path, "--split", "NaN=a"}, "12:30"},
		{"twice at once", []string{path, "--split", "50=a", "--split", "0:50=b"}, "begins there already"},
		{"a bicycle", []string{path, "--mass", "1=12"}, "from 30 to 2000"},
		{"mass not a number", []string{path, "--mass", "1=NaN"}, "from 30 to 2000"},
		{"endless text", []string{path, "--notes", "1=" + strings.Repeat("x", mostSetupText+1)}, "characters"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, _, err := desk(t, append([]string{"setups"}, tt.args...)...)
			if code != exitUsage || !strings.Contains(err, tt.says) {
				t.Errorf("exit %d, %q; want %d and a word about %q", code, err, exitUsage, tt.says)
			}
		})
	}
	if files, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*-setups*")); err != nil || len(files) > 0 {
		t.Errorf("written all the same: %v %v", files, err)
	}
}
