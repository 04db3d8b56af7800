package figure

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"stillair/export/internal/invented"
	"stillair/export/plot"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
)

func english() *words.Book { return words.ForMachines() }

// labels parses a figure as XML and returns the words in it.
func labels(t *testing.T, f Figure) []string {
	t.Helper()
	var out []string
	d := xml.NewDecoder(strings.NewReader(string(f.SVG)))
	inText := false
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatalf("the SVG is not well-formed: %v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			inText = e.Name.Local == "text"
		case xml.EndElement:
			inText = false
		case xml.CharData:
			if inText {
				out = append(out, string(e))
			}
		}
	}
}

func figures(units *words.Book) map[string]Figure {
	r := invented.Result()
	l := r.RoadLoads[0]
	w := effect.Load{CdA: l.CdA, Crr: l.Crr, Cov: l.Cov, K: 0.004, Mass: l.Mass, Density: l.Density, Gravity: 9.81}
	curve := &power.Curve{}
	for v := 10.0; v < 30; v++ {
		curve.Speed = append(curve.Speed, v)
		curve.Power = append(curve.Power, measure.Value{X: 1500 * v, SE: 300})
	}
	return map[string]Figure{
		"ride": Ride(r, units, Narrow), "launch": Launch(r, r.Runs[0], units), "coast-downs": CoastDowns(r, "panniers on", units),
		"force": Force(w, "x", 39, units), "power": Power(w, "x", 39, units),
		"powers": Powers([]runs.PowerCurve{{Setup: "<panniers & co>", Gear: "4", Curve: curve}}, units),
	}
}

// TestFigures checks that each figure is well-formed, labels its axes, and has
// no fixed colour, which a dark page could not change.
func TestFigures(t *testing.T) {
	want := map[string][]string{
		"ride": {"speed, km/h", "minutes", "coast-down", "launch", "stop"}, "launch": {"speed, km/h", "seconds from first movement", "0-100 km/h  4.20 s"},
		"coast-downs": {"residual, km/h", "seconds since the clutch was pulled"}, "force": {"force, N", "air", "tyres"},
		"power": {"power, kW", "steady speed, km/h"}, "powers": {"power at the road, kW", "<panniers & co>, gear 4"},
	}
	for name, f := range figures(english()) {
		all := strings.Join(labels(t, f), "|")
		for _, w := range want[name] {
			if !strings.Contains(all, w) {
				t.Errorf("%s does not say %q: %s", name, w, all)
			}
		}
		if c := regexp.MustCompile(`#[0-9a-fA-F]{3,6}|rgb`).FindString(string(f.SVG)); c != "" || !strings.Contains(string(f.SVG), "var(--ink)") {
			t.Errorf("%s has the fixed colour %q", name, c)
		}
		if f.Caption == "" || !strings.Contains(string(f.SVG), "aria-label") {
			t.Errorf("%s has no words for those who cannot see it", name)
		}
	}
}

func TestImperial(t *testing.T) {
	want := map[string]string{"ride": "speed, mph", "force": "force, lbf", "power": "power, hp", "coast-downs": "residual, mph"}
	for name, f := range figures(words.New(shown.Style{System: shown.Imperial, Language: shown.English})) {
		if w := want[name]; w != "" && !strings.Contains(strings.Join(labels(t, f), "|"), w) {
			t.Errorf("%s does not say %q", name, w)
		}
	}
}

// TestNothingToShow checks that missing data gives no figure rather than an
// empty or broken one.
func TestNothingToShow(t *testing.T) {
	r := &runs.Result{}
	for name, f := range map[string]Figure{
		"ride": Ride(r, english(), Wide), "launch": Launch(r, runs.Run{}, english()), "coast-downs": CoastDowns(r, "", english()),
		"force": Force(effect.Load{}, "", 30, english()), "powers": Powers(nil, english()),
	} {
		if !f.Empty() {
			t.Errorf("%s drew something out of nothing", name)
		}
	}
}

// TestDecimateKeepsPeaks checks on random lines that every column keeps its
// lowest and highest point, its order, and few points.
func TestDecimateKeepsPeaks(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 50 {
		n := 2 + rng.IntN(20000)
		x, y := make([]float64, n), make([]float64, n)
		low, high := math.Inf(1), math.Inf(-1)
		for i := range x {
			x[i], y[i] = float64(i)*0.01, rng.NormFloat64()
			if rng.IntN(100) == 0 {
				y[i] = math.NaN()
				continue
			}
			low, high = math.Min(low, y[i]), math.Max(high, y[i])
		}
		px, py := decimate(x, y, 200)
		gotLow, gotHigh := math.Inf(1), math.Inf(-1)
		for i := range px {
			gotLow, gotHigh = math.Min(gotLow, py[i]), math.Max(gotHigh, py[i])
			if i > 0 && px[i] <= px[i-1] {
				t.Fatalf("point %d is not right of the one before", i)
			}
		}
		if gotLow != low || gotHigh != high || len(px) > 4*202 {
			t.Fatalf("%d points became %d, from %v to %v instead of %v to %v", n, len(px), gotLow, gotHigh, low, high)
		}
	}
}

func TestTicks(t *testing.T) {
	tests := []struct {
		low, high float64
		want      string
	}{
		{0, 100, "0 20 40 60 80 100"}, {-1, 1, "−1.0 −0.5 0.0 0.5 1.0"}, {0, 0.013, "0.000 0.005 0.010"}, {3, 3, ""},
	}
	for _, tt := range tests {
		var got []string
		for _, k := range plot.Ticks(tt.low, tt.high, 6, shown.Fixed) {
			got = append(got, k.Text)
		}
		if strings.Join(got, " ") != tt.want {
			t.Errorf("ticks from %v to %v: %v, want %s", tt.low, tt.high, got, tt.want)
		}
	}
}
