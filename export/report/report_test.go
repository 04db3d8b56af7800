package report

import (
	"bytes"
	"flag"
	"math"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"

	"stillair/export/internal/invented"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/fusion"
	"stillair/runs"
	"stillair/runs/compare"
	"stillair/runs/effect"
	"stillair/sensors"
)

var update = flag.Bool("update", false, "write the goldens again")

// whole returns the page of the invented ride.
func whole(t testing.TB, units shown.System) string {
	t.Helper()
	return wholeIn(t, shown.Style{System: units, Language: shown.English})
}

func wholeIn(t testing.TB, style shown.Style) string {
	t.Helper()
	r := invented.Result()
	r.Compared = []runs.Comparison{{A: "panniers off", B: "panniers on",
		CdA:  &compare.Verdict{Finding: compare.Differs, Delta: runs.Value{X: 0.06, SE: 0.012}, P: 0.0002, Percent: 10.8, CIPercent: [2]float64{6.2, 15.4}},
		Crr:  &compare.Verdict{Finding: compare.NoneShown, Delta: runs.Value{X: 0.0001, SE: 0.0005}, P: 0.81, Percent: 0.5, CIPercent: [2]float64{-5, 6}, Unlikely: 6},
		Load: &effect.Change{CdA: runs.Value{X: 0.06, SE: 0.012}, Crr: runs.Value{X: 0.0001, SE: 0.0005}}}}
	r.RoadLoads[0].Limits = []runs.Limit{{Cause: runs.ByGusts, SE: 0.008}, {Cause: runs.ByMass, SE: 0.004}, {Cause: runs.ByAir, SE: 0.0001}}
	r.Ride.Air = sensors.Air{Temperature: 25, Pressure: 99000}
	for i := range r.Powers {
		r.Powers[i].Correction = 1
	}
	var out bytes.Buffer
	o := Options{Units: style.System, Language: style.Language, Program: "Stillair", Name: "Evening, <invented>", Started: time.Date(2026, 5, 17, 18, 0, 0, 0, time.UTC), Invented: true, Remarks: []Remark{{T: 130, Text: "gust, felt"}},
		Sections: []Section{{Title: "A section from elsewhere", Header: []string{"a", "b"}, Rows: [][]string{{"one", "1 ± 2"}}}}}
	if err := Write(&out, r, o); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// TestSelfContained checks that the page fetches and runs nothing.
func TestSelfContained(t *testing.T) {
	page := whole(t, shown.Both)
	for _, bad := range []string{"<script", "<link", "<iframe", "<img", "@import", "url(", "src=", "javascript:", " on" + "load="} {
		if strings.Contains(page, bad) {
			t.Errorf("the page contains %s", bad)
		}
	}
	for _, link := range regexp.MustCompile(`https?://[^"<\s]*`).FindAllString(page, -1) {
		if !strings.HasPrefix(link, "http://www.w3.org/") { // names of XML, not addresses
			t.Errorf("the page names %s", link)
		}
	}
	if strings.Contains(page, "<invented>") {
		t.Error("words of the rider became part of the page's markup")
	}
	if len(page) > 1<<20 {
		t.Errorf("the page is %d bytes", len(page))
	}
}

// TestSaysEverything checks that nothing of the result is left out.
func TestSaysEverything(t *testing.T) {
	page := strings.ReplaceAll(whole(t, shown.Metric), "\u00a0", " ")
	r := invented.Result()
	want := []string{"17 May 2026", "Invented ride", "0-100 km/h", "4.20 ± 0.04", "Did it help?", "Panniers on: 10.8 % more drag",
		"0.554 ± 0.020", "0.0177 ± 0.0010", "0.614 ± 0.020", "rotating_mass_kg", "A sample has the same time as an earlier one",
		"A section from elsewhere", "gust, felt", "0:30.0", "closed course", "2 rejected", "100-0 km/h", "wind along the road changed by about 2.0 ± 0.8 m/s", "takes 0.8 ± 0.3 kW more",
		"What limits the certainty of CdA", "Mostly gusts. To improve it: a calmer hour", "+6.2 % to +15.4 %"}
	for _, run := range r.Runs {
		want = append(want, words.ForMachines().Sentences(run.Reasons)...)
	}
	want = append(want, words.ForMachines().Sentences(r.Warnings)...)
	for _, w := range want {
		if !strings.Contains(page, strings.NewReplacer("'", "&#39;", "+", "&#43;").Replace(w)) {
			t.Errorf("the page does not say %q", w)
		}
	}
	if rows := strings.Count(page, `<th scope="row">`); rows < len(r.Runs) {
		t.Errorf("%d rows for %d runs", rows, len(r.Runs))
	}
	if strings.Contains(page, "NaN") || strings.Contains(page, "Inf") {
		t.Error("the page shows a number that is none")
	}
}

// TestLimits checks that each cause is drawn relative to the largest and that
// negligible ones are left out.
func TestLimits(t *testing.T) {
	l := runs.RoadLoad{CdA: runs.Value{X: 0.5}, Limits: []runs.Limit{{Cause: runs.ByWind, SE: 0.01}, {Cause: runs.ByMass, SE: 0.0025}, {Cause: runs.ByAir, SE: 0.0001}}}
	en := newTeller(Options{}.settled())
	got := en.limits(l)
	want := []limit{{"wind from pair to pair", "± 3.9 %", 100}, {"the weight of bike and rider", "± 1.0 %", 25}} // 1.96 · 0.01 / 0.5
	if len(got) != 2 || got[0] != want[0] || got[1] != want[1] {
		t.Errorf("got %+v, want %+v", got, want)
	}
	if en.limits(runs.RoadLoad{}) != nil || en.advice(runs.RoadLoad{}) != "" {
		t.Error("bars of nothing")
	}
}

// TestStandardAir: 25 °C and 99 kPa of dry air are what both standards correct
// to, so there each factor is 1.
func TestStandardAir(t *testing.T) {
	r := &runs.Result{Ride: sensors.Ride{Air: sensors.Air{Temperature: 25, Pressure: 99000}}}
	if got := newTeller(Options{}.settled()).standardAir(r, runs.PowerCurve{Correction: 1}); !strings.Contains(got, "× 1.000 according to SAE J1349, × 1.000 according to ISO 1585.") {
		t.Errorf("got %q", got)
	}
	r.Ride.Air = sensors.UnknownRide().Air
	if got := newTeller(Options{}.settled()).standardAir(r, runs.PowerCurve{Correction: 1}); got != "" {
		t.Errorf("of unknown air it says %q", got)
	}
}

// TestGolden compares the words of the page, without styles and pictures.
func TestGolden(t *testing.T) {
	page := whole(t, shown.Both)
	page = regexp.MustCompile(`(?s)<style>.*?</style>|<svg.*?</svg>`).ReplaceAllString(page, "")
	page = regexp.MustCompile(`\n\s*\n+`).ReplaceAllString(page, "\n")
	const path = "testdata/words.html"
	if *update {
		if err := os.WriteFile(path, []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if page != string(want) {
		t.Errorf("%s differs; look at what -update makes of it", path)
	}
}

// TestPoorRides checks that the page of a ride with few results has no empty parts.
func TestPoorRides(t *testing.T) {
	nan := math.NaN()
	unknown := runs.Value{X: nan, SE: nan}
	rides := map[string]*runs.Result{
		"nothing":      {},
		"a track only": {Track: &fusion.Track{T: []float64{0, 1, 2}, V: []float64{0, 1, 2}, A: []float64{1, 1, 1}, S: []float64{0, 0.5, 2}}},
		"unknown everywhere": {Runs: []runs.Run{{ID: 1, Kind: runs.Launch, Start: nan, End: nan, FromMPS: nan, ToMPS: nan, BearingDeg: nan,
			Marks: []runs.Mark{{Name: "60 ft", Time: unknown, Rollout: unknown, Speed: unknown, Distance: unknown}}}},
			RoadLoads: []runs.RoadLoad{{CdA: unknown, Crr: unknown, CdACI: [2]float64{nan, nan}, CrrCI: [2]float64{nan, nan}, A: unknown, C: unknown}}},
	}
	for name, r := range rides {
		var out bytes.Buffer
		if err := Write(&out, r, Options{}); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if page := out.String(); strings.Contains(page, "NaN") || strings.Contains(page, "Inf") || !strings.Contains(page, "Cautions") {
			t.Errorf("%s: the page has holes", name)
		}
	}
}

// TestValidHTML parses the page with xmllint.
func TestValidHTML(t *testing.T) {
	if _, err := exec.LookPath("xmllint"); err != nil {
		t.Skip("xmllint is not installed (sh .ci/install does it)")
	}
	cmd := exec.Command("xmllint", "--html", "--noout", "-")
	cmd.Stdin = strings.NewReader(whole(t, shown.Metric))
	out, err := cmd.CombinedOutput()
	// xmllint's HTML parser is older than HTML 5: that it calls the new
	// elements invalid does not matter.
	unknown := regexp.MustCompile(`(?m)^.*Tag (main|header|section|article|figure|figcaption|svg|g|path|rect|circle|line|text|title) invalid\n.*\n.*\n`)
	if rest := unknown.ReplaceAllString(string(out), ""); strings.TrimSpace(rest) != "" {
		t.Errorf("xmllint: %v\n%.2000s", err, rest)
	}
}

// BenchmarkWrite writes the page of the invented ride.
func BenchmarkWrite(b *testing.B) {
	r := invented.Result()
	for b.Loop() {
		var out bytes.Buffer
		if err := Write(&out, r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
