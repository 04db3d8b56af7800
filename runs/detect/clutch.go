package detect

import (
	"math"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// heldBackChance is the probability from which on a run does not count: one that
// counts is at least four times as likely to have rolled freely. Of 1,520 coast-downs of
// package foreign (seeds 6001 to 6040 and 6101 to 6250) that rolled freely, none had
// more than 0.03; a single one of a bike that is hard to roll, up a slope, has 0.12.
// The priors are from textbooks; the variation of the wind from run to run (ownWindSD)
// and the smallest retarding force (held, heldSD) were set on rides: "coast-downs" and
// "a gear left in" of the study "riders" of export/accuracy, seeds 33, 39 and 101 to
// 112. It is validated on the other seeds from 1 to 60 of all its cases, on those of
// package runs, and on package foreign from seed 7001, whose machines have 9 to 140 kW.
const heldBackChance = 0.2

// decideClutch rejects the coast-downs in which the engine is felt turning with the
// wheels, and those that may well have been held back, from all decelerations of the
// ride together.
func (r Ride) decideClutch(s *series, found []Found) {
	felt := r.listen(found)
	var all []slowed
	for i, f := range found {
		x := slowedIn(s, piece{s.index(f.From), s.index(f.To)}, bearingOf(r.Fixes, (f.From+f.To)/2))
		x.felt = felt[i]
		all = append(all, x)
	}
	for i, chance := range chances(massRange(r.Mass), all) {
		f := &found[i]
		switch {
		case len(f.Reasons) > 0:
		case felt[i] == feltTurning:
			f.Reasons = append(f.Reasons, finding.New(codeEngineTurns))
		case chance > heldBackChance:
			f.Reasons = append(f.Reasons, finding.New(codeInGear, finding.Share("chance", chance)))
		}
	}
}

// listen returns for each coast-down whether the engine is felt turning with the wheels.
func (r Ride) listen(found []Found) []feeling {
	felt := make([]feeling, len(found))
	if r.EngineTurns == nil {
		return felt
	}
	var spans []fusion.Span
	var of []int
	for i, f := range found {
		if len(f.Reasons) == 0 {
			spans, of = append(spans, fusion.Span{From: f.From, To: f.To}), append(of, i)
		}
	}
	for k, turns := range r.EngineTurns(spans) {
		felt[of[k]] = notFelt
		if turns {
			felt[of[k]] = feltTurning
		}
	}
	return felt
}

// slowedIn describes a piece with its course in degrees, NaN if unknown.
func slowedIn(s *series, p piece, course float64) slowed {
	const parts = 3
	var r slowed
	for k := range parts {
		a, b := p.from+(p.to-p.from)*k/parts, p.from+(p.to-p.from)*(k+1)/parts
		x := part{seconds: s.seconds(a, b)}
		for i := a; i < b; i++ {
			x.speed += s.v[i] / float64(b-a)
			x.square += s.v[i] * s.v[i] / float64(b-a)
		}
		x.decel = (s.v[a] - s.v[b]) / x.seconds
		r.parts = append(r.parts, x)
	}
	if !math.IsNaN(course) {
		r.north, r.east = math.Cos(course*math.Pi/180), math.Sin(course*math.Pi/180)
	}
	return r
}

// bearingOf is the course of the fixes in the middle of a run, degrees.
func bearingOf(fixes []sensors.Fix, t float64) float64 {
	best, near := math.NaN(), 3.0
	for _, f := range fixes {
		if d := math.Abs(f.T - t); d < near && !math.IsNaN(f.BearingDeg) {
			best, near = f.BearingDeg, d
		}
	}
	return best
}

// Limits of further decelerations beside the coast-downs of a ride.
const (
	sameStart = 0.12 // maximum relative difference of its first speed from that of the others
	sameSpan  = 0.6  // share of the speed range of the others that it must cover
	leastSame = 3    // coast-downs needed as a pattern of how they are ridden in this ride
)

// missed are decelerations between the same speeds as the coast-downs of the
// ride that were too strong for one, but weaker than braking: a gear left in, a
// dragging brake.
func missed(s *series, found []Found) []Found {
	var from, to, hard []float64
	for _, f := range found {
		if len(f.Reasons) == 0 {
			p := piece{s.index(f.From), s.index(f.To)}
			from, to, hard = append(from, s.v[p.from]), append(to, s.v[p.to]), append(hard, -meanSlope(s, p))
		}
	}
	if len(from) < leastSame {
		return nil
	}
	first, last, usual := median.Of(from), median.Of(to), median.Of(hard)
	var out []Found
	for _, z := range slowings(s) {
		a, b := s.time(z.from), s.time(z.to)
		if math.Abs(s.v[z.from]/first-1) > sameStart || s.v[z.from]-math.Max(s.v[z.to], last) < sameSpan*(first-last) ||
			-meanSlope(s, z) > usual+braking || overlaps(found, a, b) {
			continue
		}
		out = append(out, Found{Kind: CoastDown, From: a, To: b, Reasons: []finding.Finding{finding.New(codeUnlike)}})
	}
	return out
}

func overlaps(found []Found, a, b float64) bool {
	for _, f := range found {
		if f.From < b && f.To > a {
			return true
		}
	}
	return false
}
