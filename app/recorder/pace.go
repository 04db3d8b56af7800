package recorder

import "math"

// Phase says what the bike is doing.
type Phase string

// The phases of a ride.
const (
	Unknown  Phase = "unknown" // the speed is not known
	Moving   Phase = "moving"
	Standing Phase = "standing"
)

// Speeds between which the phase stays what it was, and how long the bike must
// be below the lower one to be standing.
const (
	movingAbove   = 1.5 // m/s
	standingBelow = 0.7 // m/s
	standingAfter = 2.0 // s
	unknownAfter  = 8.0 // s without a speed, so that the screen does not stay locked
)

// pace follows whether the bike moves, and when the recording should end.
type pace struct {
	phase Phase
	first float64 // time of the first sample
	last  float64 // latest time
	slow  float64 // since when the speed is low; NaN: it is not
	known float64 // when the speed was last known
	moved float64 // when the bike last moved; NaN: never
}

func newPace() pace {
	nan := math.NaN()
	return pace{phase: Unknown, first: nan, last: nan, slow: nan, known: nan, moved: nan}
}

func (p *pace) at(t, speed float64) {
	if math.IsNaN(p.first) {
		p.first, p.known = t, t
	}
	p.last = t
	if math.IsNaN(speed) {
		if t-p.known > unknownAfter {
			p.phase, p.slow = Unknown, math.NaN()
		}
		return
	}
	p.known = t
	switch {
	case speed > movingAbove:
		p.phase, p.moved, p.slow = Moving, t, math.NaN()
	case speed < standingBelow:
		if math.IsNaN(p.slow) {
			p.slow = t
		}
		if t-p.slow >= standingAfter || p.phase == Unknown {
			p.phase = Standing
		}
	default:
		p.slow = math.NaN()
	}
}

// ending reports whether the ride is over by itself.
func (p *pace) ending() Ending {
	switch {
	case p.phase == Moving:
		return Running
	case math.IsNaN(p.moved) && p.last-p.first > GiveUpAfter:
		return NeverMoved
	case !math.IsNaN(p.moved) && p.phase == Standing && p.last-p.moved > CloseAfter:
		return Stood
	case !math.IsNaN(p.moved) && p.last-p.moved > GiveUpAfter:
		return Stood
	}
	return Running
}
