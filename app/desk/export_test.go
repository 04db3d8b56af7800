package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"stillair/app/input"
	"stillair/app/relabel"
	"stillair/export/results"
	"stillair/export/session"
	"stillair/export/share"
	"stillair/export/words"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
)

// exportRide is a short invented ride with a roll-on, as a session file with a
// name and a remark, and its log.
func exportRide(t *testing.T, path string) *sensors.Log {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = []sim.Act{sim.RollOn{From: 55 / 3.6, To: 110 / 3.6}, sim.Reach{Speed: 14}, sim.RollOn{From: 55 / 3.6, To: 110 / 3.6}, sim.Hold{Speed: 110 / 3.6, Seconds: 30}, sim.Brake{}, sim.Stand{Seconds: 3}}
	ride, err := sim.Run(sc, 3)
	if err != nil {
		t.Fatal(err)
	}
	log := ride.Log
	last := log.Motion[len(log.Motion)-1].T
	for _, f := range log.Fixes {
		log.Sound = append(log.Sound, sensors.Sound{T: f.T, Rate: sensors.SoundRate, Level: make([]int16, 300)})
	}
	rec := &session.Recording{Header: session.Header{ID: session.ID{1}, Start: log.Motion[0].T, Started: sc.Start, Device: "invented"}, Name: "to the lake",
		Log: log, Remarks: []session.Remark{{T: log.Motion[0].T + 1, Text: "at my door"}, {T: (log.Motion[0].T + last) / 2, Text: "halfway"}}}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	if err := session.WriteRecording(session.ToFile(f), rec); err != nil {
		t.Fatal(err)
	}
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	return log
}

const allFormats = "gpx,geojson,csv,parquet,session,plain,results,report"

