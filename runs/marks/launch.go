package marks

import (
	"math"
	"slices"

	"stillair/fusion"
	"stillair/runs/measure"
	"stillair/sensors/units"
)

// Rollout is the one foot that the front wheel rolls before it clears the
// beam that starts the clock, m (common practice).
const Rollout = units.Foot

// lastStretch is the length over which the finish speed of 1/8 and 1/4 mile
// is the mean: 66 ft (drag-strip rules, widely published).
const lastStretch = 66 * units.Foot

// clutch is the time at a start in which no smoothness is assumed, s.
const clutch = 1.6

// overrun is the time after the throttle closed in which a mark still counts,
// s: closing it at the line is legitimate.
const overrun = 1.0

// goal is one mark of a launch: a speed or a distance to reach.
type goal struct {
	name     string
	speed    float64 // m/s; 0: a distance
	distance float64 // m
	finish   bool    // its speed is the mean over the last stretch
}

// launchGoals are the marks of a launch. 1/4 mile is 1320 ft, 402.336 m.
func launchGoals() []goal {
	return []goal{
		{name: "0-60 km/h", speed: 60 * units.KMH},
		{name: "0-100 km/h", speed: 100 * units.KMH},
		{name: "0-60 mph", speed: 60 * units.MPH},
		{name: "0-100 mph", speed: 100 * units.MPH},
		{name: "60 ft", distance: 60 * units.Foot},
		{name: "330 ft", distance: 330 * units.Foot},
		{name: "1/8 mile", distance: 660 * units.Foot, finish: true},
		{name: "1000 ft", distance: 1000 * units.Foot},
		{name: "1/4 mile", distance: 1320 * units.Foot, finish: true},
		{name: "1 km", distance: 1000},
	}
}

// OfLaunches are the names of the marks of a launch.
func OfLaunches() []string {
	var names []string
	for _, g := range launchGoals() {
		names = append(names, g.name)
	}
	return names
}

// GoalOf returns the speed in m/s or the distance in m that ends a mark of a
// launch; the other one is 0. It returns false if there is no mark of that
// name.
func GoalOf(mark string) (speed, distance float64, ok bool) {
	for _, g := range launchGoals() {
		if g.name == mark {
			return g.speed, g.distance, true
		}
	}
	return 0, 0, false
}

// OfLaunch measures a launch that begins at standstill before time a and ends
// at b, and the speed pairs within it. First movement is searched for around a.
// breaks are the interruptions by gear changes.
func OfLaunch(track *fusion.Track, errs Errors, a, b float64, breaks []fusion.Span, pairs []SpeedPair) ([]Mark, Start) {
	breaks = append(slices.Clip(breaks), fusion.Span{From: a - standing, To: a + clutch})
	plain := recorded{newTrace(track, a-standing, b+overrun), errs}
	r, errs := plain.refine(errs, breaks)
	pairsIn := r.through(errs, pairs)
	r.recorded = &plain
	first, modelled := r.firstMovement(errs, a)
	rolled := r.whenDistance(Rollout, r.setOff(first)).blend(modelled, errs)
	creep, since := creeping(track, first.x)
	if creep > 0 {
		first, rolled = first.wider(since), rolled.wider(math.Min(rolled.x, rolledBefore(Rollout, creep, since, first.x-creepBefore)))
	}
	var marks []Mark
	for _, g := range launchGoals() {
		if m, ok := r.reach(g, errs, first, rolled); ok {
			marks = append(marks, m)
		}
	}
	return append(marks, pairsIn...), Start{First: first.value(errs), Creep: creep}
}

// Start is how a launch began.
type Start struct {
	First measure.Value // first movement, s on the log's clock
	Creep float64       // speed of the bike when the push began, m/s; 0: it stood
}

// setOff is the time from which distances count: first movement, since a rider
// may have crept up to the line before. Slightly too late does no harm, since
// the bike hardly moves yet.
func (r trace) setOff(first form) float64 {
	if math.IsNaN(first.x) {
		return r.t[0]
	}
	return math.Max(r.t[0], first.x)
}

// reach measures one mark.
func (r trace) reach(g goal, errs Errors, first, rolled form) (Mark, bool) {
	var when form
	if g.speed > 0 {
		when = r.whenSpeed(errs, g.speed, r.t[0], 1)
	} else {
		when = r.whenDistance(g.distance, r.setOff(first))
	}
	if math.IsNaN(when.x) {
		return Mark{}, false
	}
	m := Mark{Name: g.name, Time: when.minus(first).value(errs), Rollout: when.minus(rolled).value(errs),
		Speed: measure.Unknown(), Distance: measure.Unknown()}
	switch {
	case g.speed > 0:
		from := r.setOff(first)
		begin := form{x: r.distance(from), terms: []fusion.Term{{T: from, S: 1}}}
		m.Distance = r.distanceAt(when).minus(begin).value(errs)
	case g.finish:
		before := r.whenDistance(g.distance-lastStretch, r.setOff(first))
		took := when.minus(before)
		m.Speed = meanSpeed(lastStretch, took).value(errs)
	default:
		m.Speed = r.speedAt(when).value(errs)
	}
	return m, true
}

// meanSpeed is a distance divided by the time taken.
func meanSpeed(d float64, took form) form {
	v := took.times(-d / (took.x * took.x))
	v.x = d / took.x
	return v
}
