package marks

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"stillair/sensors/units"
)

// SpeedPair is a stretch of speed that a roll-on runs through, in m/s.
type SpeedPair struct {
	Name     string // as the rider wrote it, tidied: "60-100 km/h"
	From, To float64
}

// speedUnits are the units a pair may be written in, the longest spelling
// first so that "km/h" is not taken for "h".
var speedUnits = []struct {
	spelling, name string
	mps            float64
}{
	{"km/h", "km/h", units.KMH}, {"kmph", "km/h", units.KMH}, {"kph", "km/h", units.KMH}, {"kmh", "km/h", units.KMH},
	{"mph", "mph", units.MPH}, {"mi/h", "mph", units.MPH}, {"m/s", "m/s", 1},
}

// ParseSpeedPair reads a pair such as "60-100km/h", "40-70 mph" or "15-25m/s".
func ParseSpeedPair(text string) (SpeedPair, error) {
	bad := func(why string) (SpeedPair, error) {
		return SpeedPair{}, fmt.Errorf("speed pair %q: %s; write it like 60-100km/h or 40-70mph", text, why)
	}
	s := strings.ToLower(strings.TrimSpace(text))
	s = strings.NewReplacer("–", "-", "—", "-").Replace(s)
	for _, u := range speedUnits {
		numbers, ok := strings.CutSuffix(s, u.spelling)
		if !ok {
			continue
		}
		low, high, ok := strings.Cut(strings.TrimSpace(numbers), "-")
		if !ok {
			return bad("it needs two speeds with a dash between")
		}
		from, err := speedNumber(low)
		if err != nil {
			return bad("the first speed is not a number")
		}
		to, err := speedNumber(high)
		if err != nil {
			return bad("the second speed is not a number")
		}
		switch {
		case to <= from:
			return bad("the second speed must be above the first")
		case from*u.mps < 1:
			return bad("a roll-on starts rolling, at 1 m/s or more")
		case to*u.mps > 150:
			return bad("no motorcycle on a road is that fast")
		}
		name := fmt.Sprintf("%s-%s %s", trimNumber(from), trimNumber(to), u.name)
		return SpeedPair{Name: name, From: from * u.mps, To: to * u.mps}, nil
	}
	return bad("the unit is missing")
}

func speedNumber(s string) (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	if err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		err = strconv.ErrRange
	}
	return v, err
}

func trimNumber(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// DefaultPairs are the roll-ons measured when the rider asked for none.
func DefaultPairs() []SpeedPair {
	return []SpeedPair{
		{Name: "60-100 km/h", From: 60 * units.KMH, To: 100 * units.KMH},
		{Name: "80-120 km/h", From: 80 * units.KMH, To: 120 * units.KMH},
	}
}
