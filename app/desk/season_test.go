package main

import (
	"archive/zip"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tidwall/gjson"
)

// TestSeason combines two recordings and a results file: the cost of each part is
// found even for parts that were never ridden on the same day, and the truth lies
// within the bands.
func TestSeason(t *testing.T) {
	t.Parallel()
	dir, made := t.TempDir(), t.TempDir()
	rides := [][]string{{"short screen", "tall screen"}, {"tall screen", "tall screen + panniers"}, {"short screen", "short screen + panniers"}}
	for i, setups := range rides {
		args := []string{"simulate", "--browser", "--seed", string(rune('1' + i)), "--out", made}
		for _, s := range setups {
			args = append(args, "--setup", s)
		}
		good(t, args...)
		name := string(rune('a'+i)) + ".jsonl.gz"
		if err := os.Rename(filepath.Join(made, "ride.jsonl.gz"), filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	first := filepath.Join(dir, "a.jsonl.gz")
	if err := os.WriteFile(filepath.Join(dir, "a.json"), []byte(good(t, "analyse", first, "--json")), 0o600); err != nil {
		t.Fatal(err)
	}
	out := t.TempDir()
	good(t, "export", dir, "--as", "parquet,results", "--ends", "0", "--into", out)
	sameSeason(t, out)
	if err := os.Remove(first); err != nil { // its results hold all that a season needs
		t.Fatal(err)
	}
	doc := good(t, "season", dir, "--base", "short screen", "--json")
	if n := gjson.Get(doc, "bikes.0.rides.#").Int(); n != int64(len(rides)) || gjson.Get(doc, "bikes.0.rides.0.density_altitude_m").Float() < 100 {
		t.Fatalf("%d rides: %s", n, doc)
	}
	for _, e := range gjson.Get(doc, "bikes.0.drag_budget.effects").Array() {
		want := map[string]float64{"tall screen": 0.08 * 0.55, "panniers": 0.11 * 0.55}[e.Get("part").String()]
		ci := e.Get("ci95_m2").Array()
		reach := 1.5 * (ci[1].Float() - ci[0].Float()) // three standard errors, since the seed was not selected
		if got := e.Get("delta_cda_m2.value").Float(); want == 0 || got < want-reach || got > want+reach || reach > 0.1 {
			t.Errorf("%s: %v, true %.4f", e.Get("part"), e.Get("delta_cda_m2"), want)
		}
	}
	page := good(t, "season", dir, "--battery", "12", "--at", "90km/h")
	for _, want := range []string{"Drag of each part, compared with", "panniers", "density altitude", "Wh/km", "more drag (95 %"} {
		if !strings.Contains(page, want) {
			t.Errorf("it does not say %q:\n%s", want, page)
		}
	}
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{nil, exitUsage, "takes a folder"},
		{[]string{filepath.Join(dir, "nowhere")}, exitInput, "nowhere"},
		{[]string{dir, "--battery", "-1"}, exitUsage, "kWh"},
		{[]string{t.TempDir()}, exitInput, "no recording"},
	} {
		if code, _, said := desk(t, append([]string{"season"}, c.args...)...); code != c.code || !strings.Contains(said, c.says) {
			t.Errorf("%v: exit %d, %s", c.args, code, said)
		}
	}
}

// sameSeason checks that the season of rides exported as Parquet, as files,
// folders and one zip, equals that of the same rides as JSON to the last digit,
// both printed and as JSON. A ride that is in both counts once.
func sameSeason(t *testing.T, exported string) {
	t.Helper()
	as, packed := t.TempDir(), t.TempDir()
	found, _ := filepath.Glob(filepath.Join(exported, "*.json"))
	for _, f := range found {
		if err := os.Rename(f, filepath.Join(as, filepath.Base(f))); err != nil {
			t.Fatal(err)
		}
	}
	tables, _ := filepath.Glob(filepath.Join(exported, "*", "*.parquet"))
	if len(found) == 0 || len(tables) != 7*len(found) {
		t.Fatalf("%d results, %d tables", len(found), len(tables))
	}
	zipFiles(t, filepath.Join(packed, "rides-parquet.zip"), exported, tables)
	asSeen := func(args ...string) string {
		return strings.ReplaceAll(good(t, append([]string{"season"}, args...)...), ".json", "")
	}
	for _, more := range [][]string{{"--json"}, {"--battery", "12"}} {
		want := asSeen(append(more, as)...)
		for name, from := range map[string][]string{"a folder": {exported}, "files": tables, "a zip": {packed}} {
			if got := asSeen(append(from, more...)...); got != want || !strings.Contains(got, "panniers") {
				t.Errorf("%s %v: from JSON\n%s\nfrom Parquet\n%s", name, more, want, got)
			}
		}
	}
	both := good(t, "season", as, exported)
	if n := strings.Count(both, "counts once"); n != len(found) {
		t.Errorf("%d of %d rides that came twice are left out:\n%s", n, len(found), both)
	}
	bad := filepath.Join(exported, "road-load", "bad.parquet")
	if err := os.WriteFile(bad, []byte("PAR1 and no more"), 0o600); err != nil {
		t.Fatal(err)
	}
	if said := strings.Join(strings.Fields(good(t, "season", exported)), " "); !strings.Contains(said, "bad.parquet: this is not a complete Parquet file") || !strings.Contains(said, "export it again") {
		t.Errorf("a broken table is not named:\n%s", said)
	}
	if code, _, said := desk(t, "season", bad); code != exitInput || !strings.Contains(said, "bad.parquet") {
		t.Errorf("a broken table alone: exit %d, %s", code, said)
	}
}

func zipFiles(t *testing.T, to, root string, paths []string) {
	t.Helper()
	f, err := os.Create(to)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	z := zip.NewWriter(f)
	for _, p := range paths {
		name, err := filepath.Rel(root, p)
		if err != nil {
			t.Fatal(err)
		}
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		w, err := z.Create(filepath.ToSlash(name))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write(data); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
}
