package mount

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// seenShare is the part of a change of up that the gyroscope must have seen to
// call it a slip: its drift and the moment of the slip leave room.
const seenShare = 0.5

// cuts divides the observations wherever the phone slipped. A change that the
// gyroscope did not see is none: a bike that leans on its side stand, a long
// slope, and a direction of travel that too little change of speed tells the
// wrong way round, look the same to the accelerometer.
func (g *gauge) cuts(obs []observation) []cut {
	all := split(obs, 0, len(obs))
	if !g.s.HasTurn {
		return all
	}
	out := all[:0:0]
	for _, c := range all {
		n := len(out)
		if n == 0 || g.seen(obs, out[n-1], c) {
			out = append(out, c)
			continue
		}
		out[n-1].to, out[n-1].end = c.to, c.end
	}
	return out
}

// seen reports whether the gyroscope saw the phone turn between two stretches:
// by a jerk that no bike makes, or by as much about a level axis as up turned.
func (g *gauge) seen(obs []observation, before, after cut) bool {
	lo, hi := g.s.Index(before.end-slipReach), g.s.Index(after.start+slipReach)
	for i := lo; i <= hi; i++ {
		if g.s.Missing[i] {
			return true // not known
		}
	}
	if _, jerk := jerkTime(g.s, lo, hi); jerk {
		return true
	}
	a, b := robustFit(obs[before.from:before.to]).up(), robustFit(obs[after.from:after.to]).up()
	tilt := angle(a, b)
	return tilt > turned && g.tilts(a, lo, hi) > seenShare*tilt
}

// tilts is the largest angle by which the gyroscope sees up turn between two
// samples and then stay, rad: a direction fixed in the world turns the other way
// round in the phone's axes.
func (g *gauge) tilts(up r3.Vec, lo, hi int) float64 {
	now := up
	for i := lo + 1; i <= hi; i++ {
		now = r3.Unit(r3.Add(now, r3.Scale(g.s.T[i]-g.s.T[i-1], r3.Cross(now, g.s.Turn(i)))))
	}
	return math.Abs(angle(up, now))
}
