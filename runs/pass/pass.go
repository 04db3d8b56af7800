package pass

import (
	"cmp"
	"math"
	"slices"
	"time"

	"stillair/fusion"
	"stillair/runs/measure"
	"stillair/runs/pairing"
	"stillair/sensors"
	"stillair/sensors/finding"
)

// Codes of the findings about a pass.
const (
	codeEased  finding.Code = "pass.eased"
	codeUnseen finding.Code = "pass.unseen"
	codeRunUp  finding.Code = "pass.run_up"
	codeApart  finding.Code = "pass.apart"
)

// Within is the longest time between the beginnings of the two legs of a pass.
const Within = time.Hour

const (
	nearTop    = 0.9  // of the fastest steady stretch, minimum for the faster leg
	asFast     = 0.97 // of the fastest leg in the same direction, minimum for a leg
	mostApart  = 0.2  // of their mean, maximum difference of the directions
	soon       = 2.0  // s after a leg, within which a coast-down makes it a run-up
	leastFixes = 3    // of a leg, to locate it on the road
)

// Errors gives the standard uncertainty of a linear combination of the track's errors; a
// fusion.Track does.
type Errors interface{ SD([]fusion.Term) float64 }

// Ride is the input of Find.
type Ride struct {
	Track   *fusion.Track
	Errors  Errors                               // of the track
	Fixes   func(from, to float64) []sensors.Fix // that describe the bike between two times
	Setup   func(t float64) string
	Fade    func(setup string) float64 // see Fade
	Stops   []fusion.Span
	Coasts  []fusion.Span // coast-downs that count
	ScaleSE float64       // standard uncertainty of the scale of all speeds, relative
}

// Pass is the same road ridden in both directions at a steady speed.
type Pass struct {
	Setup       string
	There, Back Leg // in order of time
	Figures     []Figure
	Reasons     []finding.Finding // why it does not count; empty: it counts
}

// Accepted reports whether the pass counts.
func (p Pass) Accepted() bool { return len(p.Reasons) == 0 }

// Apart is the time between the beginnings of its legs, s.
func (p Pass) Apart() float64 { return p.Back.Start - p.There.Start }

// Leg is one direction of a pass: all of the road that was ridden at a steady speed.
type Leg struct {
	Start, End float64 // s on the log's clock
	BearingDeg float64 // degrees clockwise from north
	Length     float64 // m
}

// Figure is the speed over one distance, measured in both directions over the same road.
type Figure struct {
	Name        string // "1 km"
	Distance    float64
	There, Back measure.Value  // mean speed over the distance, m/s
	Mean        measure.Value  // of the two speeds, m/s
	Half        measure.Value  // half of There − Back: the effect of wind and slope, m/s
	Times       [2]fusion.Span // in which the distance was ridden, there and back
}

// leg is a leg with its position.
type leg struct {
	Leg
	stretch
	setup string
	where pairing.Coast
}

// Find returns the passes of a ride in order of time, those that do not count with
// their reasons.
func Find(r Ride) []Pass {
	l := newLine(r.Track, slices.Concat(r.Stops, r.Coasts))
	var out []Pass
	for _, same := range bySetup(r.legs(l)) {
		out = append(out, r.ofSetup(l, same)...)
	}
	slices.SortStableFunc(out, func(a, b Pass) int { return cmp.Compare(a.There.Start, b.There.Start) })
	return out
}

// legs are the steady stretches of a ride whose place is known, the fastest first.
func (r Ride) legs(l line) []leg {
	var out []leg
	for _, s := range l.stretches() {
		g := leg{stretch: s, Leg: Leg{Start: l.t[s.from], End: l.t[s.to], Length: l.s[s.to] - l.s[s.from]}}
		g.setup = r.Setup((g.Start + g.End) / 2)
		g.where = pairing.Coast{Start: g.Start, End: g.End, Setup: g.setup, Fixes: r.Fixes(g.Start, g.End)}
		g.BearingDeg = g.where.BearingDeg()
		out = append(out, g)
	}
	return out
}

func bySetup(all []leg) [][]leg {
	var names []string
	of := map[string][]leg{}
	for _, g := range all {
		if of[g.setup] == nil {
			names = append(names, g.setup)
		}
		of[g.setup] = append(of[g.setup], g)
	}
	var out [][]leg
	for _, n := range names {
		out = append(out, of[n])
	}
	return out
}

// measured makes a pass of a couple.
func (r Ride) measured(l line, c couple) Pass {
	p := Pass{Setup: c.a.setup, There: c.a.Leg, Back: c.b.Leg, Figures: r.figures(l, c.road)}
	switch c.how {
	case eased:
		p.Reasons = append(p.Reasons, finding.New(codeEased))
	case unseen:
		p.Reasons = append(p.Reasons, finding.New(codeUnseen))
	}
	if r.runsUp(c.a) || r.runsUp(c.b) {
		p.Reasons = append(p.Reasons, finding.New(codeRunUp))
	}
	mean := (c.a.top + c.b.top) / 2
	if off := math.Abs(c.a.top - c.b.top); off > mostApart*mean {
		p.Reasons = append(p.Reasons, finding.New(codeApart, finding.Speed("apart", off)))
	}
	return p
}

// runsUp reports whether a coast-down began where a leg ended.
func (r Ride) runsUp(g leg) bool {
	return slices.ContainsFunc(r.Coasts, func(c fusion.Span) bool { return c.From > g.Start && c.From < g.End+soon })
}
