package report

import (
	"math"
	"strings"

	"stillair/export/report/figure"
	"stillair/export/shown"
	"stillair/runs"
	"stillair/runs/effect"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// load is the road load of one setup on the page.
type load struct {
	Setup    string
	Bands    []band
	Basis    string   // the data that it is based on
	AtSpeeds []string // its effect at usual speeds
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
	Spoken           string
	Drawn            bool // there is an interval to draw
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

func (s scale) band(t *teller, symbol, name, unit string, v runs.Value, ci [2]float64) band {
	decimals := 3
	switch {
	case s.to < 0.1:
		decimals = 4
	case s.to > 3: // square feet
		decimals = 2
	}
	if !(ci[0] <= ci[1]) {
		return band{Symbol: symbol, Name: name, Unit: unit, Value: t.style.Plain(v.X, math.NaN())}
	}
	low, high := t.style.Fixed(ci[0], decimals), t.style.Fixed(ci[1], decimals)
	at := func(x float64) float64 { return 100 * math.Max(0, math.Min(1, (x-s.from)/(s.to-s.from))) }
	return band{Drawn: true, Symbol: symbol, Name: name, Unit: unit, Value: t.style.Plain(v.X, (ci[1]-ci[0])/2), Low: low, High: high,
		Spoken: t.fill("interval_of", finding.Text("low", low), finding.Text("high", strings.TrimSpace(high+" "+unit))),
		Left:   at(ci[0]), Width: at(ci[1]) - at(ci[0]), Mid: at(v.X), From: t.style.Fixed(s.from, decimals), To: t.style.Fixed(s.to, decimals)}
}

func (t *teller) loads(r *runs.Result) []load {
	drag, roll := scale{math.Inf(1), math.Inf(-1)}, scale{math.Inf(1), math.Inf(-1)}
	area := t.style.Unit(shown.Area)
	interval := func(l runs.RoadLoad) [2]float64 { return [2]float64{l.CdACI[0] / area.SI, l.CdACI[1] / area.SI} }
	for _, l := range r.RoadLoads {
		drag.include(interval(l))
		roll.include(l.CrrCI)
	}
	drag, roll = drag.rounded(), roll.rounded()
	var out []load
	for _, l := range r.RoadLoads {
		w := effectOf(r, l)
		setup := t.setup(l.Setup)
		v := load{Setup: setup, Bands: []band{drag.band(t, "CdA", t.text("drag_area"), area.Name, l.CdA.Times(1/area.SI), interval(l)), roll.band(t, "Crr", t.text("rolling_resistance"), "", l.Crr, l.CrrCI)},
			Basis:    t.fill("basis", finding.Count("pairs", l.Pairs), finding.Count("runs", len(l.Runs))),
			AtSpeeds: t.atSpeeds(w), Notes: t.book.Sentences(l.Notes), Limits: t.limits(l), Improve: t.advice(l),
			Formula: t.fill("formula", finding.Num("a", l.A.X).With(l.A.SE), finding.Num("c", l.C.X).With(l.C.SE))}
		for _, f := range []figure.Figure{figure.CoastDowns(r, l.Setup, t.book), figure.Force(w, setup, fastestShown, t.book), figure.Power(w, setup, fastestShown, t.book)} {
			if !f.Empty() {
				v.Figures = append(v.Figures, f)
			}
		}
		out = append(out, v)
	}
	return out
}

// fastestShown is the highest speed at which force and power are drawn, m/s:
// slightly beyond that of the coast-downs.
const fastestShown = 140 * units.KMH

// effectOf returns the load of a setup in the air of the ride, with standard
// gravity if the result has no location.
func effectOf(r *runs.Result, l runs.RoadLoad) effect.Load {
	gravity := r.Gravity
	if gravity == 0 {
		gravity = roadload.DefaultOptions(1).Gravity
	}
	return l.Load(gravity)
}

func (t *teller) atSpeeds(w effect.Load) []string {
	if w.Check() != nil {
		return nil
	}
	var out []string
	for _, v := range usualSpeeds(t.style.System) {
		p := w.Power(v)
		out = append(out, t.fill("takes", finding.Speed("speed", v), finding.Power("power", p.X).With(p.SE), finding.Share("air", w.AirShare(v))))
	}
	return out
}

// loadMeaning explains the figures of the road load in plain words.
func (t *teller) loadMeaning(r *runs.Result) []string {
	if len(r.RoadLoads) == 0 {
		return nil
	}
	out := []string{t.text("mean_cda"), t.text("mean_crr"), t.text("mean_interval")}
	if len(r.RoadLoads) > 1 {
		out = append(out, t.text("mean_difference"))
	}
	return out
}
