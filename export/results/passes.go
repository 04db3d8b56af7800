package results

import (
	"time"

	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/pass"
	"stillair/runs/season"
)

// Pass is one road ridden in both directions at a steady speed. Speeds are in m/s.
type Pass struct {
	Setup    string     `json:"setup"`
	Accepted bool       `json:"accepted"`
	Reasons  []string   `json:"reasons"`
	Findings []Finding  `json:"findings,omitempty"`
	Apart    *float64   `json:"apart_s"` // between the beginnings of its legs
	There    PassLeg    `json:"there"`
	Back     PassLeg    `json:"back"`
	Speeds   []PassOver `json:"speeds"`
}

// PassLeg is all of the road that was ridden at a steady speed one way.
type PassLeg struct {
	Start      *float64 `json:"start_s,omitempty"`
	End        *float64 `json:"end_s,omitempty"`
	BearingDeg *float64 `json:"bearing_deg,omitempty"`
	Length     *float64 `json:"length_m,omitempty"`
}

// PassOver is the speed over one distance, both ways over the same road.
type PassOver struct {
	Over     string   `json:"over"` // "1 km"
	Distance *float64 `json:"distance_m"`
	There    Measured `json:"there_mps"`
	Back     Measured `json:"back_mps"`
	Mean     Measured `json:"mean_mps"`            // of the two speeds
	Half     Measured `json:"half_difference_mps"` // of the two directions: the effect of wind and slope
}

func fromPass(say *words.Book, p runs.Pass) Pass {
	leg := func(l pass.Leg) PassLeg {
		return PassLeg{Start: moment(l.Start), End: moment(l.End), BearingDeg: number(l.BearingDeg, 4), Length: number(l.Length, 4)}
	}
	out := Pass{Setup: p.Setup, Accepted: p.Accepted(), Reasons: list(say.Texts(p.Reasons)), Findings: findingsOf(say, "reason", p.Reasons),
		Apart: number(p.Apart(), 5), There: leg(p.There), Back: leg(p.Back), Speeds: []PassOver{}}
	for _, f := range p.Figures {
		out.Speeds = append(out.Speeds, PassOver{Over: f.Name, Distance: number(f.Distance, digits),
			There: rounded(f.There), Back: rounded(f.Back), Mean: rounded(f.Mean), Half: rounded(f.Half)})
	}
	return out
}

// rounded is a value with the digits of a document.
func rounded(v runs.Value) Measured {
	var m Measured
	m.X, m.SE = value(v)
	return m
}

// forSeason are the speeds of a pass for which every figure is known.
func (p *Pass) forSeason() []season.Pass {
	var out []season.Pass
	for _, o := range p.Speeds {
		if isFinite(o.Distance, o.There.X, o.There.SE, o.Back.X, o.Back.SE, o.Mean.X, o.Mean.SE, o.Half.X, o.Half.SE) {
			out = append(out, season.Pass{Setup: p.Setup, Over: o.Over, Distance: *o.Distance, Apart: *p.Apart,
				There: o.There.value(), Back: o.Back.value(), Mean: o.Mean.value(), Half: o.Half.value()})
		}
	}
	return out
}

func (m Measured) value() runs.Value { return runs.Value{X: *m.X, SE: *m.SE} }

// passesOf are the passes of rides whose directions were ridden within so long of each
// other.
func passesOf(rides []season.Ride, within time.Duration) []SeasonPass {
	var out []SeasonPass
	for _, r := range rides {
		for _, p := range r.Passes {
			if p.Apart <= within.Seconds() {
				out = append(out, SeasonPass{Ride: r.Name, Setup: p.Setup, Over: p.Over, Distance: number(p.Distance, digits), Apart: number(p.Apart, 4),
					There: measured(p.There), Back: measured(p.Back), Mean: measured(p.Mean), Half: measured(p.Half)})
			}
		}
	}
	return out
}
