package sensors

import "math"

// InOrder is a Sink that passes on to another what a Source may deliver, and
// drops the rest: a sample that is not later than the one before it of its
// kind (phones repeat a fix, and now and then deliver two events swapped), one
// whose time, force or speed is no finite number, and a stretch of sound that is
// empty or has no rate. Live sources put it between the phone and the sink they
// are given. States pass as they are.
//
// A sample whose time is minutes ahead of the one before it waits for the next:
// where that agrees, time did jump and both pass; where that goes on from
// before, the one that waited had a wild stamp and is dropped, since everything
// after it would count as late.
type InOrder struct {
	to       Sink
	motion   gate[Motion]
	fix      gate[Fix]
	pressure gate[Pressure]
	sound    Sound // the last that was passed on
	Late     int   // dropped because not later than the one before
	Broken   int   // dropped because a needed number was missing or not finite
	Wild     int   // dropped because its time was far ahead of those around it
}

// farAhead is longer than any receiver or browser is silent while it lives on,
// s, and shorter than what a wrong clock is usually wrong by (common practice).
const farAhead = 120.0

// gate lets samples of one kind pass in order of time.
type gate[S any] struct {
	last float64 // time of the sample that passed last
	held *S      // one that is far ahead, until the next tells whether it is right
	at   float64 // its time
}

// pass gives sample to sink, after one that waited for it, or keeps or drops it.
func (g *gate[S]) pass(o *InOrder, t float64, sample S, sink func(S)) {
	switch {
	case t <= g.last:
		o.Late++
		return
	case g.held != nil && t > g.at && t-g.at <= farAhead:
		sink(*g.held)
		g.held = nil
	case t-g.last > farAhead && !math.IsInf(g.last, -1):
		if g.held != nil {
			o.Wild++
		}
		g.held, g.at = &sample, t
		return
	case g.held != nil:
		o.Wild++
		g.held = nil
	}
	g.last = t
	sink(sample)
}

// NewInOrder returns an InOrder that passes on to sink.
func NewInOrder(sink Sink) *InOrder {
	o := &InOrder{to: sink}
	o.motion.last, o.fix.last, o.pressure.last = math.Inf(-1), math.Inf(-1), math.Inf(-1)
	return o
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
	o.motion.pass(o, m.T, m, o.to.Motion)
}

func (o *InOrder) Fix(f Fix) {
	if !finite(f.T, f.Speed) {
		o.Broken++
		return
	}
	o.fix.pass(o, f.T, f, o.to.Fix)
}

func (o *InOrder) Pressure(p Pressure) {
	if !finite(p.T, p.Pa) {
		o.Broken++
		return
	}
	o.pressure.pass(o, p.T, p, o.to.Pressure)
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
