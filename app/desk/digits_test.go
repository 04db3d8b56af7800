package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"stillair/app/input"
	"stillair/app/text"
	"stillair/app/view"
	"stillair/export/report"
	"stillair/export/shown"
	"stillair/export/table"
	"stillair/runs"
	"stillair/sensors/sim"
)

// outputs is one ride as shown by the phone, the desk program, the report and CSV.
type outputs struct {
	phone  view.Context
	style  shown.Style
	result *runs.Result
	desk   string
	report string // its text, without tags
	tables map[string][]map[string]string
}

// TestSameDigits shows one simulated ride everywhere: drag area, rolling
// resistance, times, speeds and power have the same digits on the phone, in the
// terminal and in the report, and the values in CSV round to them.
func TestSameDigits(t *testing.T) {
	t.Parallel()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(sim.Launches(1, 110/3.6, 0), sim.RollOns(1, 4, 60/3.6, 100/3.6)...)
	sc.Plan = append(append(sc.Plan, sim.Pulls(1, 4)...), sim.CoastPairs(2, 110/3.6, 30/3.6)...)
	sc.Plan = append(sc.Plan, sim.Brake{}, sim.Stand{Seconds: 3})
	ride, err := sim.Run(sc, 5)
	if err != nil {
		t.Fatal(err)
	}
	ride.Log.Ride.Mass, ride.Log.Ride.MassSD = sc.Bike.Mass, 2
	pairs, err := speedPairs([]string{"60-100km/h", "40-60mph"})
	if err != nil {
		t.Fatal(err)
	}
	result, err := runs.Analyse(context.Background(), ride.Log, runs.Options{RollOns: pairs})
	if err != nil {
		t.Fatal(err)
	}
	for _, system := range []shown.System{shown.Metric, shown.Imperial} {
		t.Run(string(system), func(t *testing.T) {
			o := show(t, &study{path: "ride", ride: &input.Ride{Log: ride.Log}, result: result}, system)
			o.loads(t)
			o.times(t)
			o.power(t)
		})
	}
}

// show makes all outputs.
func show(t *testing.T, s *study, system shown.System) *outputs {
	t.Helper()
	o := &outputs{phone: view.Context{Book: text.English(), System: system}, style: shown.Style{System: system, Language: shown.English},
		result: s.result, desk: summary(s, system), tables: map[string][]map[string]string{}}
	var page bytes.Buffer
	if err := report.Write(&page, s.result, s.reportOptions(o.style)); err != nil {
		t.Fatal(err)
	}
	o.report = withoutTags(page.String())
	for name, write := range map[string]func(io.Writer) error{
		"loads": func(w io.Writer) error { return table.RoadLoads(w, s.result.RoadLoads) },
		"marks": func(w io.Writer) error { return table.Marks(w, s.result.Runs) },
		"power": func(w io.Writer) error { return table.Powers(w, s.result.Powers) },
	} {
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		o.tables[name] = csvRows(t, &b)
	}
	return o
}

var (
	tags   = regexp.MustCompile(`<[^>]*>`)
	spaces = regexp.MustCompile(`[\s\x{a0}]+`)
)

func withoutTags(page string) string {
	return spaces.ReplaceAllString(tags.ReplaceAllString(page, " "), " ")
}

// csvRows reads a table by its header.
func csvRows(t *testing.T, r io.Reader) []map[string]string {
	t.Helper()
	all, err := csv.NewReader(r).ReadAll()
	if err != nil || len(all) < 2 {
		t.Fatalf("%d rows, %v", len(all), err)
	}
	var out []map[string]string
	for _, fields := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = fields[i]
		}
		out = append(out, row)
	}
	return out
}

