package shown

import (
	"math"
	"testing"
)

func TestPlusMinus(t *testing.T) {
	nan := math.NaN()
	tests := []struct {
		x, half float64
		want    string
	}{
		// JCGM 100:2008, 7.2.2 gives m = (100,021 47 ± 0,000 79) g as an example
		// of the form; 7.2.6 limits the digits. One digit for 79, by our rule.
		{100.02147, 0.00079, "100.0215 ± 0.0008"},
		{0.5512, 0.0171, "0.551 ± 0.017"}, {0.5512, 0.0349, "0.55 ± 0.03"}, {4.3149, 0.041, "4.31 ± 0.04"},
		{-0.0004, 0.01, "0.000 ± 0.010"}, {-2.5, 0.4, "−2.5 ± 0.4"}, {21234, 310, "21\u00a0200 ± 300"}, {21234, 150, "21\u00a0230 ± 150"},
		{1.0, 0.0999, "1.00 ± 0.10"}, {3.14159, nan, "3.14"}, {31415.9, nan, "31\u00a0416"}, {0, nan, "0"}, {nan, 1, "–"}, {1, math.Inf(1), "1.00"},
	}
	for _, tt := range tests {
		if got := PlusMinus(tt.x, tt.half); got != tt.want {
			t.Errorf("PlusMinus(%v, %v) = %q, want %q", tt.x, tt.half, got, tt.want)
		}
	}
}

func TestSystems(t *testing.T) {
	tests := []struct {
		system System
		got    func(System) string
		want   string
	}{
		{Metric, func(s System) string { return s.Number(Speed, 27.77778, 0) }, "100 km/h"},
		{Imperial, func(s System) string { return s.Number(Speed, 26.8224, 0) }, "60 mph"},
		{Both, func(s System) string { return s.Number(Speed, 26.8224, 1) }, "96.6 km/h (60.0 mph)"},
		{Both, func(s System) string { return s.Number(Time, 4.3, 2) }, "4.30 s"},
		{Both, func(s System) string { return s.PlusMinus(Power, 74570, 745.7) }, "74.6 ± 0.7 kW (100.0 ± 1.0 hp)"},
		{Imperial, func(s System) string { return s.PlusMinus(Area, 0.55, 0.02) }, "5.92 ± 0.22 ft²"},
		{Metric, func(s System) string { return s.Number(Force, math.NaN(), 0) }, "–"},
	}
	for _, tt := range tests {
		if got := tt.got(tt.system); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.system, got, tt.want)
		}
	}
	if _, err := ParseSystem("metrisch"); err == nil {
		t.Error("an unknown system was taken")
	}
}

func TestMoment(t *testing.T) {
	for s, want := range map[float64]string{0: "0:00.0", 59.96: "1:00.0", 102.31: "1:42.3", 3661.5: "1:01:01.5", -2: "−0:02.0"} {
		if got := Moment(s); got != want {
			t.Errorf("Moment(%v) = %q, want %q", s, got, want)
		}
	}
}

func TestDuration(t *testing.T) {
	for s, want := range map[float64]string{0: "0 s", 59.6: "1 min 0 s", 822.8: "13 min 43 s", 7322: "2 h 2 min", -1: "–"} {
		if got := Duration(s); got != want {
			t.Errorf("Duration(%v) = %q, want %q", s, got, want)
		}
	}
}

func TestHeading(t *testing.T) {
	for d, want := range map[float64]string{0: "N 0°", 84: "E 84°", 264: "W 264°", 350: "N 350°", -45: "NW 315°", 720: "N 0°"} {
		if got := Heading(d); got != want {
			t.Errorf("Heading(%v) = %q, want %q", d, got, want)
		}
	}
}

func TestGermanHeading(t *testing.T) {
	german := Style{Language: German}
	if got := german.Heading(84) + ", " + german.Moment(102.31); got != "O 84°, 1:42,3" {
		t.Errorf("%q", got)
	}
}

func TestWords(t *testing.T) {
	for s, want := range map[string]string{"": "", "the brake": "The brake.", "Stop!": "Stop!", "örtlich": "Örtlich."} {
		if got := Sentence(s); got != want {
			t.Errorf("Sentence(%q) = %q, want %q", s, got, want)
		}
	}
}
