package results

import (
	"io"

	"stillair/export/words"
	"stillair/runs/plan"
)

// planVersion is the version of a plan's document.
const planVersion = 1

// PlanOf is the subject of a planned comparison.
type PlanOf string

// What a plan can be about, and the unit of its differences.
const (
	ForDrag  PlanOf = "drag"  // relative, of CdA
	ForPower PlanOf = "power" // relative, of the mean power at the road
	ForTime  PlanOf = "time"  // s
)

// Plan is a planned comparison as JSON, in the spirit of Document. Of the
// standard errors and smallest changes the one of its question is there.
type Plan struct {
	Version    int          `json:"version"`
	Of         PlanOf       `json:"of"`
	Pairs      int          `json:"pairs"`  // for each setup
	Blocks     []PlanBlock  `json:"blocks"` // in the order of riding
	RoadLength float64      `json:"road_length_m"`
	Duration   float64      `json:"duration_s"`
	SE         *float64     `json:"delta_cda_relative_se,omitempty"`
	PowerSE    *float64     `json:"delta_power_relative_se,omitempty"`
	TimeSE     *float64     `json:"delta_time_se_s,omitempty"`
	Half       *float64     `json:"half_95_relative,omitempty"` // half width of the 95 % interval
	HalfS      *float64     `json:"half_95_s,omitempty"`
	Chance     float64      `json:"chance"`
	Gusty      *float64     `json:"chance_gusty,omitempty"`
	Calm       *float64     `json:"chance_calm,omitempty"`
	Smallest   *float64     `json:"smallest_relative,omitempty"`
	SmallestS  *float64     `json:"smallest_s,omitempty"`
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
	Change    string   `json:"change"`
	Chance    float64  `json:"chance"`
	Smallest  *float64 `json:"smallest_relative,omitempty"`
	SmallestS *float64 `json:"smallest_s,omitempty"`
}

// WritePlan writes a plan, indented so that a person can read it too.
func WritePlan(w io.Writer, p *plan.Plan, of PlanOf) error {
	d := Plan{Version: planVersion, Of: of, Pairs: p.Pairs, Blocks: []PlanBlock{}, RoadLength: p.RoadLength, Duration: p.Seconds,
		Chance: p.Chance, Enough: p.Enough, Advice: []PlanAdvice{}}
	if p.KnowsDays() {
		d.Gusty, d.Calm = &p.Gusty, &p.Calm
	}
	d.Smallest, d.SmallestS = of.split(p.Smallest)
	d.Half, d.HalfS = of.split(p.Half)
	switch of {
	case ForDrag:
		d.SE = &p.SE
	case ForPower:
		d.PowerSE = &p.SE
	case ForTime:
		d.TimeSE = &p.SE
	}
	for _, b := range p.Blocks {
		d.Blocks = append(d.Blocks, PlanBlock{b.Setup, b.Pairs})
	}
	say := words.ForMachines()
	for _, a := range p.Advice {
		relative, seconds := of.split(a.Smallest)
		d.Advice = append(d.Advice, PlanAdvice{say.Say(a.Change), a.Chance, relative, seconds})
	}
	return encode(w, d)
}

// split puts a difference where its unit belongs.
func (of PlanOf) split(x float64) (relative, seconds *float64) {
	if of == ForTime {
		return nil, &x
	}
	return &x, nil
}
