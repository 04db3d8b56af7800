package store

import (
	"encoding/json"
	"math"
	"testing"

	"stillair/sensors"
)

func kg(x float64) *float64 { return &x }

// invented is an invented bike, described by its parts.
func invented() Bike {
	return Bike{
		Name:   "invented naked",
		Wheels: &Wheels{FrontTyre: "120/70 R17", RearTyre: "180/55 R17", FrontMass: kg(10), RearMass: kg(13)},
		Box:    &Box{Primary: Teeth{44, 70}, Gears: []Teeth{{13, 37}, {16, 32}, {19, 30}}, Final: Teeth{16, 40}},
	}
}

// TestPartsBecomeFigures checks that gears and rotating mass are calculated
// from tyres, wheels and teeth, and that values entered directly take
// precedence.
func TestPartsBecomeFigures(t *testing.T) {
	air := sensors.UnknownRide().Air
	b := invented()
	r := b.Ride("", air)
	if r.RotatingMass < 10 || r.RotatingMass > 30 {
		t.Errorf("rotating mass %.1f kg", r.RotatingMass)
	}
	// Worked by hand: 70/44 · 37/13 · 40/16 turns on a radius of 0.97 · 0.315 m.
	want := 70.0 / 44 * 37 / 13 * 40 / 16 * 60 / (2 * math.Pi * 0.97 * 0.3149)
	if len(r.Gears) != 3 || math.Abs(r.Gears[0].RPMPerMPS-want) > 1 || r.Gears[2].Name != "3" {
		t.Errorf("gears %+v, want the first at %.1f", r.Gears, want)
	}
	b.RotatingMass, b.Gears = kg(12.5), []Gear{{Name: "top", RPMPerMPS: 150}}
	if r = b.Ride("", air); r.RotatingMass != 12.5 || len(r.Gears) != 1 || r.Gears[0].Name != "top" {
		t.Errorf("what was entered directly was passed over: %+v", r)
	}
}

func TestPartsThatCannotBe(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(*Bike)
		field string
	}{
		{"tyre", func(b *Bike) { b.Wheels.RearTyre = "big" }, "wheels"},
		{"wheel", func(b *Bike) { b.Wheels.RearMass = kg(500) }, "wheels"},
		{"teeth", func(b *Bike) { b.Box.Gears[1].Driving = 0 }, "box"},
		{"cylinders", func(b *Bike) { b.Cylinders = 13 }, "cylinders"},
		{"drive", func(b *Bike) { b.Drive = "steam" }, "drive"},
		{"limit", func(b *Bike) { b.LimitRPM = kg(90) }, "limit_rpm"},
		{"fuel", func(b *Bike) { b.Fuel = &Fuel{LitresPer100Km: 500, SpeedMPS: 30} }, "fuel"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b := invented()
			tt.spoil(&b)
			if field, err := b.Check(); err == nil || field != tt.field {
				t.Errorf("field %q, %v; want %q", field, err, tt.field)
			}
		})
	}
	if field, err := invented().Check(); err != nil {
		t.Errorf("%s: %v", field, err)
	}
}

// TestOlderFile reads a file from before bikes had parts.
func TestOlderFile(t *testing.T) {
	var b Bike
	old := `{"version":1,"id":"a","name":"old","mass_kg":290,"gears":[{"name":"4","rpm_per_mps":165}],"setups":[{"name":"bare"}]}`
	if err := json.Unmarshal([]byte(old), &b); err != nil {
		t.Fatal(err)
	}
	if field, err := b.Check(); err != nil {
		t.Fatalf("%s: %v", field, err)
	}
	if r := b.Ride("bare", sensors.UnknownRide().Air); r.Mass != 290 || len(r.Gears) != 1 || !math.IsNaN(r.RotatingMass) {
		t.Errorf("got %+v", r)
	}
}
