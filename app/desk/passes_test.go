package main

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tidwall/gjson"
)

// TestPasses follows flying passes from a ride through its summary and results to a
// season, which is the same from JSON and from Parquet.
func TestPasses(t *testing.T) {
	t.Parallel()
	dir, out := t.TempDir(), t.TempDir()
	good(t, "simulate", "--ride", "passes", "--seed", "3", "--out", dir)
	ride := filepath.Join(dir, "ride.jsonl.gz")
	for _, c := range []struct{ units, over, not string }{{"metric", " 1 km ", "1 mile"}, {"imperial", "1 mile", " 1 km "}, {"both", "1 mile", "nothing"}} {
		said := strings.Join(strings.Fields(good(t, "analyse", ride, "--units", c.units)), " ")
		for _, want := range []string{"Flying passes, mean of both directions", c.over, "half the difference", "closed courses only"} {
			if !strings.Contains(said, want) || strings.Contains(said, c.not) {
				t.Errorf("%s: it does not say %q, or says %q:\n%s", c.units, want, c.not, said)
			}
		}
	}
	doc := good(t, "analyse", ride, "--json")
	passes := gjson.Get(doc, "passes").Array()
	if len(passes) != 2 {
		t.Fatalf("%d passes", len(passes))
	}
	for _, p := range passes {
		for _, s := range p.Get("speeds").Array() {
			there, back := s.Get("there_mps.value").Float(), s.Get("back_mps.value").Float()
			if mean := s.Get("mean_mps.value").Float(); math.Abs(mean-(there+back)/2) > 1e-4 || mean < 40 || s.Get("mean_mps.se").Float() <= 0 {
				t.Errorf("%s: mean of %.3f and %.3f m/s is %.3f", s.Get("over"), there, back, mean)
			}
		}
	}
	good(t, "export", ride, "--as", "parquet,results,report", "--ends", "0", "--into", out)
	asJSON := good(t, "season", filepath.Join(out, "ride.json"), "--json")
	tables, _ := filepath.Glob(filepath.Join(out, "*", "*.parquet"))
	asTables := good(t, append([]string{"season", "--json"}, tables...)...)
	if strings.ReplaceAll(asJSON, "ride.json", "ride") != asTables || gjson.Get(asJSON, "bikes.0.passes.#(over==\"1 km\")#|#").Int() != 2 {
		t.Errorf("from JSON\n%s\nfrom Parquet\n%s", asJSON, asTables)
	}
	if said := good(t, "season", out); strings.Count(said, "  1 km  ") != 2 || !strings.Contains(said, "closed courses only") {
		t.Errorf("the season says\n%s", said)
	}
	if none := good(t, "season", out, "--within", "10s"); strings.Contains(none, "Flying passes") {
		t.Errorf("legs a minute apart are within 10 s:\n%s", none)
	}
}
