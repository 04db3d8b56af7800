package view

import (
	"math"
	"strings"
	"testing"

	"stillair/app/text"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/measure"
)

// TestFuelUnits compares the factors between miles per gallon and l/100 km with
// published ones: NIST SP 811 (2008), appendix B.8, "divide 235.215 by number
// of miles per gallon" (from memory), and 282.481 from the gallon of 4.546 09 l
// (UK Units of Measurement Regulations 1995) and the mile of 1.609 344 km.
func TestFuelUnits(t *testing.T) {
	for _, tt := range []struct {
		name   string
		fuel   shown.FuelUnit
		factor float64
		unit   string
	}{
		{"US", shown.MilesPerGallonUS, 235.215, "mpg"},
		{"imperial", shown.MilesPerGallonImp, 282.481, "mpg"},
	} {
		c := Context{Book: text.English(), System: shown.Imperial, FuelUnit: tt.fuel}
		q := c.FuelQuantity()
		if math.Abs(q.Over-tt.factor) > 0.0005 || q.Unit != tt.unit {
			t.Errorf("%s: %.4f %s, want %.3f", tt.name, q.Over, q.Unit, tt.factor)
		}
		got, err := c.Read("50", q)
		if err != nil || math.Abs(*got-tt.factor/50) > 1e-4 {
			t.Errorf("%s: 50 mpg are kept as %v l/100 km, %v", tt.name, got, err)
		}
		if back := c.Write(got, q); back != "50" {
			t.Errorf("%s: 50 mpg come back as %s", tt.name, back)
		}
		for _, wrong := range []string{"0", "-3", "1", "900"} {
			if _, err := c.Read(wrong, q); err != ErrOutOfRange {
				t.Errorf("%s: %s mpg: %v, want out of range", tt.name, wrong, err)
			}
		}
		if words := c.Fault(ErrOutOfRange, q); strings.Contains(words, "Inf") || !strings.Contains(words, "mpg") {
			t.Errorf("%s: %q", tt.name, words)
		}
	}
}

// TestFuelForRegions checks the units of each region.
func TestFuelForRegions(t *testing.T) {
	for _, tt := range []struct {
		region string
		system shown.System
		want   shown.FuelUnit
	}{
		{"US", shown.Imperial, shown.MilesPerGallonUS}, {"GB", shown.Imperial, shown.MilesPerGallonImp}, {"GB", shown.Metric, shown.LitresPer100Km},
		{"DE", shown.Imperial, shown.LitresPer100Km}, {"", shown.Imperial, shown.LitresPer100Km}, {"DE", shown.Metric, shown.LitresPer100Km},
	} {
		if got := shown.FuelFor(tt.region, tt.system); got != tt.want {
			t.Errorf("%q, %v: %v, want %v", tt.region, tt.system, got, tt.want)
		}
	}
}

// TestFuelChange checks that a change in miles per gallon is that between the
// two consumptions: 5 and 5.4 l/100 km are 56.496 and 52.311 miles to the
// imperial gallon, 4.185 fewer; the ± goes by the slope, 52.311/5.4 for each
// l/100 km.
func TestFuelChange(t *testing.T) {
	after, more := measure.Value{X: 5.4 * litrePer100Km}, measure.Value{X: 0.4 * litrePer100Km, SE: 0.1 * litrePer100Km}
	c := Context{Book: text.English(), System: shown.Imperial, FuelUnit: shown.MilesPerGallonImp}
	if got, want := c.fuelChange(5*litrePer100Km, after, more), (Reading{"−4.2", "1.9", "mpg"}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
	c.FuelUnit = shown.LitresPer100Km
	if got, want := c.fuelChange(5*litrePer100Km, after, more), (Reading{"+0.40", "0.20", "l/100 km"}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestTanks checks the US gallon of 231 cubic inches, 3.785 411 784 l (NIST SP
// 811), and that British tanks are stated in litres.
func TestTanks(t *testing.T) {
	c := Context{Book: text.English(), System: shown.Imperial, FuelUnit: shown.MilesPerGallonUS}
	if got, err := c.Read("5", c.TankQuantity()); err != nil || math.Abs(*got-18.92705892) > 1e-8 {
		t.Errorf("5 gal are %v l, %v", got, err)
	}
	c.FuelUnit = shown.MilesPerGallonImp
	if q := c.TankQuantity(); q.Unit != "l" || q.SI != 1 {
		t.Errorf("a British tank is in %+v", q)
	}
}

// TestHorsepower checks the horsepower of each language: 745.6999 W and 735.498
// 75 W (NIST SP 811, appendix B.8).
func TestHorsepower(t *testing.T) {
	for _, tt := range []struct {
		book  *text.Book
		unit  string
		watts float64
	}{{text.English(), "hp", 745.6999}, {text.German(), "PS", 735.49875}} {
		c := Context{Book: tt.book, PowerUnit: shown.Horsepower}
		u := c.style().Unit(shown.Power)
		unit, watts := u.Name, u.SI
		if unit != tt.unit || math.Abs(watts-tt.watts) > 5e-5 {
			t.Errorf("%s: a %s of %.5f W, want %s of %.5f", tt.book.Tag, unit, watts, tt.unit, tt.watts)
		}
		if got := c.of(shown.Power, measure.Value{X: 100 * tt.watts, SE: tt.watts}); got.Number != "100" && got.Number != "100.0" && got.Number != "100,0" || got.Unit != tt.unit {
			t.Errorf("%s: %+v", tt.book.Tag, got)
		}
	}
	if u := english().style().Unit(shown.Power); u.Name != "kW" || u.SI != 1000 {
		t.Errorf("by default %+v", u)
	}
}

// TestForce checks the pound-force, 4.448 222 N (NIST SP 811, appendix B.8).
func TestForce(t *testing.T) {
	if u := imperial().style().Unit(shown.Force); u.Name != "lbf" || math.Abs(u.SI-4.448222) > 5e-7 {
		t.Errorf("a %s of %.7f N", u.Name, u.SI)
	}
}

// TestAMarkOfTheOtherUnitIsNotLost: a stop from 99 km/h has a time from 60 mph alone,
// and that is shown rather than none.
func TestAMarkOfTheOtherUnitIsNotLost(t *testing.T) {
	miles, km := runs.Mark{Name: "60-0 mph", Time: measure.Value{X: 3.5, SE: 0.02}, Distance: measure.Value{X: 40, SE: 0.5}}, runs.Mark{Name: "100-0 km/h", Time: measure.Value{X: 3.7, SE: 0.02}, Distance: measure.Value{X: 51, SE: 0.5}}
	for _, c := range []struct {
		name  string
		ctx   Context
		marks []runs.Mark
		want  string
	}{
		{"both, metric", english(), []runs.Mark{km, miles}, "100–0 km/h"},
		{"both, imperial", imperial(), []runs.Mark{km, miles}, "60–0 mph"},
		{"miles alone, metric", english(), []runs.Mark{miles}, "60–0 mph"},
	} {
		rows, _ := c.ctx.markRows(runs.Run{Kind: runs.Stop, Marks: c.marks})
		if len(rows) != 1 || rows[0].Name != c.want {
			t.Errorf("%s: %+v, want %s alone", c.name, rows, c.want)
		}
		if stops := c.ctx.stops([]runs.Run{{Kind: runs.Stop, Marks: c.marks}}); len(stops) != 1 || stops[0].Name != c.want {
			t.Errorf("%s: distances %+v, want %s alone", c.name, stops, c.want)
		}
	}
}
