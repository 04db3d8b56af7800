package marks

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// What is wrong with a pair of speeds as it was written.
const (
	codePairBad      finding.Code = "speedpair.bad"
	codePairDash     finding.Code = "speedpair.dash"
	codePairFirst    finding.Code = "speedpair.first"
	codePairSecond   finding.Code = "speedpair.second"
	codePairOrder    finding.Code = "speedpair.order"
	codePairStanding finding.Code = "speedpair.standing"
	codePairFast     finding.Code = "speedpair.fast"
	codePairUnit     finding.Code = "speedpair.unit"
)

// SpeedPair is a stretch of speed that a roll-on runs through, in m/s.
type SpeedPair struct {
	Name     string // as written by the rider, normalised: "60-100 km/h"
	From, To float64
}

// speedUnits are the units a pair may be written in, the longest spelling
// first so that "km/h" is not mistaken for "h".
var speedUnits = []struct {
	spelling, name string
	mps            float64
}{
	{"km/h", "km/h", units.KMH}, {"kmph", "km/h", units.KMH}, {"kph", "km/h", units.KMH}, {"kmh", "km/h", units.KMH},
	{"mph", "mph", units.MPH}, {"mi/h", "mph", units.MPH}, {"m/s", "m/s", 1},
}

// ParseSpeedPair reads a pair such as "60-100km/h", "40-70 mph" or "15-25m/s".
func ParseSpeedPair(text string) (SpeedPair, error) {
	bad := func(why finding.Code) (SpeedPair, error) {
		return SpeedPair{}, finding.Fail(codePairBad, finding.Text("pair", text), finding.Of("why", finding.New(why)), finding.Text("like", "60-100km/h"))
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
			return bad(codePairDash)
		}
		from, err := speedNumber(low)
		if err != nil {
			return bad(codePairFirst)
		}
		to, err := speedNumber(high)
		if err != nil {
			return bad(codePairSecond)
		}
		switch {
		case to <= from:
			return bad(codePairOrder)
		case from*u.mps < 1:
			return bad(codePairStanding)
		case to*u.mps > 150:
			return bad(codePairFast)
		}
		name := fmt.Sprintf("%s-%s %s", trimNumber(from), trimNumber(to), u.name)
		return SpeedPair{Name: name, From: from * u.mps, To: to * u.mps}, nil
	}
	return bad(codePairUnit)
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
