package table

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"stillair/export/internal/invented"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/measure"
	"stillair/runs/power"
)

// parse reads a table with the standard library's reader and returns it by
// column name.
func parse(t *testing.T, write func(*bytes.Buffer) error) []map[string]string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	if lines := strings.Count(b.String(), "\n"); strings.Count(b.String(), "\r\n") != lines {
		t.Error("RFC 4180, section 2: each line ends in CRLF")
	}
	all, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = line[i]
		}
		out = append(out, row)
	}
	return out
}

func near(t *testing.T, what, text string, want, within float64) {
	t.Helper()
	got, err := strconv.ParseFloat(text, 64)
	if err != nil || math.Abs(got-want) > within {
		t.Errorf("%s: %q, want %v", what, text, want)
	}
}

func TestTables(t *testing.T) {
	r := invented.Result()
	track := parse(t, func(b *bytes.Buffer) error { return Track(b, r.Track) })
	last := len(r.Track.T) - 1
	if len(track) != last+1 {
		t.Fatalf("%d rows of the track, want %d", len(track), last+1)
	}
	near(t, "last time", track[last]["t_s"], r.Track.T[last], 1e-4)
	near(t, "last distance", track[last]["distance_m"], r.Track.S[last], 1e-3)

	table := parse(t, func(b *bytes.Buffer) error { return Runs(b, r.Runs) })
	rejected := 0
	for i, row := range table {
		if row["accepted"] == "no" {
			rejected++
			if row["reason_codes"] != "coast.slowed_suddenly" {
				t.Errorf("rejected run %d has the codes %q", i, row["reason_codes"])
			}
			if !strings.Contains(row["reasons"], "brake") {
				t.Errorf("rejected run %d gives the reason %q", i, row["reasons"])
			}
		}
	}
	if len(table) != len(r.Runs) || rejected != 2 {
		t.Errorf("%d runs with %d rejected, want %d with 2", len(table), rejected, len(r.Runs))
	}

	marks := parse(t, func(b *bytes.Buffer) error { return Marks(b, r.Runs) })
	if len(marks) != 2*4+2+1 || marks[0]["mark"] != "60 ft" || marks[len(marks)-1]["rollout_s"] != "" {
		t.Errorf("%d marks, first %v, last %v", len(marks), marks[0], marks[len(marks)-1])
	}
	near(t, "first mark", marks[0]["s"], r.Runs[0].Marks[0].Time.X, 1e-4)

	passes := parse(t, func(b *bytes.Buffer) error { return Passes(b, r.Passes) })
	if len(passes) != 4 || passes[0]["over"] != "1 km" || passes[0]["accepted"] != "yes" || passes[3]["accepted"] != "no" || passes[3]["reason_codes"] != "pass.eased" {
		t.Errorf("passes %v", passes)
	}
	near(t, "mean of both directions", passes[1]["mean_mps"], r.Passes[0].Figures[1].Mean.X, 1e-5)

	loads := parse(t, func(b *bytes.Buffer) error { return RoadLoads(b, r.RoadLoads) })
	near(t, "CdA", loads[1]["cda_m2"], r.RoadLoads[1].CdA.X, 1e-6)
	near(t, "Crr", loads[0]["crr"], r.RoadLoads[0].Crr.X, 1e-7)
	near(t, "upper end", loads[0]["cda_high95_m2"], r.RoadLoads[0].CdACI[1], 1e-5)
}

// TestWords checks that a setup's name survives quoting, and that a spreadsheet
// does not run it as a formula.
func TestWords(t *testing.T) {
	for name, want := range map[string]string{
		"tall, \"old\" screen\nwith tape": "tall, \"old\" screen\nwith tape",
		`=cmd|'/c calc'!A1`:               `'=cmd|'/c calc'!A1`,
	} {
		got := parse(t, func(b *bytes.Buffer) error { return Runs(b, []runs.Run{{ID: 1, Setup: name}}) })
		if got[0]["setup"] != want {
			t.Errorf("%q came back as %q", name, got[0]["setup"])
		}
	}
}

func TestComparedAndPower(t *testing.T) {
	c := runs.Comparison{A: "a", B: "b", CdA: &compare.Verdict{Finding: compare.Differs, Percent: 9.71, CIPercent: [2]float64{6.2, 13.2}, P: 0.0001},
		Times: []runs.TimeComparison{{Mark: "0-100 km/h", Verdict: compare.Verdict{Finding: compare.CannotTell, Percent: math.NaN()}}}}
	got := parse(t, func(b *bytes.Buffer) error { return Comparisons(b, []runs.Comparison{c}) })
	if len(got) != 2 || got[0]["finding"] != "differs" || got[1]["quantity"] != "0-100 km/h" || got[1]["delta_pct"] != "" {
		t.Errorf("%v", got)
	}
	near(t, "upper end", got[0]["high95_pct"], 13.2, 1e-9)
	curve := &power.Curve{Speed: []float64{20, 20.25}, Power: []measure.Value{{X: 30000, SE: 400}, {X: 30500, SE: 410}}}
	got = parse(t, func(b *bytes.Buffer) error {
		return Powers(b, []runs.PowerCurve{{Setup: "a", Gear: "4", RPMPerMPS: 165, Correction: 1.012, Curve: curve}, {Curve: curve, RPMPerMPS: math.NaN()}, {}})
	})
	if len(got) != 4 || got[1]["power_w"] != "30500.00" || got[2]["rpm"] != "" {
		t.Errorf("%v", got)
	}
	near(t, "engine speed", got[0]["rpm"], 3300, 0.5)
}
