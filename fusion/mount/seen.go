package mount

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// seenShare is the fraction of a change of up that the gyroscope must confirm
// for a slip, with a margin for its drift and the uncertain time of the slip.
const seenShare = 0.5

// cuts divides the observations wherever the phone slipped. A change that the
// gyroscope does not confirm is not a slip: a bike that leans on its side
// stand, a long slope, and a forward axis with the wrong sign for lack of
// changes of speed, look the same to the accelerometer.
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

// seen reports whether the gyroscope shows that the phone turned between two
// stretches: faster than any bike turns, or about a level axis by as much as up
// did.
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

// tilts is the largest lasting rotation of up between two samples by the
// gyroscope, rad. A direction fixed in the world rotates the opposite way in
// the phone's axes.
func (g *gauge) tilts(up r3.Vec, lo, hi int) float64 {
	now := up
	for i := lo + 1; i <= hi; i++ {
		now = r3.Unit(r3.Add(now, r3.Scale(g.s.T[i]-g.s.T[i-1], r3.Cross(now, g.s.Turn(i)))))
	}
	return math.Abs(angle(up, now))
}
