package marks

import (
	"math"

	"stillair/fusion"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// OfRollOn measures the pairs of speed that a run from a to b passes through.
func OfRollOn(track *fusion.Track, errs Errors, a, b float64, breaks []fusion.Span, pairs []SpeedPair) []Mark {
	r, errs := newTrace(track, a-1, b+1).refine(errs, breaks)
	return r.through(errs, pairs)
}

// through measures the time and the distance between the two speeds of each
// pair.
func (r trace) through(errs Errors, pairs []SpeedPair) []Mark {
	var marks []Mark
	for _, p := range pairs {
		if m, ok := r.between(errs, p.Name, p.From, p.To, 1); ok {
			marks = append(marks, m)
		}
	}
	return marks
}

// between measures from one speed to another, faster for dir +1, slower for
// dir −1.
func (r trace) between(errs Errors, name string, from, to, dir float64) (Mark, bool) {
	begin := r.whenSpeed(errs, from, r.t[0], dir)
	if math.IsNaN(begin.x) {
		return Mark{}, false
	}
	end := r.whenSpeed(errs, to, begin.x, dir)
	if math.IsNaN(end.x) {
		return Mark{}, false
	}
	return Mark{
		Name: name, Time: end.minus(begin).value(errs), Rollout: measure.Unknown(),
		Speed: measure.Unknown(), Distance: r.distanceAt(end).minus(r.distanceAt(begin)).value(errs),
	}, true
}

// stopSpeeds are the initial speeds for which a stop is measured.
func stopSpeeds() []SpeedPair {
	return []SpeedPair{
		{Name: "130-0 km/h", From: 130 * units.KMH},
		{Name: "100-0 km/h", From: 100 * units.KMH},
		{Name: "50-0 km/h", From: 50 * units.KMH},
		{Name: "60-0 mph", From: 60 * units.MPH},
		{Name: "30-0 mph", From: 30 * units.MPH},
	}
}

// OfStop measures the time and distance of braking to standstill from a to b.
func OfStop(track *fusion.Track, errs Errors, a, b float64, breaks []fusion.Span) []Mark {
	const halted = 0.3 // m/s, taken as standing: lower speeds are hidden by smoothing
	r, errs := newTrace(track, a-1, b+1).refine(errs, breaks)
	var marks []Mark
	for _, p := range stopSpeeds() {
		if m, ok := r.between(errs, p.Name, p.From, halted, -1); ok {
			marks = append(marks, m)
		}
	}
	return marks
}
