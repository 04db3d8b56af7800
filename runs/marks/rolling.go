package marks

import (
	"math"

	"stillair/fusion"
	"stillair/runs/measure"
)

// OfRollOn measures the pairs of speed that a run from a to b passes through.
func OfRollOn(track *fusion.Track, joint Joint, a, b float64, pairs []SpeedPair) []Mark {
	return newTrace(track, a-1, b+1).through(joint, pairs)
}

// through measures the time and the way between the two speeds of each pair.
func (r trace) through(joint Joint, pairs []SpeedPair) []Mark {
	var marks []Mark
	for _, p := range pairs {
		if m, ok := r.between(joint, p.Name, p.From, p.To, 1); ok {
			marks = append(marks, m)
		}
	}
	return marks
}

// between measures from one speed to another, faster for dir +1, slower for
// dir −1.
func (r trace) between(joint Joint, name string, from, to, dir float64) (Mark, bool) {
	begin := r.whenSpeed(from, r.t[0], dir)
	if math.IsNaN(begin.x) {
		return Mark{}, false
	}
	end := r.whenSpeed(to, begin.x, dir)
	if math.IsNaN(end.x) {
		return Mark{}, false
	}
	return Mark{
		Name: name, Time: end.minus(begin).value(joint), Rollout: measure.Unknown(),
		Speed: measure.Unknown(), Distance: r.distanceAt(end).minus(r.distanceAt(begin)).value(joint),
	}, true
}

// stopSpeeds are the speeds from which a stop is measured where it began
// above them.
func stopSpeeds() []SpeedPair {
	return []SpeedPair{
		{Name: "130-0 km/h", From: 130 * KmPerHour},
		{Name: "100-0 km/h", From: 100 * KmPerHour},
		{Name: "50-0 km/h", From: 50 * KmPerHour},
		{Name: "60-0 mph", From: 60 * MilePerH},
		{Name: "30-0 mph", From: 30 * MilePerH},
	}
}

// OfStop measures time and way to standstill of braking from a to b.
func OfStop(track *fusion.Track, joint Joint, a, b float64) []Mark {
	const halted = 0.3 // m/s, taken as standing: smoothing hides what is below
	r := newTrace(track, a-1, b+1)
	var marks []Mark
	for _, p := range stopSpeeds() {
		if m, ok := r.between(joint, p.Name, p.From, halted, -1); ok {
			marks = append(marks, m)
		}
	}
	return marks
}
