package recorder

import (
	"math"

	"stillair/export/session"
	"stillair/sensors"
)

// rideState is the recorder's state of the ride so far, updated sample by sample.
type rideState struct {
	filter Filter
	guard  guard
	senses senses
	pace   pace
	notes  noticer
	leg    leg
	first  float64 // time of the first sample
	now    float64 // time of the latest sample
	queued float64 // time of the latest sample on the queue
	live   Estimate
	holes  []sensors.Hole
}

func newRideState(f Filter) rideState {
	nan := math.NaN()
	return rideState{filter: f, guard: newGuard(), senses: newSenses(), pace: newPace(), first: nan, now: nan, queued: nan,
		live: Estimate{Speed: nan, Accel: nan}}
}

// at records a sample's time.
func (in *rideState) at(t float64) {
	if math.IsNaN(in.first) {
		in.first, in.now = t, t
	}
	in.now = max(in.now, t)
}

// mostHoles bounds how many holes are kept for the screen, which is one each ten
// seconds of a ride of an hour and a half; the file has them all.
const mostHoles = 500

// hole notes a hole that a state marks, once for all sensors.
func (in *rideState) hole(st sensors.State) {
	h, ok := st.Hole()
	if n := len(in.holes); !ok || n == mostHoles || n > 0 && h.From < in.holes[n-1].To {
		return
	}
	in.holes = append(in.holes, h)
}

// update follows the live filter after a sample.
func (in *rideState) update() {
	in.live = in.filter.Estimate()
	if !in.senses.fresh(sensors.SensorFix, in.now) {
		in.live.Speed = math.NaN() // without fixes the filter has no valid speed
	}
	in.pace.at(in.now, in.live.Speed)
	in.notes.at(in.now, in.live)
}

// sink is the recorder as its source sees it.
type sink struct{ r *Recording }

// take runs do under the lock and then puts what is to be kept on the queue.
func (s sink) take(do func(in *rideState) (float64, item)) {
	r := s.r
	r.mu.Lock()
	stepped, by := r.rideState.guard.stepped()
	t, it := do(&r.rideState)
	r.mu.Unlock()
	if stepped {
		s.tellStep(t, by)
	}
	r.queue.put(it)
	r.mu.Lock()
	r.rideState.queued = max(t, orLowest(r.rideState.queued))
	ending := r.rideState.pace.ending()
	r.mu.Unlock()
	if ending != Running {
		r.end(ending, nil)
	}
}

func orLowest(x float64) float64 {
	if math.IsNaN(x) {
		return math.Inf(-1)
	}
	return x
}

func (s sink) tellStep(t, by float64) {
	state := sensors.State{T: t, Sensor: sensors.SensorMotion, Condition: sensors.Working, Detail: clockStep(by)}
	s.r.queue.put(item{other: func(w *session.Writer) { w.State(state) }})
}

// Motion implements sensors.Sink. It repeats what take does, without a closure:
// this is the call that comes hundreds of times a second.
func (s sink) Motion(m sensors.Motion) {
	r := s.r
	r.mu.Lock()
	in := &r.rideState
	m.T = in.guard.time(m.T)
	in.at(m.T)
	in.senses.sample(sensors.SensorMotion, m.T)
	if m.HasTurn() {
		in.senses.sample(sensors.SensorTurn, m.T)
	}
	in.filter.Motion(m)
	in.leg.motion(m)
	in.update()
	stepped, by := in.guard.stepped()
	ending := in.pace.ending()
	r.startLeg()
	r.mu.Unlock()
	if stepped {
		s.tellStep(m.T, by)
	}
	r.queue.put(item{motion: m})
	r.mu.Lock()
	in.queued = m.T
	r.mu.Unlock()
	if ending != Running {
		r.end(ending, nil)
	}
}

// Fix implements sensors.Sink.
func (s sink) Fix(f sensors.Fix) {
	s.take(func(in *rideState) (float64, item) {
		f.T = in.guard.time(f.T)
		in.at(f.T)
		in.senses.fix(f)
		in.filter.Fix(f)
		in.leg.fix(f)
		in.update()
		return f.T, item{other: func(w *session.Writer) { w.Fix(f) }}
	})
}

// Pressure implements sensors.Sink.
func (s sink) Pressure(p sensors.Pressure) {
	s.take(func(in *rideState) (float64, item) {
		p.T = in.guard.time(p.T)
		in.at(p.T)
		in.senses.sample(sensors.SensorPressure, p.T)
		in.leg.pressure(p)
		return p.T, item{other: func(w *session.Writer) { w.Pressure(p) }}
	})
}

// Sound implements sensors.Sink.
func (s sink) Sound(x sensors.Sound) {
	s.take(func(in *rideState) (float64, item) {
		x.T = in.guard.time(x.T)
		in.at(x.T)
		in.senses.sound(x)
		return x.T, item{other: func(w *session.Writer) { w.Sound(x) }}
	})
}

// State implements sensors.Sink.
func (s sink) State(st sensors.State) {
	s.take(func(in *rideState) (float64, item) {
		st.T = in.guard.time(st.T)
		in.at(st.T)
		in.senses.state(st)
		in.hole(st)
		return st.T, item{other: func(w *session.Writer) { w.State(st) }}
	})
}
