package pass

import (
	"math"

	"stillair/fusion"
	"stillair/runs/measure"
	"stillair/runs/pairing"
	"stillair/sensors"
	"stillair/sensors/units"
)

// road is the common stretch of two legs: from low to high metres along the way
// of the first, which was at place x when it had come x + there along the
// track, and the second when it had come back − x.
type road struct{ low, high, there, back float64 }

// shared is the road that two legs rode in opposite directions; false if it is
// too short.
func (r Ride) shared(l line, a, b leg) (road, bool) {
	if len(a.where.Fixes) < leastFixes || len(b.where.Fixes) < leastFixes {
		return road{}, false
	}
	laid, ok := pairing.Lay(a.where, b.where)
	if !ok || !laid.Opposite {
		return road{}, false
	}
	var out road
	for i, f := range a.where.Fixes {
		out.there += (r.wayOf(f) - laid.A[i]) / float64(len(laid.A))
	}
	for i, f := range b.where.Fixes {
		out.back += (r.wayOf(f) + laid.B[i]) / float64(len(laid.B))
	}
	out.low = math.Max(l.s[a.from]-out.there, out.back-l.s[b.to])
	out.high = math.Min(l.s[a.to]-out.there, out.back-l.s[b.from])
	return out, out.high-out.low >= leastM
}

// wayOf is how far the bike had come where a fix describes it, m.
func (r Ride) wayOf(f sensors.Fix) float64 { return r.Track.At(f.T - r.Track.Lag.At(f.T)).S }

// distances are those that a pass is measured over, the longest first.
func distances() []Figure {
	return []Figure{{Name: "1 mile", Distance: units.Mile}, {Name: "1 km", Distance: 1000}, {Name: "500 m", Distance: 500},
		{Name: "1/4 mile", Distance: units.Mile / 4}, {Name: "200 m", Distance: 200}}
}

// step is the spacing of the trial positions of a distance, m.
const step = 5.0

// figures are the speeds over each distance that fits on the road. The longest
// is placed where the mean of both directions is highest, and the shorter ones
// in the middle of it, where bikes from either end are both near their top
// speed: choosing the fastest of many positions would select favourable errors.
func (r Ride) figures(l line, on road) []Figure {
	var out []Figure
	for _, f := range distances() {
		spare := on.high - on.low - f.Distance
		if spare < 0 {
			continue
		}
		if len(out) == 0 {
			on.low = l.fastest(on, f.Distance)
		} else {
			on.low += spare / 2
		}
		on.high = on.low + f.Distance
		f.Times = l.times(on)
		r.measure(&f)
		out = append(out, f)
	}
	return out
}

// fastest is where a distance begins whose mean of both directions is highest, m.
func (l line) fastest(on road, distance float64) float64 {
	best, at := math.Inf(-1), on.low
	for x := on.low; x+distance <= on.high; x += step {
		t := l.times(road{x, x + distance, on.there, on.back})
		if sum := 1/(t[0].To-t[0].From) + 1/(t[1].To-t[1].From); sum > best {
			best, at = sum, x
		}
	}
	return at
}

// times are when both directions were on a road.
func (l line) times(on road) [2]fusion.Span {
	return [2]fusion.Span{{From: l.timeAt(on.low + on.there), To: l.timeAt(on.high + on.there)},
		{From: l.timeAt(on.back - on.high), To: l.timeAt(on.back - on.low)}}
}

// measure fills in what follows from the times of a figure.
func (r Ride) measure(f *Figure) {
	terms := func(ways ...float64) []fusion.Term {
		var out []fusion.Term
		for i, share := range ways {
			span := f.Times[i]
			per := share / (span.To - span.From)
			out = append(out, fusion.Term{T: span.From, S: -per}, fusion.Term{T: span.To, S: per})
		}
		return out
	}
	value := func(there, back float64) measure.Value {
		x := there*f.Distance/(f.Times[0].To-f.Times[0].From) + back*f.Distance/(f.Times[1].To-f.Times[1].From)
		return measure.Value{X: x, SE: math.Hypot(r.Errors.SD(terms(there, back)), r.ScaleSE*x)}
	}
	f.There, f.Back, f.Mean, f.Half = value(1, 0), value(0, 1), value(0.5, 0.5), value(0.5, -0.5)
}
