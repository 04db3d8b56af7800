package sensors

import (
	"math"

	"stillair/sensors/finding"
)

// Limits for time stamps, s.
const (
	farAhead   = 120.0 // longer than any working receiver or browser is silent, and shorter than the usual error of a wrong clock (common practice)
	interleave = 2.5   // how far behind another kind a sample may be without a step of the clock; see Source
	leastAhead = 0.5   // minimum length of a pause that another stamp has to confirm
	future     = 2.0   // by which a stamp may be later than the present: clocks of sensors agree with it within tenths
)

// usual is the minimum length of a pause in usual intervals.
const usual = 8.0

// gate passes samples of one kind on in order of time.
type gate[S any] struct {
	o      *InOrder
	sensor Sensor
	enough int // consecutive samples that show that the clock was set
	sink   func(S)
	time   func(*S) *float64
	lead   float64 // added to every stamp
	last   float64 // time of the last sample passed on
	every  float64 // usual interval, s; NaN: not known
	held   []S     // one or more that are far ahead, until the next shows whether they are correct
	behind []S     // a run of samples in order that are all before the last
}

func newGate[S any](o *InOrder, sensor Sensor, enough int, sink func(S), time func(*S) *float64) gate[S] {
	return gate[S]{o: o, sensor: sensor, enough: enough, sink: sink, time: time, last: math.Inf(-1), every: math.NaN()}
}

// pass sends a sample to the sink, after those waiting, or holds or drops it.
func (g *gate[S]) pass(sample S) {
	stamp := *g.time(&sample)
	t := stamp + g.lead
	if (t <= g.last || g.ahead(t)) && g.follow(stamp) {
		t = stamp + g.lead
	}
	switch {
	case t == g.last:
		g.o.Late++
		g.o.Doubled++
	case t < g.last:
		g.late(sample)
	case g.ahead(t):
		g.wait(sample)
	default:
		g.o.Wild += len(g.held)
		g.held = g.held[:0]
		g.on(sample)
	}
}

// on passes a sample on, on the clock without steps.
func (g *gate[S]) on(sample S) {
	at := g.time(&sample)
	*at += g.lead
	if dt := *at - g.last; math.IsNaN(g.every) && !math.IsInf(dt, 1) {
		g.every = dt
	} else if dt < usual*g.every {
		g.every += (dt - g.every) / 16
	}
	g.o.Late += len(g.behind)
	g.behind = g.behind[:0]
	g.last = *at
	g.sink(sample)
}

// ahead reports whether a time is further ahead than samples usually are.
func (g *gate[S]) ahead(t float64) bool {
	if math.IsInf(g.last, -1) {
		return g.future(t)
	}
	return t-g.last > g.pause() || g.future(t)
}

// pause is the longest normal time between samples.
func (g *gate[S]) pause() float64 {
	if math.IsNaN(g.every) {
		return farAhead
	}
	return min(farAhead, max(leastAhead, usual*g.every))
}

func (g *gate[S]) future(t float64) bool {
	return t > g.o.present+future
}

// wait holds a sample that is far ahead, and passes the held ones once another
// continues from them.
func (g *gate[S]) wait(sample S) {
	t := *g.time(&sample) + g.lead
	if !g.goesOn(g.held, t) {
		g.o.Wild += len(g.held)
		g.held = g.held[:0]
	}
	g.held = append(g.held, sample)
	switch {
	case g.future(t):
		if len(g.held) >= g.enough {
			g.step(g.held)
			g.held = g.held[:0]
		}
	case len(g.held) > 1:
		g.release(g.held)
		g.held = g.held[:0]
	}
}

// end drops the waiting samples.
func (g *gate[S]) end() {
	g.o.Wild += len(g.held)
	g.o.Late += len(g.behind)
	g.held, g.behind = nil, nil
}

// goesOn reports whether a sample at t continues a run that was held.
func (g *gate[S]) goesOn(run []S, t float64) bool {
	if len(run) == 0 {
		return true
	}
	before := *g.time(&run[len(run)-1]) + g.lead
	return t > before && t-before <= farAhead
}

// late drops a sample, unless enough in a row show that the clock was set back.
func (g *gate[S]) late(sample S) {
	t := *g.time(&sample) + g.lead
	if !g.goesOn(g.behind, t) {
		g.o.Late += len(g.behind)
		g.behind = g.behind[:0]
	}
	if t >= g.last-interleave {
		g.o.Late += 1 + len(g.behind)
		g.behind = g.behind[:0]
		return
	}
	if g.behind = append(g.behind, sample); len(g.behind) >= g.enough {
		run := g.behind
		g.behind = nil
		g.step(run)
	}
}

// follow applies a known step of the clock if a stamp continues from the last
// sample with it. For fixes, which pause under any bridge, a step ahead counts only
// if the motion made it.
func (g *gate[S]) follow(stamp float64) bool {
	if math.IsInf(g.last, -1) {
		return false
	}
	for i := len(g.o.leads) - 1; i >= 0; i-- {
		by := g.o.leads[i]
		t := stamp + by
		ours := g.sensor == SensorMotion || by > g.lead || by == g.o.motion.lead
		if by != g.lead && ours && t > g.last && t-g.last <= g.pause() && !g.future(t) {
			g.set(by)
			return true
		}
	}
	return false
}

// step bridges a step of the clock before a run of samples, by a known step or
// by counting.
func (g *gate[S]) step(run []S) {
	first := *g.time(&run[0])
	if !g.follow(first) {
		every := g.every
		if n := len(run) - 1; math.IsNaN(every) {
			every = (*g.time(&run[n]) - first) / float64(n)
		}
		if math.IsInf(g.last, -1) {
			g.set(g.o.present - *g.time(&run[len(run)-1]))
		} else {
			g.set(g.last + every - first)
		}
	}
	g.release(run)
}

func (g *gate[S]) set(lead float64) {
	g.lead = lead
	g.o.lead(g.sensor, g.last, lead)
}

func (g *gate[S]) release(run []S) {
	for _, s := range run {
		g.on(s)
	}
}

// ClockNotes lists the lost samples and clock steps of a log that was recorded
// behind InOrder, from its states.
func (l *Log) ClockNotes() (notes []Note) {
	lost := 0
	for _, s := range l.States {
		switch s.Detail.Code {
		case codeClockStep:
			notes = append(notes, Note{Count: 1, What: s.Detail.Within(s.T, s.T)})
		case codeLost:
			if n, ok := s.Detail.Arg("samples"); ok {
				lost += int(n.X)
			}
		}
	}
	if lost > 0 {
		notes = append(notes, Note{Count: 1, What: finding.New(codeLost, finding.Count("samples", lost))})
	}
	return notes
}
