package detect

import (
	"math"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// heldBackChance is the probability from which on a run does not count: one that
// is shown is more than twice as likely to have rolled freely. Of 1,200 coast-downs
// of package foreign (seeds 6201 to 6225 and 6301 to 6360) that rolled freely, none
// had more than 0.05; a bike that is hard to roll, on a slope, has more than 0.1.
// The priors are from textbooks; only the variation of the wind from run to run
// (ownWindSD) and the smallest retarding force (held, heldSD) were set on rides:
// "coast-downs" and "a gear left in" of the study "riders" of export/accuracy,
// seeds 33, 39 and 101 to 112. It is validated on the other seeds from 1 to 60
// of all its cases, on those of package runs, and on machines of 9, 10, 35, 42
// and 145 kW that no limit here was set on.
const heldBackChance = 0.3

// decideClutch rejects the coast-downs that may well have been held back, from
// all decelerations of the ride together.
func decideClutch(s *series, b bounds, found []Found, fixes []sensors.Fix) {
	var all []slowed
	for _, f := range found {
		all = append(all, slowedIn(s, piece{s.index(f.From), s.index(f.To)}, bearingOf(fixes, (f.From+f.To)/2)))
	}
	for i, chance := range chances(b, all) {
		if chance > heldBackChance && len(found[i].Reasons) == 0 {
			found[i].Reasons = append(found[i].Reasons, finding.New(codeInGear, finding.Share("chance", chance)))
		}
	}
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
