package sensors

import (
	"math"

	"stillair/sensors/finding"
)

// InOrder is a Sink that passes samples on to another in the order that a
// Source guarantees, on a clock without steps. It drops a sample that is not
// later than the one before it of its kind (phones repeat a fix, and now and
// then deliver two events swapped), one whose time, force or speed is not a
// finite number, a single one with a wild time, and a stretch of sound that is
// empty or has no rate. Live sources put it between the phone and the sink they
// are given.
//
// A sample whose time is far ahead of the one before it waits for the next. If
// that continues from the earlier samples, the one that waited had a wild stamp;
// if it continues from the one that waited, there was a pause and both pass,
// unless the stamps are later than the present (see Present): then the sensor's
// clock was set. A run of samples in order that are all long before the last
// means that the clock was set back. Such a step is bridged by counting: the
// next sample comes one usual interval after the last, and the other sensors
// follow by the same step, since a phone has one clock.
type InOrder struct {
	to       Sink
	motion   gate[Motion]
	fix      gate[Fix]
	pressure gate[Pressure]
	sound    Sound     // the last that was passed on
	ahead    float64   // added to the stamps of sound
	present  float64   // on the clock without steps; NaN: not known
	forward  float64   // added to the present and to the times of states
	leads    []float64 // corrections of stamps so far, the latest last; the first is 0
	Late     int       // dropped because not later than the one before
	Doubled  int       // of these, repeated samples with the same time, which are no loss
	Broken   int       // dropped because a needed number was missing or not finite
	Wild     int       // dropped because its time was far ahead of those around it
	Steps    int       // of the clock, bridged
	noted    int       // number of lost samples already reported
}

// Codes of InOrder's findings about clocks and samples.
const (
	codeClockStep finding.Code = "sensor.clock_step"
	codeLost      finding.Code = "sensor.lost" // samples that were dropped ("samples")
)

// NewInOrder returns an InOrder that passes on to sink.
func NewInOrder(sink Sink) *InOrder {
	o := &InOrder{to: sink, present: math.NaN(), leads: []float64{0}}
	o.motion = newGate(o, SensorMotion, 8, sink.Motion, func(m *Motion) *float64 { return &m.T })
	o.fix = newGate(o, SensorFix, 3, sink.Fix, func(f *Fix) *float64 { return &f.T })
	o.pressure = newGate(o, SensorPressure, 4, sink.Pressure, func(p *Pressure) *float64 { return &p.T })
	return o
}

// Present sets the current time on the clock of the samples. A source that
// knows it calls this before it passes samples on: none can be later.
func (o *InOrder) Present(t float64) {
	if t += o.forward; t < o.present-interleave {
		o.forward += o.present - t
		t = o.present
	}
	o.present = t
}

// Lost is the number of samples that were dropped.
func (o *InOrder) Lost() int { return o.Broken + o.Wild + o.Late - o.Doubled }

// End drops the samples that still wait for confirmation of their time, and
// reports lost samples to the sink.
func (o *InOrder) End(t float64) {
	o.motion.end()
	o.fix.end()
	o.pressure.end()
	o.TellLost(t)
}

// TellLost reports newly lost samples to the sink, as a state.
func (o *InOrder) TellLost(t float64) {
	if n := o.Lost() - o.noted; n > 0 {
		o.noted += n
		o.State(State{T: t, Sensor: SensorMotion, Condition: Working, Detail: finding.New(codeLost, finding.Count("samples", n))})
	}
}

// lead sets the correction of a sensor's stamps from t on, and reports it if it
// is new.
func (o *InOrder) lead(s Sensor, t, by float64) {
	from := o.leads[len(o.leads)-1]
	for i, l := range o.leads {
		if math.Abs(l-by) < interleave {
			o.leads = append(append(o.leads[:i:i], o.leads[i+1:]...), l)
			return
		}
	}
	const most = 8
	o.leads = append(o.leads[max(0, len(o.leads)+1-most):], by)
	o.Steps++
	o.to.State(State{T: t, Sensor: s, Condition: Working, Detail: finding.New(codeClockStep, finding.Time("by", from-by))})
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

func (o *InOrder) Motion(m Motion) {
	if !finite(m.T, m.Force.X, m.Force.Y, m.Force.Z) {
		o.Broken++
		return
	}
	o.motion.pass(m)
}

func (o *InOrder) Fix(f Fix) {
	if !finite(f.T, f.Speed) {
		o.Broken++
		return
	}
	o.fix.pass(f)
}

func (o *InOrder) Pressure(p Pressure) {
	if !finite(p.T, p.Pa) {
		o.Broken++
		return
	}
	o.pressure.pass(p)
}

// Sound has no gate: if a stretch does not follow the one before, the latest step
// of the other sensors is applied.
func (o *InOrder) Sound(s Sound) {
	if !finite(s.T, s.Rate) || !(s.Rate > 0) || len(s.Level) == 0 {
		o.Broken++
		return
	}
	lead := o.leads[len(o.leads)-1]
	stepped := s
	stepped.T += lead
	if s.T += o.ahead; lead != o.ahead && stepped.Follows(o.sound) {
		s, o.ahead = stepped, lead
	}
	if !s.Follows(o.sound) {
		o.Late++
		return
	}
	o.sound = s
	o.to.Sound(s)
}

// State passes a state, on the clock of the samples.
func (o *InOrder) State(s State) {
	s.T = math.Max(s.T+o.forward, o.motion.last-interleave)
	o.to.State(s)
}
