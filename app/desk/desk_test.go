package main

import (
	"bytes"
	"context"
	"crypto/rand"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"stillair/export/results"
)

// desk runs a command line as main does and returns its output.
func desk(t *testing.T, args ...string) (code int, out, err string) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	w := &world{Out: &stdout, Err: &stderr, Now: time.Now, After: time.After, Random: rand.Reader}
	code = run(t.Context(), w, args)
	return code, stdout.String(), stderr.String()
}

// good runs a command line that must work and returns its output.
func good(t *testing.T, args ...string) string {
	t.Helper()
	code, out, err := desk(t, args...)
	if code != exitDone {
		t.Fatalf("desk %s: exit %d: %s", strings.Join(args, " "), code, err)
	}
	return out
}

func readResults(t *testing.T, path string) *results.Document {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	d, err := results.Read(f, path)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestDemo runs the demo and checks that its files exist, that its summary says
// what a newcomer needs, and that analysing its session gives the same results
// to the last byte.
func TestDemo(t *testing.T) {
	t.Parallel()
	dir := filepath.Join(t.TempDir(), "a", "b")
	out := good(t, "demo", "--out", dir)
	for _, want := range []string{"invented", "Launches: 2", "Roll-ons", "Coast-downs", "CdA", "Crr", "Compared", "tall screen: ", "more drag", "±",
		"Compared with the true values", "report.html", "ride.jsonl.gz", "Next:"} {
		if !strings.Contains(out, want) {
			t.Errorf("the summary does not say %q:\n%s", want, out)
		}
	}
	for _, name := range []string{"ride.jsonl.gz", "results.json", "report.html", "track.csv", "runs.csv", "marks.csv", "road-load.csv", "power.csv", "comparisons.csv"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
	d := readResults(t, filepath.Join(dir, "results.json"))
	if len(d.RoadLoad) != 2 || len(d.Comparisons) != 1 || len(d.Power) == 0 || len(d.Runs) < 20 {
		t.Errorf("%d road loads, %d comparisons, %d power curves, %d runs", len(d.RoadLoad), len(d.Comparisons), len(d.Power), len(d.Runs))
	}
	written, err := os.ReadFile(filepath.Join(dir, "results.json"))
	if err != nil {
		t.Fatal(err)
	}
	if again := good(t, "analyse", filepath.Join(dir, "ride.jsonl.gz"), "--json"); again != string(written) {
		t.Error("analysing the demo's session gives other results than the demo")
	}
}

// TestAnalyse analyses a simulated ride with each of the options.
func TestAnalyse(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	good(t, "simulate", "--ride", "launches", "--out", dir, "--format", "zip", "--seed", "3")
	zip := filepath.Join(dir, "ride.zip")
	report := filepath.Join(dir, "new", "folder", "r.html")
	out := good(t, "analyse", zip, "--report", report, "--csv", filepath.Join(dir, "csv"), "--units", "both", "--rollon", "30-90km/h", "--rollon", "40-70mph", "--bike", "my bike", "--language", "de")
	for _, want := range []string{"Launches: 6", "0-100 km/h", "0-60 mph", "my bike", "r.html", "marks.csv"} {
		if !strings.Contains(out, want) {
			t.Errorf("the summary does not say %q:\n%s", want, out)
		}
	}
	page, err := os.ReadFile(report)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"my bike", `lang="de"`, "<h2>Starts</h2>"} {
		if !bytes.Contains(page, []byte(want)) {
			t.Errorf("the report does not say %q", want)
		}
	}
	if bytes.Contains(page, []byte("<h2>Launches</h2>")) {
		t.Error("the German report has an English title")
	}
	marks, err := os.ReadFile(filepath.Join(dir, "csv", "marks.csv"))
	if err != nil || !bytes.Contains(marks, []byte("30-90 km/h")) || !bytes.Contains(marks, []byte("40-70 mph")) || bytes.Contains(marks, []byte("80-120 km/h")) {
		t.Errorf("the pairs asked for are not those measured: %v\n%s", err, marks)
	}
	left, err := filepath.Glob(filepath.Join(dir, "new", "folder", ".*"))
	if err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

// TestGivenCounts checks that values on the command line take precedence over the
// recording: drag area is proportional to mass, and without air and mass the
// defaults are named.
func TestGivenCounts(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("analyses a ride of coast-downs three times")
	}
	dir := t.TempDir()
	good(t, "simulate", "--ride", "coast-downs", "--out", dir, "--nothing-entered")
	path := filepath.Join(dir, "ride.jsonl.gz")
	cda := func(extra ...string) float64 {
		file := filepath.Join(dir, "r.json")
		out := good(t, append([]string{"analyse", path, "--json"}, extra...)...)
		if err := os.WriteFile(file, []byte(out), 0o600); err != nil {
			t.Fatal(err)
		}
		d := readResults(t, file)
		if given := len(extra) > 0; given == slices.Contains(d.Defaults, "mass_kg") {
			t.Errorf("with %v the defaults are %v", extra, d.Defaults)
		}
		return *d.RoadLoad[0].CdA
	}
	cda()
	air := []string{"--mass-sd", "3", "--temperature", "18", "--pressure", "1009", "--humidity", "60"}
	light, heavy := cda(append(air, "--mass", "250")...), cda(append(air, "--mass", "300")...)
	if ratio := heavy / light; ratio < 1.19 || ratio > 1.21 {
		t.Errorf("mass 300 against 250 kg changed CdA by %.3f, want 1.2", ratio)
	}
}

// TestSimulateRepeats checks that a seed determines everything.
func TestSimulateRepeats(t *testing.T) {
	t.Parallel()
	files := map[string][]byte{}
	for name, seed := range map[string]string{"a": "5", "b": "5", "c": "6"} {
		dir := filepath.Join(t.TempDir(), name)
		good(t, "simulate", "--ride", "roll-ons", "--bike", "sport", "--seed", seed, "--out", dir, "--browser")
		for _, file := range []string{"ride.jsonl.gz", "truth.json"} {
			data, err := os.ReadFile(filepath.Join(dir, file))
			if err != nil {
				t.Fatal(err)
			}
			files[name+file] = data
		}
	}
	for _, file := range []string{"ride.jsonl.gz", "truth.json"} {
		if !bytes.Equal(files["a"+file], files["b"+file]) {
			t.Errorf("%s differs with the same seed", file)
		}
		if bytes.Equal(files["a"+file], files["c"+file]) {
			t.Errorf("%s is the same with another seed", file)
		}
	}
}

// TestErrors checks exit codes and that each message says what to do.
func TestErrors(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, []byte("hello, world\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	empty := filepath.Join(dir, "empty")
	if err := os.WriteFile(empty, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		args string
		code int
		says []string
	}{
		{"fly", exitUsage, []string{`"fly"`, "demo, analyse, compare, season, setups, plan, export", "--help"}},
		{"analyse", exitUsage, []string{"one recording", "--help"}},
		{"analyse a b", exitUsage, []string{"one recording"}},
		{"analyse --moon a", exitUsage, []string{"--moon"}},
		{"analyse --mass heavy a", exitUsage, []string{"heavy", "not a number"}},
		{"analyse --mass 3 FILE", exitInput, []string{"not a readable recording"}},
		{"analyse --units furlongs FILE", exitUsage, []string{"furlongs", "metric, imperial or both"}},
		{"analyse --rollon fast FILE", exitUsage, []string{"fast", "60-100km/h"}},
		{"analyse DIR/none", exitInput, []string{"DIR/none", "no such file", "check the name"}},
		{"analyse FILE", exitInput, []string{"FILE", "not a readable recording", "motion.csv"}},
		{"analyse EMPTY", exitInput, []string{"EMPTY", "empty"}},
		{"analyse DIR", exitInput, []string{"motion.csv"}},
		{"plan --change 4% --drive variator", exitUsage, []string{"variator", "no coast-downs", "--quicker"}},
		{"simulate --ride moon", exitUsage, []string{"moon", "coast-downs"}},
		{"simulate --bike moped", exitUsage, []string{"moped", "naked"}},
		{"simulate --format csv", exitUsage, []string{"csv", "plain"}},
		{"simulate more", exitUsage, []string{"no arguments"}},
		{"demo --units x", exitUsage, []string{"metric"}},
		{"simulate --ride roll-ons --out FILE/below", exitFailed, []string{"FILE"}},
	}
	for _, tt := range tests {
		replace := strings.NewReplacer("FILE", file, "EMPTY", empty, "DIR", dir)
		code, out, err := desk(t, strings.Fields(replace.Replace(tt.args))...)
		if code != tt.code || out != "" {
			t.Errorf("desk %s: exit %d, want %d; output %q; %s", tt.args, code, tt.code, out, err)
		}
		for _, s := range tt.says {
			if !strings.Contains(err, replace.Replace(s)) {
				t.Errorf("desk %s: %q does not say %q", tt.args, err, s)
			}
		}
	}
}

// TestImpossible checks that a value that is impossible for the recording is
// refused.
func TestImpossible(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	good(t, "simulate", "--ride", "roll-ons", "--out", dir)
	for _, flag := range []string{"--mass=3", "--pressure=10", "--humidity=120", "--temperature=200", "--wind-sd=-1"} {
		code, _, err := desk(t, "analyse", flag, filepath.Join(dir, "ride.jsonl.gz"))
		if code != exitUsage || !strings.Contains(err, "not possible") {
			t.Errorf("%s: exit %d, %s", flag, code, err)
		}
	}
}

func TestInterrupted(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	var out, errs bytes.Buffer
	code := run(ctx, &world{Out: &out, Err: &errs, Now: time.Now, After: time.After, Random: rand.Reader}, []string{"simulate", "--ride", "roll-ons", "--out", t.TempDir()})
	if code != exitInterrupted || out.Len() > 0 {
		t.Errorf("exit %d, output %q", code, out.String())
	}
}

// TestHelp checks that every command explains itself, each way it is asked.
func TestHelp(t *testing.T) {
	over := good(t)
	for _, c := range commands() {
		if !strings.Contains(over, c.Summary) {
			t.Errorf("the overview does not name %s", c.Name)
		}
		a, b, d := good(t, c.Name, "--help"), good(t, "help", c.Name), good(t, c.Name, "-h")
		if a != b || a != d || !strings.Contains(a, "Usage:  desk "+c.Name) || len(a) < 400 {
			t.Errorf("%s explains itself as\n%s", c.Name, a)
		}
		for _, line := range strings.Split(a, "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("%s: a line of the help is %d wide: %s", c.Name, n, line)
			}
		}
	}
	for _, args := range [][]string{{"--help"}, {"-h"}, {"help"}} {
		if good(t, args...) != over {
			t.Errorf("desk %v is not the overview", args)
		}
	}
}

// TestProgress checks that nothing is printed in the first second, and that a
// log file gets each stage once but a terminal the percentage.
func TestProgress(t *testing.T) {
	now := time.Unix(0, 0)
	for _, live := range []bool{false, true} {
		var errs bytes.Buffer
		w := &world{Err: &errs, Now: func() time.Time { return now }, Live: live}
		p := w.progress()
		p.at("smoothing", 0.1)
		if errs.Len() > 0 {
			t.Error("the first second is not silent")
		}
		now = now.Add(2 * time.Second)
		p.at("smoothing", 0.2)
		p.at("smoothing", 0.2)
		p.at("smoothing", 0.3)
		p.end()
		want := "smoothing\n"
		if live {
			want = "\r\033[Ksmoothing, 20 %\r\033[Ksmoothing, 30 %\r\033[K"
		}
		if errs.String() != want {
			t.Errorf("live %v: %q", live, errs.String())
		}
	}
}

// TestDuring checks that a long task says so, once, and that an interrupt does
// not wait for it.
func TestDuring(t *testing.T) {
	for _, live := range []bool{false, true} {
		var errs bytes.Buffer
		tick := make(chan time.Time)
		w := &world{Err: &errs, Live: live, After: func(time.Duration) <-chan time.Time { return tick }}
		failed := errors.New("failed")
		err := w.during(t.Context(), "reading", func() error { tick <- time.Time{}; return failed })
		want := "reading …\n"
		if live {
			want = "reading …" + clearLine
		}
		if !errors.Is(err, failed) || errs.String() != want {
			t.Errorf("live %v: %v, %q", live, err, errs.String())
		}
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	w := &world{After: time.After}
	never := make(chan error)
	if err := w.during(ctx, "", func() error { return <-never }); !errors.Is(err, context.Canceled) {
		t.Errorf("interrupted: %v", err)
	}
}

// TestSaveLeavesNoHalfFile checks that a failed write leaves no partial file,
// and keeps an existing one.
func TestSaveLeavesNoHalfFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.html")
	if err := os.WriteFile(path, []byte("before"), 0o600); err != nil {
		t.Fatal(err)
	}
	full := errors.New("disk full")
	err := save(path, func(out io.Writer) error {
		if _, err := out.Write(make([]byte, 1<<20)); err != nil {
			return err
		}
		return full
	})
	if !errors.Is(err, full) {
		t.Errorf("save said %v", err)
	}
	if got, err := os.ReadFile(path); err != nil || string(got) != "before" {
		t.Errorf("%q %v", got, err)
	}
	if all, err := fs.Glob(os.DirFS(filepath.Dir(path)), "*"); err != nil || len(all) != 1 {
		t.Errorf("left behind: %v %v", all, err)
	}
}

func TestWrapped(t *testing.T) {
	p := &page{}
	p.wrapped(4, strings.Repeat("word ", 40))
	for _, line := range strings.Split(strings.TrimRight(p.String(), "\n"), "\n") {
		if len(line) > 80 || !strings.HasPrefix(line, "    word") {
			t.Errorf("%d: %q", len(line), line)
		}
	}
	if n := strings.Count(p.String(), "word"); n != 40 {
		t.Errorf("%d words left of 40", n)
	}
}
