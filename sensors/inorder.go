package sensors

import "math"

// InOrder is a Sink that passes on to another what a Source may deliver, and
// drops the rest: a sample that is not later than the one before it of its
// kind (phones repeat a fix, and now and then deliver two events swapped), one
// whose time, force or speed is no finite number, and a stretch of sound that is
// empty or has no rate. Live sources put it between the phone and the sink they
// are given. States pass as they are.
type InOrder struct {
	to                    Sink
	motion, fix, pressure float64
	sound                 Sound // the last that was passed on
	Late                  int   // dropped because not later than the one before
	Broken                int   // dropped because a needed number was missing or not finite
}

// NewInOrder returns an InOrder that passes on to sink.
func NewInOrder(sink Sink) *InOrder {
	before := math.Inf(-1)
	return &InOrder{to: sink, motion: before, fix: before, pressure: before}
}

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// pass reports whether a sample at t may follow one at *last, and notes it.
func (o *InOrder) pass(last *float64, t float64, whole bool) bool {
	switch {
	case !whole:
		o.Broken++
		return false
	case t <= *last:
		o.Late++
		return false
	}
	*last = t
	return true
}

func (o *InOrder) Motion(m Motion) {
	if o.pass(&o.motion, m.T, finite(m.T, m.Force.X, m.Force.Y, m.Force.Z)) {
		o.to.Motion(m)
	}
}

func (o *InOrder) Fix(f Fix) {
	if o.pass(&o.fix, f.T, finite(f.T, f.Speed)) {
		o.to.Fix(f)
	}
}

func (o *InOrder) Pressure(p Pressure) {
	if o.pass(&o.pressure, p.T, finite(p.T, p.Pa)) {
		o.to.Pressure(p)
	}
}

func (o *InOrder) Sound(s Sound) {
	switch {
	case !finite(s.T, s.Rate) || !(s.Rate > 0) || len(s.Level) == 0:
		o.Broken++
	case !s.Follows(o.sound):
		o.Late++
	default:
		o.sound = s
		o.to.Sound(s)
	}
}

func (o *InOrder) State(s State) { o.to.State(s) }
