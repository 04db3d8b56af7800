package sheets

import (
	"strings"

	"stillair/sensors/units"
)

// unit is a possible unit of a column; the zero unit means unknown.
type unit struct {
	name string
	si   float64 // its value in the SI unit, or in degrees
}

func (u unit) known() bool { return u.si != 0 }

// spelled are units as written in headers, in lower case without blanks, separated by
// bars. The factors are exact by definition (NIST SP 811), except for that of inHg.
func spelled(q quantity) []struct {
	unit
	words string
} {
	type row = struct {
		unit
		words string
	}
	const second, milli, micro, nano = 1, 1e-3, 1e-6, 1e-9
	switch q {
	case ofTime:
		return []row{
			{unit{"s", second}, "s|sec|secs|second|seconds|sekunden"},
			{unit{"ms", milli}, "ms|msec|millis|millisec|milliseconds|millisekunden"},
			{unit{"µs", micro}, "us|usec|micros|microseconds|mikrosekunden"},
			{unit{"ns", nano}, "ns|nsec|nanos|nanoseconds|nanosekunden"}}
	case ofForce:
		return []row{
			{unit{"m/s²", 1}, "m/s2|mps2|m/s/s|ms-2|m/sec2|m*s-2|m/s**2"},
			{unit{"g", units.StandardGravity}, "g|gs|g's"},
			{unit{"mg", units.StandardGravity / 1000}, "mg"}}
	case ofTurn:
		return []row{
			{unit{"rad/s", 1}, "rad/s|radps|rad/sec|rads|rads-1"},
			{unit{"deg/s", degree}, "deg/s|dps|degps|deg/sec|degs|degrees/s|degrees/sec"}}
	case ofSpeed:
		return []row{
			{unit{"m/s", 1}, "m/s|mps|ms-1|m/sec"},
			{unit{"km/h", units.KMH}, "km/h|kmh|kph|kmph|km/hr|kmh-1"},
			{unit{"mph", units.MPH}, "mph|mi/h|miles/h|mi/hr"},
			{unit{"knots", 1852.0 / 3600}, "kn|kt|kts|knot|knots|knoten"},
			{unit{"ft/s", 0.3048}, "ft/s|fps|ft/sec"}}
	case ofAngle:
		return []row{{unit{"°", 1}, "deg|degree|degrees|grad"}, {unit{"rad", 1 / degree}, "rad|radians"}}
	case ofLength:
		return []row{{unit{"m", 1}, "m|meter|meters|metre|metres"}, {unit{"ft", 0.3048}, "ft|feet|foot"}}
	case ofPressure:
		return []row{
			{unit{"Pa", 1}, "pa"}, {unit{"hPa", 100}, "hpa|mbar|mb|millibar"},
			{unit{"kPa", 1000}, "kpa"}, {unit{"inHg", 3386.389}, "inhg"}}
	}
	return nil
}

const degree = 3.141592653589793 / 180

// unitOf reads a unit of the quantity; the zero unit if text is none.
func unitOf(q quantity, text string) unit {
	text = strings.NewReplacer(" ", "", "²", "2", "^", "", "µ", "u", "μ", "u", "°", "deg", "·", "*", "⁻", "-").Replace(strings.ToLower(text))
	for _, u := range spelled(q) {
		for w := range strings.SplitSeq(u.words, "|") {
			if w == text {
				return u.unit
			}
		}
	}
	return unit{}
}

// unitInName finds the unit in the name of a column: in brackets, or as its
// last words.
func unitInName(q quantity, name string) unit {
	_, inside := brackets(name)
	for _, text := range inside {
		if u := unitOf(q, text); u.known() {
			return u
		}
	}
	words := wordsOf(name)
	for i := len(words) - 1; i >= 0; i-- {
		if i > 0 {
			if u := unitOf(q, words[i-1]+"/"+words[i]); u.known() {
				return u
			}
		}
		if u := unitOf(q, words[i]); u.known() {
			return u
		}
	}
	return unit{}
}
