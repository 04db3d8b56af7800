package marks

import (
	"errors"
	"math"
	"testing"

	"stillair/sensors/finding"
)

func TestParseSpeedPair(t *testing.T) {
	tests := []struct {
		text     string
		name     string
		from, to float64 // m/s
		problem  finding.Code
	}{
		{text: "60-100km/h", name: "60-100 km/h", from: 16.6667, to: 27.7778},
		{text: " 80 – 120 KM/H ", name: "80-120 km/h", from: 22.2222, to: 33.3333},
		{text: "40-70mph", name: "40-70 mph", from: 17.8816, to: 31.2928},
		{text: "15-25.5m/s", name: "15-25.5 m/s", from: 15, to: 25.5},
		{text: "50-80kph", name: "50-80 km/h", from: 13.8889, to: 22.2222},
		{text: "60-100", problem: codePairUnit},
		{text: "100-60km/h", problem: codePairOrder},
		{text: "0-100km/h", problem: codePairStanding},
		{text: "60-100000km/h", problem: codePairFast},
		{text: "60km/h", problem: codePairDash},
		{text: "a-100km/h", problem: codePairFirst},
		{text: "60-NaNkm/h", problem: codePairSecond},
		{text: "", problem: codePairUnit},
	}
	for _, tt := range tests {
		t.Run(tt.text, func(t *testing.T) {
			p, err := ParseSpeedPair(tt.text)
			if tt.problem != "" {
				var e *finding.Error
				if !errors.As(err, &e) || !e.Finding.Is(tt.problem) {
					t.Fatalf("got error %v, want one about %q", err, tt.problem)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if p.Name != tt.name || math.Abs(p.From-tt.from) > 1e-4 || math.Abs(p.To-tt.to) > 1e-4 {
				t.Errorf("got %+v", p)
			}
		})
	}
}

// FuzzParseSpeedPair: any accepted pair is possible, and its name parses to
// itself.
func FuzzParseSpeedPair(f *testing.F) {
	for _, s := range []string{"60-100km/h", "40-70 mph", "1e3-2e3m/s", "--km/h", "5–6kph"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		p, err := ParseSpeedPair(text)
		if err != nil {
			return
		}
		if !(p.From >= 1 && p.To > p.From && p.To <= 150) {
			t.Fatalf("%q gives %+v", text, p)
		}
		again, err := ParseSpeedPair(p.Name)
		if err != nil || math.Abs(again.From-p.From) > 1e-9 || math.Abs(again.To-p.To) > 1e-9 {
			t.Fatalf("%q gives %+v, its name gives %+v, %v", text, p, again, err)
		}
	})
}
