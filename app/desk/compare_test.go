package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/tidwall/gjson"
)

// TestPlan holds what a rider reads off a plan that works and one that does not.
func TestPlan(t *testing.T) {
	tests := []struct {
		name  string
		args  []string
		wants []string
	}{
		{"enough", []string{"--change", "5%", "--wind-sd", "0.5"}, []string{"pairs of opposite coast-downs with each setup will do", "A ×", "then B ×", "chance of seeing it", "law of the place"}},
		{"cannot", []string{"--change", "0.5%", "--wind-sd", "2"}, []string{"It cannot be done like this", "What would help", "a calmer day"}},
		{"top speed", []string{"--faster", "5km/h", "--top-speed", "200km/h"}, []string{"To see a change of 7.7 % in drag"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			out := good(t, append([]string{"plan"}, tt.args...)...)
			for _, want := range tt.wants {
				if !strings.Contains(out, want) {
					t.Errorf("it does not say %q:\n%s", want, out)
				}
			}
		})
	}
	doc := good(t, "plan", "--change", "5%", "--wind-sd", "0.5", "--json")
	if !gjson.Valid(doc) || !gjson.Get(doc, "enough").Bool() || gjson.Get(doc, "road_length_m").Float() < 500 {
		t.Errorf("JSON: %s", doc)
	}
}

func TestPlanRefuses(t *testing.T) {
	tests := []struct {
		name string
		args []string
		code int
		says string
	}{
		{"nothing asked", nil, exitUsage, "what change matters"},
		{"two questions", []string{"--change", "2%", "--faster", "5km/h"}, exitUsage, "not both"},
		{"no unit", []string{"--faster", "5", "--top-speed", "200km/h"}, exitUsage, "110km/h"},
		{"no top speed", []string{"--faster", "5km/h"}, exitUsage, "--top-speed"},
		{"share", []string{"--change", "200%"}, exitUsage, "share"},
		{"one setup", []string{"--change", "2%", "--setups", "1"}, exitUsage, "two setups"},
		{"no such results", []string{"--change", "2%", "--results", "nowhere.json"}, exitInput, "cannot be opened"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, _, err := desk(t, append([]string{"plan"}, tt.args...)...)
			if code != tt.code || !strings.Contains(err, tt.says) {
				t.Errorf("exit %d, %q; want %d and a word about %q", code, err, tt.code, tt.says)
			}
		})
	}
}

// TestCompare rides an invented test of two setups twice and compares within
// and across the rides; the plan then starts from what was measured.
func TestCompare(t *testing.T) {
	dir := t.TempDir()
	first, second := filepath.Join(dir, "first"), filepath.Join(dir, "second")
	good(t, "demo", "--out", first)
	good(t, "demo", "--out", second, "--seed", "2")
	a, b := filepath.Join(first, "ride.jsonl.gz"), filepath.Join(second, "ride.jsonl.gz")
	out := good(t, "compare", a, "--at", "130km/h", "--fuel", "5.2", "--fuel-at", "110km/h", "--tank", "18")
	for _, want := range []string{"tall screen has", "more drag", "power at 130 km/h", "slower on the same power", "l/100 km more", "range on 18 l", "a steady 130 km/h takes"} {
		if !strings.Contains(out, want) {
			t.Errorf("it does not say %q:\n%s", want, out)
		}
	}
	doc := good(t, "compare", a, b, "--json")
	if n := gjson.Get(doc, "rides.#").Int(); n != 2 {
		t.Errorf("%d rides in the JSON", n)
	}
	if n := gjson.Get(doc, "across.#").Int(); n != 4 {
		t.Errorf("%d comparisons across rides, want every setup of one with every one of the other: 4", n)
	}
	if note := gjson.Get(doc, "across.0.notes.0").String(); !strings.Contains(note, "weaker") {
		t.Errorf("a comparison across rides does not say that it is weaker: %q", note)
	}
	both := good(t, "compare", a, b)
	if n := strings.Count(both, "What "); n < 4+2 {
		t.Errorf("what a difference costs is told %d times, want for each within and across the rides:\n%s", n, both)
	}
	plan := good(t, "plan", "--change", "4%", "--wind-sd", "0.5", "--results", filepath.Join(first, "results.json"))
	if !strings.Contains(plan, "pairs of opposite coast-downs") {
		t.Errorf("a plan from earlier results: %s", plan)
	}
}

func TestCompareRefuses(t *testing.T) {
	tests := []struct {
		name string
		args []string
		code int
		says string
	}{
		{"nothing", nil, exitUsage, "one recording or more"},
		{"fuel without its speed", []string{"x", "--fuel", "5"}, exitUsage, "--fuel-at"},
		{"no such file", []string{"nowhere.jsonl.gz"}, exitInput, "no such file"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			code, _, err := desk(t, append([]string{"compare"}, tt.args...)...)
			if code != tt.code || !strings.Contains(err, tt.says) {
				t.Errorf("exit %d, %q; want %d and a word about %q", code, err, tt.code, tt.says)
			}
		})
	}
}
