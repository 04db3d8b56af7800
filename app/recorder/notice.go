package recorder

import (
	"math"

	"stillair/runs"
)

// Notice is something that looked like a run while riding. It is only what the
// rider is shown on the way: the results come from the analysis afterwards.
type Notice struct {
	Kind     runs.Kind
	T        float64 // when it ended, s on the log's clock
	Seconds  float64
	From, To float64 // speed, m/s
}

// maxNotices bounds how many are kept, the latest last.
const maxNotices = 8

// What makes a stretch, in m/s². Engine braking in a low gear and hard braking
// are beyond freest.
const (
	pushing  = 0.9
	braking  = -2.5
	freest   = -1.6
	rolling  = -0.06
	accelTau = 0.6 // s, smoothing of the acceleration
	patience = 0.8 // s that a different stretch must last to end this one
	minDrop  = 7.0 // m/s, about 25 km/h
	minLong  = 10  // s of a coast-down
	minFast  = 13.9
	justNow  = 2.5 // s: a push that begins so soon after standing is a launch, since the filter lags in its first second
)

type stretch int

const (
	steady stretch = iota
	push
	roll
	brake
)

// noticer cuts the ride into stretches of pushing, rolling and braking.
type noticer struct {
	list  []Notice
	last  float64 // time of the last sample
	accel float64 // smoothed

	now       stretch
	since     float64 // start of the stretch
	from      float64 // speed there
	other     float64 // since when samples belong to a different stretch; NaN: they do not
	otherFrom float64 // speed there
	stood     float64 // when the bike last stood
	started   bool
}

func (n *noticer) at(t float64, e Estimate) {
	if math.IsNaN(e.Speed) || math.IsNaN(e.Accel) {
		return
	}
	if !n.started {
		*n = noticer{list: n.list, last: t, accel: e.Accel, since: t, from: e.Speed, other: math.NaN(), stood: math.Inf(-1), started: true}
		return
	}
	if e.Speed < standingBelow {
		n.stood = t
	}
	dt := t - n.last
	if dt <= 0 {
		return
	}
	n.last = t
	n.accel += (1 - math.Exp(-dt/accelTau)) * (e.Accel - n.accel)
	kind := n.kind()
	if kind == n.now {
		n.other = math.NaN()
		return
	}
	if math.IsNaN(n.other) {
		n.other, n.otherFrom = t, e.Speed
		if kind == push && t-n.stood < justNow {
			n.otherFrom = 0
		}
	}
	if t-n.other >= patience {
		n.closeStretch()
		n.now, n.since, n.from, n.other = kind, n.other, n.otherFrom, math.NaN()
	}
}

func (n *noticer) kind() stretch {
	switch a := n.accel; {
	case a > pushing:
		return push
	case a < braking:
		return brake
	case a > freest && a < rolling:
		return roll
	}
	return steady
}

// closeStretch notes what the stretch that just ended looked like.
func (n *noticer) closeStretch() {
	s := Notice{T: n.other, Seconds: n.other - n.since, From: n.from, To: n.otherFrom}
	switch {
	case n.now == push && s.From < 2 && s.To > minFast:
		s.Kind = runs.Launch
	case n.now == push && s.From > 5 && s.To-s.From > minDrop:
		s.Kind = runs.RollOn
	case n.now == roll && s.From-s.To > minDrop && s.Seconds > minLong:
		s.Kind = runs.CoastDown
	case n.now == brake && s.From > minFast && s.To < 2:
		s.Kind = runs.Stop
	default:
		return
	}
	n.list = append(n.list, s)
	if len(n.list) > maxNotices {
		n.list = append(n.list[:0], n.list[1:]...)
	}
}
