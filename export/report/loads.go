package report

import (
	"fmt"
	"math"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/roadload"
	"stillair/runs/worth"
	"stillair/sensors/units"
)

// load is the road load of one setup on the page.
type load struct {
	Setup    string
	Bands    []band
	Basis    string   // from how much it is
	AtSpeeds []string // what it means at usual speeds
	Formula  string
	Notes    []string
	Figures  []figure.Figure
	Limits   []limit // what limits the certainty of the drag area
	Improve  string
}

// band is a figure with its 95 % interval, drawn to a scale that all setups
// share. Positions are percents of the scale.
type band struct {
	Symbol, Name     string
	Value, Unit      string
	Low, High        string
	Left, Width, Mid float64
	From, To         string // ends of the scale
	Drawn            bool   // there is an interval to draw
}

// scale is a stretch of numbers that bands are drawn on.
type scale struct{ from, to float64 }

// include widens the scale to hold an interval.
func (s *scale) include(ci [2]float64) {
	if ci[0] <= ci[1] {
		s.from, s.to = math.Min(s.from, ci[0]), math.Max(s.to, ci[1])
	}
}

// rounded moves the ends outwards to whole steps, with room beside the bands.
func (s scale) rounded() scale {
	if !(s.from <= s.to) {
		return scale{0, 1}
	}
	room := 0.25 * (s.to - s.from)
	step := math.Pow(10, math.Floor(math.Log10(math.Max(s.to-s.from, 1e-9))))
	return scale{math.Max(0, math.Floor((s.from-room)/step)*step), math.Ceil((s.to+room)/step) * step}
}

func (s scale) band(symbol, name, unit string, v runs.Value, ci [2]float64) band {
	decimals := 3
	switch {
	case s.to < 0.1:
		decimals = 4
	case s.to > 3: // square feet
		decimals = 2
	}
	if !(ci[0] <= ci[1]) {
		return band{Symbol: symbol, Name: name, Unit: unit, Value: shown.PlusMinus(v.X, math.NaN())}
	}
	at := func(x float64) float64 { return 100 * math.Max(0, math.Min(1, (x-s.from)/(s.to-s.from))) }
	return band{Drawn: true, Symbol: symbol, Name: name, Unit: unit, Value: shown.PlusMinus(v.X, (ci[1]-ci[0])/2), Low: shown.Fixed(ci[0], decimals), High: shown.Fixed(ci[1], decimals),
		Left: at(ci[0]), Width: at(ci[1]) - at(ci[0]), Mid: at(v.X), From: shown.Fixed(s.from, decimals), To: shown.Fixed(s.to, decimals)}
}

func loads(r *runs.Result, u shown.System) []load {
	drag, roll := scale{math.Inf(1), math.Inf(-1)}, scale{math.Inf(1), math.Inf(-1)}
	area := u.First(shown.Area)
	interval := func(l runs.RoadLoad) [2]float64 { return [2]float64{l.CdACI[0] / area.SI, l.CdACI[1] / area.SI} }
	for _, l := range r.RoadLoads {
		drag.include(interval(l))
		roll.include(l.CrrCI)
	}
	drag, roll = drag.rounded(), roll.rounded()
	var out []load
	for _, l := range r.RoadLoads {
		w := worthOf(r, l)
		v := load{Setup: setupWords(l.Setup), Bands: []band{drag.band("CdA", "drag area", area.Name, l.CdA.Times(1/area.SI), interval(l)), roll.band("Crr", "rolling resistance", "", l.Crr, l.CrrCI)},
			Basis:    fmt.Sprintf("%s there and back, %d coast-downs", plural(l.Pairs, "pair"), len(l.Runs)),
			AtSpeeds: atSpeeds(w, u), Notes: words.ForMachines().Sentences(l.Notes), Limits: limits(l), Improve: advice(l),
			Formula: fmt.Sprintf("F = %s N + %s N/(m/s)² · v² at 20 °C and 982.1 hPa, v in m/s", shown.PlusMinus(l.A.X, half(l.A)), shown.PlusMinus(l.C.X, half(l.C)))}
		for _, f := range []figure.Figure{figure.CoastDowns(r, l.Setup, u), figure.Force(w, l.Setup, fastestShown, u), figure.Power(w, l.Setup, fastestShown, u)} {
			if !f.Empty() {
				v.Figures = append(v.Figures, f)
			}
		}
		out = append(out, v)
	}
	return out
}

// fastestShown is how far force and power are drawn, m/s: a little beyond what
// a coast-down reaches.
const fastestShown = 140 * units.KMH

// worthOf returns the load of a setup in the air of the ride, with standard
// gravity where the result does not tell where it was.
func worthOf(r *runs.Result, l runs.RoadLoad) worth.Load {
	gravity := r.Gravity
	if gravity == 0 {
		gravity = roadload.DefaultOptions(1).Gravity
	}
	return l.Load(gravity)
}

func atSpeeds(w worth.Load, u shown.System) []string {
	if w.Check() != nil {
		return nil
	}
	var out []string
	for _, v := range usualSpeeds(u) {
		p := w.Power(v)
		out = append(out, fmt.Sprintf("%s takes %s at the tyre, %.0f %% of it for the air", u.Number(shown.Speed, v, 0), u.PlusMinus(shown.Power, p.X, half(p)), 100*w.AirShare(v)))
	}
	return out
}

// loadMeaning explains the figures of the road load in plain words.
func loadMeaning(r *runs.Result) []string {
	if len(r.RoadLoads) == 0 {
		return nil
	}
	out := []string{
		"CdA, the drag area, says how much air bike and rider push aside. The force of the air grows with its product with the square of the speed, so it decides on the open road. Less is better.",
		"Crr, the rolling resistance, is the share of the weight that tyres, bearings and chain take, as extrapolated to standstill. It matters most in town. Tyre pressure, warmth and the road's surface change it.",
		"The ± is a 95 % band: were the whole test repeated many times, 95 of 100 such bands would hold the true figure. It counts gusts, the road, the receiver's errors and how well the mass is known. It does not count a wind that blew one way in every pair, or a mass that was written down wrongly.",
	}
	if len(r.RoadLoads) > 1 {
		out = append(out, "Do not read the difference of two setups off their bands: they share part of their errors, so the difference, given above, is known better than either.")
	}
	return out
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
