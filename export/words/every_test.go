package words

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"stillair/export/shown"
	"stillair/sensors/finding"
)

// unit is how a number of a quantity must be shown: times factor plus offset.
type unit struct {
	name           string
	factor, offset float64
}

// unitsOf gives the unit of a quantity, metric and imperial. The factors are
// those of NIST SP 811 (2008), appendix B.8, by which its unit is multiplied to
// give SI, and are written down here apart from the program's own.
func unitsOf(q finding.Quantity, l shown.Language) (metric, imperial unit) {
	alike := func(name string, factor float64) (unit, unit) {
		return unit{name, factor, 0}, unit{name, factor, 0}
	}
	horsepower, revs := unit{"hp", 1 / 7.456999e2, 0}, "rpm" // 550 ft·lbf/s
	if l == shown.German {
		horsepower, revs = unit{"PS", 1 / 7.354988e2, 0}, "1/min" // metric
	}
	mph := unit{"mph", 1 / 4.4704e-1, 0}
	switch q {
	case finding.OfSpeed:
		return unit{"km/h", 1 / 2.777778e-1, 0}, mph
	case finding.OfWind:
		return unit{"m/s", 1, 0}, mph
	case finding.OfAcceleration:
		return unit{"m/s²", 1, 0}, unit{"ft/s²", 1 / 3.048e-1, 0}
	case finding.OfDistance:
		return unit{"m", 1, 0}, unit{"ft", 1 / 3.048e-1, 0}
	case finding.OfMass:
		return unit{"kg", 1, 0}, unit{"lb", 1 / 4.535924e-1, 0}
	case finding.OfForce:
		return unit{"N", 1, 0}, unit{"lbf", 1 / 4.448222, 0}
	case finding.OfPower:
		return unit{"kW", 1e-3, 0}, horsepower
	case finding.OfArea:
		return unit{"m²", 1, 0}, unit{"ft²", 1 / 9.290304e-2, 0}
	case finding.OfPressure:
		return unit{"hPa", 1e-2, 0}, unit{"inHg", 1 / 3.386389e3, 0} // conventional
	case finding.OfTemperature:
		return unit{"°C", 1, 0}, unit{"°F", 1.8, 32}
	case finding.OfTime, finding.OfMoment:
		return alike("s", 1)
	case finding.OfShare:
		return alike("%", 100)
	case finding.OfAngle:
		return alike("°", 1/1.745329e-2)
	case finding.OfRate:
		return alike("Hz", 1)
	case finding.OfTurnRate:
		return alike("rad/s", 1)
	case finding.OfEngineSpeed:
		return alike(revs, 1)
	case finding.OfSize:
		return alike("KiB", 1.0/1024)
	case finding.OfDensity:
		return alike("kg/m³", 1)
	}
	return alike("", 1)
}

// units are those in which the style must show a quantity.
func (u reader) units(q finding.Quantity) []unit {
	metric, imperial := unitsOf(q, u.Language)
	switch {
	case u.System == shown.Imperial:
		return []unit{imperial}
	case u.System == shown.Both && metric != imperial:
		return []unit{metric, imperial}
	}
	return []unit{metric}
}

type reader struct{ shown.Style }

// TestEveryNumber renders every code in each language and system of units and
// reads back what stands there: each number of the examples, in the right unit,
// to the digits that are shown, with half of its 95 % interval where it has one.
func TestEveryNumber(t *testing.T) {
	for _, style := range styles() {
		book := New(style)
		for _, e := range Catalogue() {
			f := finding.New(e.Code, e.Args...)
			text := book.Say(f)
			for _, problem := range (reader{style}).misses(text, f) {
				t.Errorf("%s, %s, %s: %q %s", e.Code, style.Language, style.System, text, problem)
			}
		}
	}
}

// TestNumberIsMissed checks that the reading finds what is wrong.
func TestNumberIsMissed(t *testing.T) {
	at := finding.New("a.b", finding.Speed("at", 100/3.6), finding.Mass("m", 280).With(10))
	tests := []struct {
		name, text string
		style      shown.Style
		misses     int
	}{
		{"right", "at 100 km/h, 280 ± 20 kg", shown.Style{System: shown.Metric}, 0},
		{"range", "at 90 to 100 km/h, 280 ± 20 kg", shown.Style{System: shown.Metric}, 0},
		{"right, imperial", "at 62 mph, 617 ± 43 lb", shown.Style{System: shown.Imperial}, 0},
		{"right, both", "at 100 km/h (62 mph), 280 ± 20 kg (617 ± 43 lb)", shown.Style{System: shown.Both}, 0},
		{"German", "bei 100,0 km/h, 280 ± 20 kg", shown.Style{System: shown.Metric, Language: shown.German}, 0},
		{"unit of the other system", "at 62 km/h, 617 ± 43 kg", shown.Style{System: shown.Imperial}, 2},
		{"number of the other system", "at 100 mph, 280 ± 20 lb", shown.Style{System: shown.Imperial}, 2},
		{"rounded wrongly", "at 101 km/h, 280 ± 20 kg", shown.Style{System: shown.Metric}, 1},
		{"standard uncertainty in place of the interval", "at 100 km/h, 280 ± 10 kg", shown.Style{System: shown.Metric}, 1},
		{"one of both", "at 100 km/h, 280 ± 20 kg (617 ± 43 lb)", shown.Style{System: shown.Both}, 1},
		{"no unit", "at 100, 280 ± 20 kg", shown.Style{System: shown.Metric}, 1},
	}
	for _, tt := range tests {
		if got := (reader{tt.style}).misses(tt.text, at); len(got) != tt.misses {
			t.Errorf("%s: %q", tt.name, got)
		}
	}
}

