package recorder

import (
	"context"

	"stillair/runs"
	"stillair/sensors"
)

// soFar holds the samples of the coast-downs of the ride, leg after leg, so that
// their joint result can be shown while the bike stands. It is bounded: of a
// longer test the older half is dropped.
type soFar struct{ log sensors.Log }

// Around the coast-downs of a leg so much is kept, s: the way up to speed, from
// which phone and receiver are known, and what shows how the roll ended.
const (
	beforeCoasts = 40.0
	afterCoasts  = 20.0
)

// maxSoFar bounds the motion samples: 40 minutes at 100 Hz, some 16 coast-downs.
const maxSoFar = 4 * maxLeg

// add keeps the coast-downs of a leg, and reports whether there was one.
func (s *soFar) add(leg *sensors.Log, result *runs.Result) bool {
	from, to, found := 0.0, 0.0, false
	for _, r := range result.Runs {
		if r.Kind != runs.CoastDown || !r.Accepted() {
			continue
		}
		if !found {
			from = r.Start - beforeCoasts
		}
		to, found = r.End+afterCoasts, true
	}
	if !found {
		return false
	}
	within := func(t float64) bool { return t >= from && t <= to }
	for _, m := range leg.Motion {
		if within(m.T) {
			s.log.Motion = bounded(s.log.Motion, m, maxSoFar)
		}
	}
	for _, f := range leg.Fixes {
		if within(f.T) {
			s.log.Fixes = bounded(s.log.Fixes, f, maxSoFar/10)
		}
	}
	for _, p := range leg.Pressure {
		if within(p.T) {
			s.log.Pressure = bounded(s.log.Pressure, p, maxSoFar/4)
		}
	}
	return true
}

// tellSoFar measures the coast-downs of the ride so far together, where the leg
// brought one and there is something to measure them with.
func (r *Recording) tellSoFar(leg *sensors.Log, found *runs.Result) {
	if r.cfg.Together == nil || !r.coasts.add(leg, found) {
		return
	}
	r.coasts.log.Ride = leg.Ride
	all := r.coasts.log
	result, err := r.cfg.Together(context.Background(), &all)
	if err != nil {
		return // a first coast-down without its way back, as a rule
	}
	slim := *result
	slim.Track, slim.Estimate = nil, nil
	r.mu.Lock()
	defer r.mu.Unlock()
	r.soFar = &slim
}
