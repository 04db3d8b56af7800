package gearing

import (
	"math"
	"testing"
)

// TestDiameters compares with overall diameters in tyre makers' data books for
// these sizes, from memory: in mm, to the millimetre.
func TestDiameters(t *testing.T) {
	tests := []struct {
		size string
		want float64
	}{
		{"120/70 ZR17", 600},
		{"180/55ZR17", 630},
		{"190/50 ZR 17", 622},
		{"160/60 R17", 624},
		{"90/90-21", 695},
		{"150/70 R 18", 667},
	}
	for _, tt := range tests {
		tyre, err := ParseTyre(tt.size)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := tyre.Diameter() * 1e3; math.Abs(got-tt.want) > 1 {
			t.Errorf("%s: %.1f mm, want %v", tt.size, got, tt.want)
		}
	}
}

func TestBadSizes(t *testing.T) {
	for _, s := range []string{"", "180", "180/55", "18/55R17", "180/55R99", "999/99R17", "tyre"} {
		if got, err := ParseTyre(s); err == nil {
			t.Errorf("%q gave %+v", s, got)
		}
	}
}

// TestRPMPerMPS compares with a calculation by hand: crank to wheel 1.6 · 1.25
// · 2.5 = 5.0 on a rolling radius of 0.97 · 0.315 m is 5·60/(2π·0.30555) =
// 156.3.
func TestRPMPerMPS(t *testing.T) {
	rear, err := ParseTyre("180/55 R17")
	if err != nil {
		t.Fatal(err)
	}
	final, err := Teeth(16, 40)
	if err != nil {
		t.Fatal(err)
	}
	got, err := RPMPerMPS(Drive{Primary: 1.6, Gear: 1.25, Final: final}, rear)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.X-156.3) > 0.2 || got.SE <= 0 {
		t.Errorf("got %.1f ± %.1f, want 156.3", got.X, got.SE)
	}
	if _, err := RPMPerMPS(Drive{Primary: 1.6, Final: 2.5}, rear); err == nil {
		t.Error("a missing gear gave a ratio")
	}
	if _, err := Teeth(0, 40); err == nil {
		t.Error("a sprocket without teeth gave a ratio")
	}
}

// TestRotatingMass compares the estimate with the 4 % of the bike's mass that
// the UN motorcycle test cycle rule (GTR 2) assumes for the wheels: 200 kg of
// bike with wheels of 10 and 13 kg, which is common practice for its class,
// within half.
func TestRotatingMass(t *testing.T) {
	front, _ := ParseTyre("120/70 R17")
	rear, _ := ParseTyre("180/55 R17")
	got := RotatingMass(Wheel{10, front}, Wheel{13, rear})
	if want := 0.04 * 290; got.X < want/2 || got.X > want*2 {
		t.Errorf("%.1f kg, the rule takes %.1f", got.X, want)
	}
}

// TestEngineMass compares with a calculation by hand: 0.02 kg·m² at 165/min per
// m/s turns 17.279 rad a metre and counts as 5.97 kg.
func TestEngineMass(t *testing.T) {
	if got := EngineMass(0.02, 165); math.Abs(got-5.971) > 0.002 {
		t.Errorf("got %.3f kg", got)
	}
}

func FuzzParseTyre(f *testing.F) {
	for _, s := range []string{"180/55 ZR17", "90/90-21", "/R", "120/70R17 58W"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		tyre, err := ParseTyre(s)
		if d := tyre.Diameter(); err == nil && !(d > 0.2 && d < 1.5) {
			t.Errorf("%q has a diameter of %v m", s, d)
		}
	})
}