// misses says which numbers of a finding do not stand in its text.
func (u reader) misses(text string, f finding.Finding) []string {
	var out []string
	for _, a := range f.Args {
		switch {
		case a.Finding != nil:
			out = append(out, u.misses(text, *a.Finding)...)
		case a.Quantity == finding.OfText:
			if !strings.Contains(text, a.Text) {
				out = append(out, "lacks "+a.Text)
			}
		case a.Quantity == finding.OfCount && a.X == 1: // "one run"
		default:
			for _, unit := range u.units(a.Quantity) {
				if !slices.ContainsFunc(numbersIn(text), func(n number) bool { return n.shows(a, unit) }) {
					out = append(out, fmt.Sprintf("lacks %s as %.6g %s", a, a.X*unit.factor+unit.offset, unit.name))
				}
			}
		}
	}
	return out
}

// number is one that stands in a text: its value, how far the last digit goes,
// the same of what follows its ±, and the unit behind it or behind the number
// to which a range goes.
type number struct {
	x, digit       float64
	half, halfDigt float64
	unit           string
}

// digits matches a number, its ± and its unit; joins, what stands between the
// ends of a range.
var (
	digits = regexp.MustCompile(`([−-]?\d[\d\x{a0}]*(?:[.,]\d+)?)(?: ± (\d[\d\x{a0}]*(?:[.,]\d+)?))?(?:[ \x{a0}]?(km/h|kg/m³|kg|kW|KiB|mph|m/s²|m/s|m²|m|ft/s²|ft²|ft|lbf|lb|hPa|hp|Hz|PS|N|inHg|°C|°F|°|rad/s|rpm|1/min|s|%)(?:[^\pL\d/²³]|$))?`)
	joins  = regexp.MustCompile(`^(?: to | bis | and | und | or | oder |[-–])`)
)

// numbersIn reads the numbers of a text.
func numbersIn(text string) []number {
	var out []number
	for _, at := range digits.FindAllStringSubmatchIndex(text, -1) {
		group := func(i int) string {
			if at[2*i] < 0 {
				return ""
			}
			return text[at[2*i]:at[2*i+1]]
		}
		n := number{unit: group(3), half: math.NaN()}
		n.x, n.digit = parse(group(1))
		if group(2) != "" {
			n.half, n.halfDigt = parse(group(2))
		}
		out = append(out, n)
		if len(out) > 1 && out[len(out)-2].unit == "" && joins.MatchString(text[lastEnd(text, at[2]):]) {
			out[len(out)-2].unit = n.unit
		}
	}
	return out
}

// lastEnd is where the number that ends before a place of the text ends.
func lastEnd(text string, before int) int {
	return strings.LastIndexAny(text[:before], "0123456789") + 1
}

// parse reads a number and the size of its last digit; of whole numbers that end
// in zeros, the digits of a ± may be tens.
func parse(s string) (x, digit float64) {
	s = strings.NewReplacer(",", ".", "−", "-", "\u00a0", "").Replace(s)
	x, _ = strconv.ParseFloat(s, 64)
	_, behind, _ := strings.Cut(s, ".")
	return x, math.Pow10(-len(behind))
}

// shows reports whether the number is that of an argument, in a unit. With a ±,
// whole numbers are rounded to what it is worth: to tens, for instance.
func (n number) shows(a finding.Arg, in unit) bool {
	near := func(got, digit, want float64) bool { return math.Abs(got-want) <= digit/2+1e-6*math.Abs(want) }
	x := a.X*in.factor + in.offset
	if n.unit != in.name && a.Quantity != finding.OfNumber { // whose unit is part of the text
		return false
	}
	if math.IsNaN(n.half) {
		return near(n.x, n.digit, x) && (n.x != 0 || x == 0)
	}
	const normal95 = 1.96 // half of the 95 % interval, from tables of the normal distribution
	half := normal95 * a.SE * in.factor
	for digit := n.digit; digit <= math.Max(n.half, n.digit); digit *= 10 {
		if near(n.x, digit, x) && near(n.half, digit, half) {
			return true
		}
	}
	return false
}
