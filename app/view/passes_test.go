package view

import (
	"strings"
	"testing"

	"stillair/app/text"
	"stillair/export/results"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/measure"
	"stillair/runs/pass"
	"stillair/sensors/finding"
)

// TestPasses checks which distances a rider is shown in which units, the words next to
// them, and that passes that do not count come last, with the reason.
func TestPasses(t *testing.T) {
	over := func(name string) pass.Figure {
		v := func(x float64) measure.Value { return measure.Value{X: x, SE: 0.05} }
		return pass.Figure{Name: name, There: v(52), Back: v(50), Mean: v(51), Half: v(1)}
	}
	all := []runs.Pass{
		{Figures: []pass.Figure{over("200 m")}, Reasons: []finding.Finding{finding.New("pass.eased")}},
		{Setup: "bare", Back: pass.Leg{Start: 120}, Figures: []pass.Figure{over("1 mile"), over("1 km"), over("500 m"), over("1/4 mile"), over("200 m")}},
		{Figures: []pass.Figure{over("500 m"), over("1/4 mile"), over("200 m")}},
	}
	tests := []struct {
		system shown.System
		names  string
		mean   string // 51 m/s
	}{
		{shown.Metric, "1 km · bare, 500 m, 200 m", "183.6"},
		{shown.Imperial, "1 mile · bare, 1/4 mile, 200 m", "114.08"},
		{shown.Both, "1 km · bare, 1 mile · bare, 500 m, 1/4 mile, 200 m", "183.6"},
	}
	for _, tt := range tests {
		rows := Context{Book: text.English(), System: tt.system}.passes(all)
		var names []string
		for i, r := range rows {
			names = append(names, r.Name)
			if (r.Reason != "") != (i == len(rows)-1) {
				t.Errorf("%s, %s: counts for the reason %q", tt.system, r.Name, r.Reason)
			}
		}
		if got := strings.Join(names, ", "); got != tt.names {
			t.Errorf("%s: %s, want %s", tt.system, got, tt.names)
		}
		if !strings.HasPrefix(rows[0].Reading.Number, tt.mean) || !strings.Contains(rows[0].Words, "2 min apart") {
			t.Errorf("%s: %+v", tt.system, rows[0])
		}
	}
}

// TestSeasonPasses checks the fastest pass for each distance and setup, and the number
// of passes.
func TestSeasonPasses(t *testing.T) {
	pass := func(setup, over string, mean float64) results.SeasonPass {
		v := func(x float64) results.Measured { se := 0.05; return results.Measured{X: &x, SE: &se} }
		apart := 100.0
		return results.SeasonPass{Ride: "r", Setup: setup, Over: over, Apart: &apart, There: v(mean + 1), Back: v(mean - 1), Mean: v(mean), Half: v(1)}
	}
	rows := Context{Book: text.English(), System: shown.Metric}.seasonPasses([]results.SeasonPass{pass("bare", "1 km", 50), pass("bare", "200 m", 50.5),
		pass("bare", "1 km", 51), pass("loaded", "500 m", 45), pass("bare", "1 km", 49), {}}, nil)
	if len(rows) != 2 || rows[0].Name != "1 km · bare" || !strings.HasPrefix(rows[0].Reading.Number, "183.6") || !strings.HasPrefix(rows[0].Words, "fastest of 3 · 187.2 km/h there") {
		t.Errorf("%+v", rows)
	}
	if len(rows) == 2 && (rows[1].Name != "500 m · loaded" || strings.Contains(rows[1].Words, "fastest")) {
		t.Errorf("%+v", rows[1])
	}
}
