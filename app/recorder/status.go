package recorder

import (
	"errors"
	"math"

	"stillair/app/platform"
	"stillair/export/session"
	"stillair/runs"
	"stillair/sensors"
)

// Status is the state of a recording. It shares no memory with the recording.
type Status struct {
	Phase    Phase
	Seconds  float64 // recorded so far
	Speed    float64 // m/s; NaN while unknown
	Distance float64 // m
	Setup    string  // current setup
	Mass     float64 // as ridden with it, kg; NaN: not known
	Senses   []Sense
	Noticed  []Notice       // the latest last
	Holes    []sensors.Hole // in which the device stopped the sensors, the latest last
	Leg      *runs.Result
	SoFar    *runs.Result // of all coast-downs together; nil if there is no pair yet
	Kept     Kept
	Unsaved  float64 // s of the ride that are not yet saved
	Why      Ending  // Running while it continues
	Err      error   // of the source
}

// Status is the current state of the recording.
func (r *Recording) Status() Status {
	r.mu.Lock()
	defer r.mu.Unlock()
	in := &r.rideState
	s := Status{Phase: in.pace.phase, Speed: in.live.Speed, Distance: in.live.Distance, Mass: r.ride.Mass,
		Noticed: append([]Notice(nil), in.notes.list...), Leg: r.leg, SoFar: r.soFar, Kept: r.kept, Why: r.why, Err: r.err}
	if !math.IsNaN(in.first) {
		s.Seconds = in.now - in.first
		s.Unsaved = in.now - max(in.first, r.kept.Until)
		setup := r.ride.SetupAt(in.now)
		if s.Setup = setup.Name; !math.IsNaN(setup.Mass) {
			s.Mass = setup.Mass
		}
	}
	s.Senses = append(s.Senses, in.senses.of[:]...)
	s.Holes = append(s.Holes, in.holes...)
	return s
}

// Trouble says what is wrong with the storage: platform.ErrFull soon or
// already, session.ErrBacklog where something was lost, anything else as the
// storage said it, nil if all is well.
func (k Kept) Trouble() error {
	switch {
	case k.Err != nil:
		return k.Err
	case k.Free >= 0 && k.Free < LowRoom:
		return platform.ErrFull
	}
	return nil
}

// Lost reports whether the storage failed for so long that some of the ride
// had to be given up.
func (k Kept) Lost() bool { return errors.Is(k.Err, session.ErrBacklog) }

// watchSilence notes sensors that stopped delivering. It goes by the log's
// clock, which the other sensors drive; where all are silent, by the
// recorder's own.
func (r *Recording) watchSilence() {
	r.mu.Lock()
	in := &r.rideState
	states := in.senses.silence(in.senses.later(in.now, r.cfg.Clock.Elapsed().Seconds()))
	if len(states) > 0 {
		in.update()
	}
	r.mu.Unlock()
	for _, st := range states {
		r.queue.put(item{other: func(w *session.Writer) { w.State(st) }})
	}
}

var _ sensors.Sink = sink{}