// same checks that a reading of the phone appears in the desk's and the
// report's text after its label there, and equals the value in CSV, x ± half in
// SI.
func (o *outputs) same(t *testing.T, what string, phone view.Reading, desk, page string, q shown.Quantity, x, half float64) {
	t.Helper()
	want := phone.Spoken()
	for _, place := range []struct{ name, lead, text string }{{"desk", desk, o.desk}, {"report", page, o.report}} {
		if !strings.Contains(spaces.ReplaceAllString(place.text, " "), place.lead+want) {
			t.Errorf("%s: the phone shows %q, but the %s has no %q", what, want, place.name, place.lead+want)
		}
	}
	if got := strings.TrimSpace(o.style.PlusMinus(q, x, half)); got != want {
		t.Errorf("%s: the phone shows %q, CSV rounds to %q", what, want, got)
	}
}

func (o *outputs) loads(t *testing.T) {
	if len(o.result.RoadLoads) == 0 {
		t.Fatal("the ride gave no road load")
	}
	for i, l := range o.result.RoadLoads {
		v, row := o.phone.Load(o.result, l), o.tables["loads"][i]
		half := func(name string) float64 {
			low, high, _ := strings.Cut(name, " ")
			return (cell(t, row, high) - cell(t, row, low)) / 2
		}
		o.same(t, "CdA", v.CdA, "CdA ", "CdA drag area ", shown.Area, cell(t, row, "cda_m2"), half("cda_low95_m2 cda_high95_m2"))
		o.same(t, "Crr", v.Crr, "Crr ", "Crr rolling resistance ", shown.Plain, cell(t, row, "crr"), half("crr_low95 crr_high95"))
	}
}

func (o *outputs) times(t *testing.T) {
	seen := 0
	for _, r := range o.result.Runs {
		if !r.Accepted() || r.Kind != runs.Launch && r.Kind != runs.RollOn {
			continue
		}
		for _, m := range o.phone.Run(o.result, r).Marks {
			name := strings.ReplaceAll(m.Name, "–", "-") // a dash on the phone only
			if r.Kind == runs.Launch && !slices.Contains((&page{units: o.style.System}).headline(), name) {
				continue // the summary shows only the headline
			}
			row := o.mark(t, r.ID, name)
			seen++
			reading, at := m.Time, "s"
			if m.Rollout.Number != "" {
				reading, at = m.Rollout, "rollout_s"
			}
			desk, onPage := "", name+" "
			if r.Kind == runs.RollOn {
				desk, onPage = name+" ", ""
			}
			o.same(t, fmt.Sprintf("run %d, %s", r.ID, m.Name), reading, desk, onPage, shown.Time, cell(t, row, at), shown.Normal95*cell(t, row, strings.Replace(at, "s", "se_s", 1)))
		}
	}
	if seen < 2 {
		t.Fatalf("%d times were compared", seen)
	}
}

// mark is the row of one mark of one run.
func (o *outputs) mark(t *testing.T, run int, name string) map[string]string {
	t.Helper()
	for _, row := range o.tables["marks"] {
		if row["run"] == strconv.Itoa(run) && row["mark"] == name {
			return row
		}
	}
	t.Fatalf("CSV has no mark %s of run %d", name, run)
	return nil
}

func (o *outputs) power(t *testing.T) {
	peaks := o.phone.Power(o.result, view.AsRidden, false).Peaks
	if len(peaks) == 0 {
		t.Fatal("the ride gave no power")
	}
	for i, p := range o.result.Powers {
		best := math.NaN()
		half := math.NaN()
		for _, row := range o.tables["power"] {
			if x := cell(t, row, "power_w"); row["setup"] == p.Setup && row["gear"] == p.Gear && !(x <= best) {
				best, half = x, shown.Normal95*cell(t, row, "power_se_w")
			}
		}
		o.same(t, "power", peaks[i].Reading, ": ", "at most ", shown.Power, best, half)
	}
}

// cell is a number of a row.
func cell(t *testing.T, row map[string]string, name string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(row[name], 64)
	if err != nil {
		t.Fatalf("column %s of %v: %v", name, row, err)
	}
	return x
}
