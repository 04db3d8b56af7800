package marks

import (
	"math"

	"stillair/fusion"
	"stillair/runs/measure"
)

// Rollout is the one foot that the front wheel rolls before it clears the
// beam that starts the clock, m (common practice).
const Rollout = Foot

// lastStretch is the length over which the finish speed of 1/8 and 1/4 mile
// is the mean: 66 ft (drag-strip rules, widely published).
const lastStretch = 66 * Foot

// goal is one mark of a launch: a speed or a distance to reach.
type goal struct {
	name     string
	speed    float64 // m/s; 0: a distance
	distance float64 // m
	finish   bool    // the speed there is the mean over the last stretch
}

// launchGoals are the marks of a launch. 1/4 mile is 1320 ft, 402.336 m.
func launchGoals() []goal {
	return []goal{
		{name: "0-60 km/h", speed: 60 * KmPerHour},
		{name: "0-100 km/h", speed: 100 * KmPerHour},
		{name: "0-60 mph", speed: 60 * MilePerH},
		{name: "0-100 mph", speed: 100 * MilePerH},
		{name: "60 ft", distance: 60 * Foot},
		{name: "330 ft", distance: 330 * Foot},
		{name: "1/8 mile", distance: 660 * Foot, finish: true},
		{name: "1000 ft", distance: 1000 * Foot},
		{name: "1/4 mile", distance: 1320 * Foot, finish: true},
		{name: "1 km", distance: 1000},
	}
}

// Start is when a launch began.
type Start struct {
	FirstMovement measure.Value // s on the log's clock
	Rollout       measure.Value // s on the log's clock
}

// OfLaunch measures a launch that begins at standstill before time a and ends
// at b, and the pairs of speed that it runs through. The first movement is
// looked for about a.
func OfLaunch(track *fusion.Track, joint Joint, a, b float64, pairs []SpeedPair) ([]Mark, Start) {
	r := newTrace(track, a-standing, b)
	first := r.firstMovement(joint, a)
	rolled := r.whenDistance(Rollout, r.t[0])
	start := Start{FirstMovement: first.value(joint), Rollout: rolled.value(joint)}
	var marks []Mark
	for _, g := range launchGoals() {
		if m, ok := r.reach(g, joint, first, rolled); ok {
			marks = append(marks, m)
		}
	}
	return append(marks, r.through(joint, pairs)...), start
}

// reach measures one mark.
func (r trace) reach(g goal, joint Joint, first, rolled form) (Mark, bool) {
	var when form
	if g.speed > 0 {
		when = r.whenSpeed(g.speed, r.t[0], 1)
	} else {
		when = r.whenDistance(g.distance, r.t[0])
	}
	if math.IsNaN(when.x) {
		return Mark{}, false
	}
	m := Mark{Name: g.name, Time: when.minus(first).value(joint), Rollout: when.minus(rolled).value(joint),
		Speed: measure.Unknown(), Distance: measure.Unknown()}
	switch {
	case g.speed > 0:
		begin := form{x: r.s[0], terms: []term{{t: r.t[0], s: 1}}}
		m.Distance = r.distanceAt(when).minus(begin).value(joint)
	case g.finish:
		before := r.whenDistance(g.distance-lastStretch, r.t[0])
		took := when.minus(before)
		m.Speed = meanSpeed(lastStretch, took).value(joint)
	default:
		m.Speed = r.speedAt(when).value(joint)
	}
	return m, true
}

// meanSpeed is a distance over the time that it took.
func meanSpeed(d float64, took form) form {
	v := took.times(-d / (took.x * took.x))
	v.x = d / took.x
	return v
}
