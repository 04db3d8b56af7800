package results

import (
	"io"

	"stillair/runs/plan"
)

// Plan is a planned comparison as JSON, in the spirit of Document.
type Plan struct {
	Version    int          `json:"version"`
	Pairs      int          `json:"pairs"`  // for each setup
	Blocks     []PlanBlock  `json:"blocks"` // in the order of riding
	RoadLength float64      `json:"road_length_m"`
	Duration   float64      `json:"duration_s"`
	SE         float64      `json:"delta_cda_relative_se"`
	Chance     float64      `json:"chance"`
	Smallest   float64      `json:"smallest_relative"`
	Enough     bool         `json:"enough"`
	Advice     []PlanAdvice `json:"advice"`
}

// PlanBlock is some pairs with one setup, counted from 0.
type PlanBlock struct {
	Setup int `json:"setup"`
	Pairs int `json:"pairs"`
}

// PlanAdvice is one thing that would help.
type PlanAdvice struct {
	Change   string  `json:"change"`
	Chance   float64 `json:"chance"`
	Smallest float64 `json:"smallest_relative"`
}

// WritePlan writes a plan, indented so that a person can read it too.
func WritePlan(w io.Writer, p *plan.Plan) error {
	d := Plan{Version: Version, Pairs: p.Pairs, Blocks: []PlanBlock{}, RoadLength: p.RoadLength, Duration: p.Seconds,
		SE: p.SE, Chance: p.Chance, Smallest: p.Smallest, Enough: p.Enough, Advice: []PlanAdvice{}}
	for _, b := range p.Blocks {
		d.Blocks = append(d.Blocks, PlanBlock{b.Setup, b.Pairs})
	}
	for _, a := range p.Advice {
		d.Advice = append(d.Advice, PlanAdvice{a.Change, a.Chance, a.Smallest})
	}
	return encode(w, d)
}
