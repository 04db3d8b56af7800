package recorder

import (
	"context"

	"stillair/sensors"
)

// A leg is the ride from one standstill to the next, kept in memory so that it
// can be measured while the bike stands. Its size is bounded: the beginning of
// a longer one is dropped.
type leg struct {
	log   sensors.Log
	moved bool
	ready bool // a leg has ended and was not measured yet
}

// maxLeg bounds the motion samples of a leg: ten minutes at 100 Hz.
const maxLeg = 60_000

func (l *leg) motion(m sensors.Motion) { l.log.Motion = bounded(l.log.Motion, m, maxLeg) }

func (l *leg) fix(f sensors.Fix) { l.log.Fixes = bounded(l.log.Fixes, f, maxLeg/10) }

func (l *leg) pressure(p sensors.Pressure) {
	l.log.Pressure = bounded(l.log.Pressure, p, maxLeg/4)
}

// bounded appends and, once the slice is full, drops the older half.
func bounded[T any](s []T, x T, limit int) []T {
	if len(s) >= limit {
		s = s[:copy(s, s[len(s)/2:])]
	}
	return append(s, x)
}

// follow notes the phase, and when a leg has ended.
func (l *leg) follow(p Phase) {
	switch {
	case p == Moving:
		l.moved, l.ready = true, false
	case p == Standing && l.moved:
		l.moved, l.ready = false, true
	}
}

// take gives a copy of the leg that ended, and begins the next with its last
// seconds of standing.
func (l *leg) take(ride sensors.Ride) *sensors.Log {
	l.ready = false
	out := &sensors.Log{Ride: ride, Motion: append([]sensors.Motion(nil), l.log.Motion...),
		Fixes:    append([]sensors.Fix(nil), l.log.Fixes...),
		Pressure: append([]sensors.Pressure(nil), l.log.Pressure...)}
	const keep = 10
	l.log.Motion = l.log.Motion[:copy(l.log.Motion, tail(l.log.Motion, keep*100))]
	l.log.Fixes = l.log.Fixes[:copy(l.log.Fixes, tail(l.log.Fixes, keep))]
	l.log.Pressure = l.log.Pressure[:0]
	return out
}

func tail[T any](s []T, n int) []T { return s[max(0, len(s)-n):] }

// startLeg measures a leg that has ended, aside. The lock is held.
func (r *Recording) startLeg() {
	in := &r.rideState
	in.leg.follow(in.pace.phase)
	if !in.leg.ready || r.busy || r.cfg.Analyse == nil {
		return
	}
	r.busy = true
	log := in.leg.take(r.ride)
	go func() {
		result, err := r.cfg.Analyse(context.Background(), log)
		if err == nil && len(result.Runs) > 0 {
			r.mu.Lock()
			r.leg = result
			r.mu.Unlock()
			r.tellSoFar(log, result)
		}
		r.mu.Lock()
		defer r.mu.Unlock()
		r.busy = false
	}()
}
