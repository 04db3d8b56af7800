package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tidwall/gjson"
)

// TestSeason puts two recordings and a results file together: what a part costs is
// found with the parts that were never ridden side by side, and the truth lies
// within the bands.
func TestSeason(t *testing.T) {
	t.Parallel()
	dir, made := t.TempDir(), t.TempDir()
	rides := [][]string{{"short screen", "tall screen"}, {"tall screen", "tall screen + panniers"}, {"short screen", "short screen + panniers"}}
	if testing.Short() {
		rides = rides[:2]
	}
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
	if err := os.Remove(first); err != nil { // its results say all that a season needs
		t.Fatal(err)
	}
	doc := good(t, "season", dir, "--base", "short screen", "--json")
	if n := gjson.Get(doc, "bikes.0.rides.#").Int(); n != int64(len(rides)) || gjson.Get(doc, "bikes.0.rides.0.density_altitude_m").Float() < 100 {
		t.Fatalf("%d rides: %s", n, doc)
	}
	for _, e := range gjson.Get(doc, "bikes.0.drag_budget.effects").Array() {
		want := map[string]float64{"tall screen": 0.08 * 0.55, "panniers": 0.11 * 0.55}[e.Get("part").String()]
		ci := e.Get("ci95_m2").Array()
		reach := 1.5 * (ci[1].Float() - ci[0].Float()) // of a seed that was not chosen, three standard errors
		if got := e.Get("delta_cda_m2.value").Float(); want == 0 || got < want-reach || got > want+reach || reach > 0.1 {
			t.Errorf("%s: %v, true %.4f", e.Get("part"), e.Get("delta_cda_m2"), want)
		}
	}
	out := good(t, "season", dir, "--battery", "12", "--at", "90km/h")
	for _, want := range []string{"What each part costs, counted from", "panniers", "density altitude", "Wh/km"} {
		if !strings.Contains(out, want) {
			t.Errorf("it does not say %q:\n%s", want, out)
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
