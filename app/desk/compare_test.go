package main

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"github.com/tidwall/gjson"

	"stillair/export/words"
	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// TestPlan checks the text of a plan that works and of one that does not.
func TestPlan(t *testing.T) {
	tests := []struct {
		name  string
		args  []string
		wants []string
	}{
		{"enough", []string{"--change", "5%", "--wind-sd", "0.5"}, []string{"pairs of opposite coast-downs with each setup will do", "A ×", "then B ×", "chance of showing it", "Local law"}},
		{"cannot", []string{"--change", "0.5%", "--wind-sd", "2"}, []string{"This plan cannot show it", "What would help", "a calmer day"}},
		{"top speed", []string{"--faster", "5km/h", "--top-speed", "200km/h"}, []string{"To show a change of 7.7 % in drag"}},
		{"one setup", []string{"--change", "5%", "--setups", "1", "--wind-sd", "0.5", "--most-pairs", "12"}, []string{"To know the drag of one setup", "from noise alone, ±", "A ×"}},
		{"still air", []string{"--change", "4%", "--wind-sd", "0"}, []string{"will do", "wobble", "rear wheel locks"}},
		{"power", []string{"--power", "4%", "--engine", "55kW", "--wind-sd", "0.5"}, []string{"power from 50 to 130 km/h", "opposite pulls with each setup will do", "repeats by 1.0 %", "closed course"}},
		{"launch", []string{"--quicker", "0.2s", "--over", "0-100km/h", "--takes", "4.5s"}, []string{"0.20 s in 0-100 km/h from the rollout", "opposite launches with each setup will do", "repeats by 0.10 s"}},
		{"quarter mile", []string{"--quicker", "0.05s", "--over", "1/4mile", "--spread", "0.2s"}, []string{"0.05 s in 1/4 mile", "This plan cannot show it", "half as far apart"}},
		{"roll-on", []string{"--quicker", "0.5s", "--over", "80-120km/h", "--takes", "6s", "--wind-sd", "0.5"}, []string{"0.50 s in 80-120 km/h", "opposite roll-ons with each setup will do"}},
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
	for field, args := range map[string][]string{"delta_power_relative_se": {"--power", "4%"}, "delta_time_se_s": {"--quicker", "0.2s", "--over", "60-100km/h"}} {
		doc := good(t, append([]string{"plan", "--json"}, args...)...)
		if !gjson.Valid(doc) || !(gjson.Get(doc, field).Float() > 0) || gjson.Get(doc, "delta_cda_relative_se").Exists() {
			t.Errorf("JSON without %s: %s", field, doc)
		}
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
		{"no setup", []string{"--change", "2%", "--setups", "0"}, exitUsage, "at least 1 setup"},
		{"power of one setup", []string{"--power", "2%", "--setups", "1"}, exitUsage, "at least 2 setups"},
		{"like two things", []string{"--change", "2%", "--like", "a", "--results", "b"}, exitUsage, "give one"},
		{"drag and power", []string{"--change", "2%", "--power", "4%"}, exitUsage, "one question at a time"},
		{"time of what", []string{"--quicker", "0.2s"}, exitUsage, "--over"},
		{"no such mark", []string{"--quicker", "0.2s", "--over", "0-777km/h"}, exitUsage, "0-100 km/h"},
		{"time without unit", []string{"--quicker", "0.2", "--over", "0-100km/h"}, exitUsage, "0.2s"},
		{"power without unit", []string{"--power", "2%", "--engine", "50"}, exitUsage, "55kW"},
		{"spread in the wrong unit", []string{"--power", "2%", "--spread", "0.1s"}, exitUsage, "not a share"},
		{"far too quick", []string{"--quicker", "0.2s", "--over", "0-100km/h", "--takes", "0.3s"}, exitUsage, "no bike does that in 0.3 s"},
		{"too weak", []string{"--power", "2%", "--engine", "5kW"}, exitUsage, "not strong enough"},
		{"speeds of a launch", []string{"--quicker", "0.2s", "--over", "0-100km/h", "--from", "20km/h"}, exitUsage, "--over says"},
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

// TestCompare simulates a test of two setups twice and compares within and
// across the rides; the plan then uses the measured values.
func TestCompare(t *testing.T) {
	dir := t.TempDir()
	first, second := filepath.Join(dir, "first"), filepath.Join(dir, "second")
	good(t, "demo", "--out", first)
	good(t, "demo", "--out", second, "--seed", "2")
	a, b := filepath.Join(first, "ride.jsonl.gz"), filepath.Join(second, "ride.jsonl.gz")
	out := good(t, "compare", a, "--at", "130km/h", "--fuel", "5.2", "--fuel-at", "110km/h", "--tank", "18")
	for _, want := range []string{"tall screen: ", "more drag", "power at 130 km/h", "slower with the same power", "l/100 km more", "range on 18 l", "a steady 130 km/h takes"} {
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
	if n := strings.Count(both, "Cost of "); n < 4+2 {
		t.Errorf("what a difference costs is stated %d times, want for each within and across the rides:\n%s", n, both)
	}
	if code, _, err := desk(t, "compare", a, a); code != exitInput || !strings.Contains(err, "the same recording") {
		t.Errorf("one file twice: exit %d, %s", code, err)
	}
	plan := good(t, "plan", "--change", "4%", "--wind-sd", "0.5", "--results", filepath.Join(first, "results.json"))
	if !strings.Contains(plan, "pairs of opposite coast-downs") {
		t.Errorf("a plan from earlier results: %s", plan)
	}
}

// TestOrBikes checks that a refusal of different bikes names the flag, and that no
// other error does.
func TestOrBikes(t *testing.T) {
	bikes := orBikes(&sensors.InputError{What: finding.New(runs.CodeDifferentBikes), Remedy: finding.New("compare.one_bike")})
	if !strings.Contains(words.ForMachines().Error(bikes), "--different-bikes") {
		t.Errorf("different bikes: %v", bikes)
	}
	for _, err := range []error{&sensors.InputError{What: finding.New("compare.same_recording")}, errors.New("other")} {
		if got := orBikes(err); got != err {
			t.Errorf("%v became %v", err, got)
		}
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