// TestExportEveryFormat writes every format and checks that none contains
// either end of the ride.
func TestExportEveryFormat(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path, into := filepath.Join(dir, "evening.jsonl.gz"), filepath.Join(dir, "out")
	log := exportRide(t, path)
	code, out, errs := desk(t, "export", path, "--as", allFormats, "--into", into)
	if code != exitDone || errs != "" || !strings.Contains(out, "1 exported into") {
		t.Fatalf("exit code %d, said %s%s", code, out, errs)
	}
	for _, name := range []string{"evening.gpx", "evening.geojson", "evening/track.csv", "evening/runs.csv", "evening/marks.csv", "evening/road-load.csv", "evening/comparisons.csv", "evening/power.csv", "comparisons/evening.parquet", "power/evening.parquet",
		"samples/evening.parquet", "runs/evening.parquet", "marks/evening.parquet", "road-load/evening.parquet", "evening.jsonl.gz", "evening.zip", "evening.json", "evening.html"} {
		if info, err := os.Stat(filepath.Join(into, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, name := range []string{"evening.jsonl.gz", "evening.zip"} {
		ride, err := input.Open(filepath.Join(into, name))
		if err != nil {
			t.Fatal(err)
		}
		checkEndsAreGone(t, name, log, ride.Log)
	}
	checkPlacesGone(t, filepath.Join(into, "evening.gpx"), regexp.MustCompile(`lat="([-0-9.]+)" lon="([-0-9.]+)"`), log, 1, 2)
	checkPlacesGone(t, filepath.Join(into, "evening.geojson"), regexp.MustCompile(`\[\s*([-0-9.]+),\s*([-0-9.]+)\s*\]`), log, 2, 1)
	track := string(readFile(t, filepath.Join(into, "evening/track.csv")))
	first, err := strconv.ParseFloat(strings.Split(strings.Split(track, "\r\n")[1], ",")[0], 64)
	if err != nil || first < 0 || first > 1 {
		t.Errorf("the table of the track begins at %v s, and not at zero: %v", first, err)
	}
	if ride, err := input.Open(filepath.Join(into, "evening.jsonl.gz")); err != nil || ride.Session.Name != "to the lake" || len(ride.Session.Remarks) != 1 {
		t.Errorf("the session's name or remarks are not as they should be: %v", err)
	}
}

func readFile(t *testing.T, path string) []byte {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// whenGone is the time at which the ride had covered a distance in m, by its speeds.
func whenGone(log *sensors.Log, metres float64) float64 {
	for i, s := 1, 0.0; i < len(log.Fixes); i++ {
		a, b := log.Fixes[i-1], log.Fixes[i]
		if s += (a.Speed + b.Speed) / 2 * (b.T - a.T); s >= metres {
			return b.T
		}
	}
	return math.Inf(1)
}

func checkEndsAreGone(t *testing.T, name string, log, got *sensors.Log) {
	t.Helper()
	from, to := relabel.Span(got)
	gone := whenGone(log, 190) // what is left begins at zero
	if len(got.Fixes) == 0 || from < 0 || from > 1 || to > log.Fixes[len(log.Fixes)-1].T-5-gone {
		t.Errorf("%s: from %v s to %v s is left of a ride of %v fixes", name, from, to, len(log.Fixes))
	}
	for _, f := range got.Fixes {
		if f.HasPosition() && (metres(f.LatDeg, f.LonDeg, log.Fixes[0]) < 199 || metres(f.LatDeg, f.LonDeg, log.Fixes[len(log.Fixes)-1]) < 199) {
			t.Errorf("%s: a place within 200 m of an end is in it", name)
		}
	}
}

// metres is a distance on a flat Earth with 111 320 m a degree (from memory),
// independent of package share.
func metres(lat, lon float64, f sensors.Fix) float64 {
	return 111320 * math.Hypot(lat-f.LatDeg, (lon-f.LonDeg)*math.Cos(lat*math.Pi/180))
}

func checkPlacesGone(t *testing.T, path string, place *regexp.Regexp, log *sensors.Log, lat, lon int) {
	t.Helper()
	found := place.FindAllStringSubmatch(string(readFile(t, path)), -1)
	if len(found) < 10 {
		t.Fatalf("%s: only %d places", path, len(found))
	}
	for _, m := range found {
		y, err1 := strconv.ParseFloat(m[lat], 64)
		x, err2 := strconv.ParseFloat(m[lon], 64)
		if err1 != nil || err2 != nil || metres(y, x, log.Fixes[0]) < 199 || metres(y, x, log.Fixes[len(log.Fixes)-1]) < 199 {
			t.Errorf("%s: %s is within 200 m of an end", path, m[0])
		}
	}
}

// TestExportPlaces checks what is removed of places, the ends and the date.
func TestExportPlaces(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := filepath.Join(dir, "a.jsonl.gz")
	log := exportRide(t, path)
	for _, c := range []struct {
		name  string
		flags []string
		check func(*sensors.Log) bool
	}{
		{"everything", []string{"--ends", "0"}, func(l *sensors.Log) bool {
			return len(l.Motion) == len(log.Motion) && math.Abs(l.Fixes[9].LatDeg-log.Fixes[9].LatDeg) < 1e-8 && !l.Fixes[9].UTC.IsZero()
		}},
		{"moved", []string{"--places", "moved"}, func(l *sensors.Log) bool {
			return math.Abs(l.Fixes[0].LatDeg) < 0.1 && math.Abs(l.Fixes[0].LonDeg) < 0.1 && l.Fixes[9].HasPosition()
		}},
		{"without", []string{"--places", "without"}, func(l *sensors.Log) bool { return !l.Fixes[0].HasPosition() && math.IsNaN(l.Fixes[0].Alt) }},
		{"sound unasked", nil, func(l *sensors.Log) bool { return len(l.Sound) == 0 }},
		{"sound", []string{"--sound"}, func(l *sensors.Log) bool { return len(l.Sound) > 20 && len(l.Sound) < len(log.Sound) }},
		{"undated", []string{"--date", "none"}, func(l *sensors.Log) bool { return l.Fixes[0].UTC.IsZero() }},
	} {
		into := filepath.Join(dir, c.name)
		if code, _, errs := desk(t, append([]string{"export", path, "--as", "session", "--into", into}, c.flags...)...); code != exitDone {
			t.Errorf("%s: %s", c.name, errs)
			continue
		}
		ride, err := input.Open(filepath.Join(into, "a.jsonl.gz"))
		if err != nil || !c.check(ride.Log) {
			t.Errorf("%s: %v", c.name, err)
		}
		if c.name == "undated" && err == nil && !ride.Session.Header.Started.IsZero() {
			t.Error("undated: the header has a date")
		}
	}
}

// TestExportGoesOn checks that one bad recording does not stop the others, and
// that the error names the remedy.
func TestExportGoesOn(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	rides := filepath.Join(dir, "rides")
	if err := os.MkdirAll(filepath.Join(rides, "b"), 0o755); err != nil {
		t.Fatal(err)
	}
	exportRide(t, filepath.Join(rides, "good.jsonl.gz"))
	exportRide(t, filepath.Join(rides, "b", "good.jsonl.gz"))
	if err := os.WriteFile(filepath.Join(rides, "bad.jsonl.gz"), []byte("no"), 0o600); err != nil {
		t.Fatal(err)
	}
	into := filepath.Join(dir, "out")
	code, out, errs := desk(t, "export", rides, filepath.Join(rides, "b"), filepath.Join(dir, "gone.zip"), "--as", "plain", "--into", into)
	if code != exitInput || !strings.Contains(errs, "bad.jsonl.gz: this is not a session file") || !strings.Contains(errs, "gone.zip: there is no such file") ||
		!strings.Contains(errs, "2 of 4 recordings could not be exported") {
		t.Errorf("exit code %d, said %s%s", code, out, errs)
	}
	for _, name := range []string{"good.zip", "good-2.zip"} {
		if _, err := os.Stat(filepath.Join(into, name)); err != nil {
			t.Error(err)
		}
	}
}

// TestExportNeverReplacesARecording exports into the folder of the recording.
func TestExportNeverReplacesARecording(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := filepath.Join(dir, "a.jsonl.gz")
	exportRide(t, path)
	before := readFile(t, path)
	code, _, errs := desk(t, "export", path, "--as", "session", "--into", dir)
	if code != exitInput || !strings.Contains(errs, "would replace the recording") || !strings.Contains(errs, "--into") {
		t.Errorf("exit code %d, said %s", code, errs)
	}
	if !bytes.Equal(before, readFile(t, path)) {
		t.Error("the recording was changed")
	}
}

func TestExportCommandLine(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{nil, "at least one recording"},
		{[]string{"a", "--as", "doc"}, `there is no format "doc"`},
		{[]string{"a", "--places", "away"}, "kept, moved or without"},
		{[]string{"a", "--ends", "much"}, "--ends much is not possible"},
		{[]string{"a", "--ends", "-5m"}, "--ends -5m is not possible"},
		{[]string{"a", "--as", "gpx", "--places", "without"}, "gpx consists of places only"},
		{[]string{"a", "--at-once", "0"}, "at least 1"},
		{[]string{"a", "--rollon", "60"}, ""},
	} {
		if code, _, errs := desk(t, append([]string{"export"}, c.args...)...); code != exitUsage || !strings.Contains(errs, c.says) {
			t.Errorf("%v: exit code %d, said %s", c.args, code, errs)
		}
	}
}

func TestParseLength(t *testing.T) {
	for text, want := range map[string]float64{"200m": 200, "0": 0, "0.5km": 500, "650ft": 198.12, "12": 12, "1e3 m": 1000} {
		if got, ok := parseLength(text); !ok || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v, %v", text, got, ok)
		}
	}
	for _, text := range []string{"", "m", "-1m", "NaN", "Inf", "1e9km", "200 miles"} {
		if got, ok := parseLength(text); ok {
			t.Errorf("%q was read as %v", text, got)
		}
	}
}

// TestExportTooShort checks that a ride of less than both ends is refused, with
// the length that was asked for.
func TestExportTooShort(t *testing.T) {
	t.Parallel()
	o := &order{choice: share.Choice{EndsCut: 50e3}}
	err := o.lacks(format{name: "session", ride: true}, &exported{log: &sensors.Log{}}, "a.jsonl.gz")
	var input *sensors.InputError
	if !errors.As(err, &input) || input.File != "a.jsonl.gz" || input.Remedy.Code != "desk.less_ends" {
		t.Fatalf("%v", err)
	}
	if ends, ok := input.What.Arg("ends"); input.What.Code != "desk.nothing_left" || !ok || !ends.Equal(finding.Distance("ends", 50e3)) {
		t.Errorf("said %s", input.What)
	}

	dir := t.TempDir()
	path := filepath.Join(dir, "a.jsonl.gz")
	exportRide(t, path)
	code, _, errs := desk(t, "export", path, "--as", "session", "--ends", "50km", "--into", filepath.Join(dir, "out"))
	if want := words.ForMachines().Say(input.What); code != exitInput || !strings.Contains(errs, want) {
		t.Errorf("exit code %d, said %s, want %q", code, errs, want)
	}
}

// TestExportResults reads the results as any program would.
func TestExportResults(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	path := filepath.Join(dir, "a.jsonl.gz")
	exportRide(t, path)
	if code, _, errs := desk(t, "export", path, "--as", "results", "--into", dir); code != exitDone {
		t.Fatal(errs)
	}
	var doc struct {
		Version int
		Runs    []struct{ Kind string }
		Notes   []string
	}
	if err := json.Unmarshal(readFile(t, filepath.Join(dir, "a.json")), &doc); err != nil || doc.Version != results.Version || len(doc.Runs) == 0 {
		t.Errorf("%v: %+v", err, doc)
	}
	for _, n := range doc.Notes {
		if strings.Contains(n, dir) {
			t.Errorf("a note tells where the recording lay: %s", n)
		}
	}
}

// TestExportKeepsRecordingsApart joins two recordings to one file and exports it:
// each becomes a separate file of the current version.
func TestExportKeepsRecordingsApart(t *testing.T) {
	dir := t.TempDir()
	var joined []byte
	for i, ride := range []string{"coast-downs", "roll-ons"} {
		if code, _, stderr := desk(t, "simulate", "--ride", ride, "--out", filepath.Join(dir, ride)); code != 0 {
			t.Fatalf("simulate %d: %s", i, stderr)
		}
		data, err := os.ReadFile(filepath.Join(dir, ride, "ride.jsonl.gz"))
		if err != nil {
			t.Fatal(err)
		}
		joined = append(joined, data...)
	}
	path := filepath.Join(dir, "both.jsonl.gz")
	if err := os.WriteFile(path, joined, 0o600); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(dir, "out")
	code, stdout, stderr := desk(t, "export", path, "--as", "session", "--ends", "0", "--into", out)
	if code != 0 || !strings.Contains(stdout, "another recording") {
		t.Fatalf("code %d, %s%s", code, stdout, stderr)
	}
	for _, name := range []string{"both.jsonl.gz", "both-recording-2.jsonl.gz"} {
		f, err := os.Open(filepath.Join(out, name))
		if err != nil {
			t.Fatal(err)
		}
		all, err := session.ReadAll(f, name)
		if err != nil || len(all) != 1 || all[0].Header.ID == (session.ID{}) || len(all[0].Missing) > 0 {
			t.Errorf("%s: %d recordings, %v", name, len(all), err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
}
