package results

import (
	"stillair/export/words"
	"stillair/runs"
	"stillair/runs/pass"
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
	Half     Measured `json:"half_difference_mps"` // of there and back: what wind and slope made of it
}

func fromPass(p runs.Pass) Pass {
	leg := func(l pass.Leg) PassLeg {
		return PassLeg{Start: moment(l.Start), End: moment(l.End), BearingDeg: number(l.BearingDeg, 4), Length: number(l.Length, 4)}
	}
	out := Pass{Setup: p.Setup, Accepted: p.Accepted(), Reasons: list(words.ForMachines().Texts(p.Reasons)), Findings: findingsOf("reason", p.Reasons),
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
