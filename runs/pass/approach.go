package pass

import (
	"math"

	"stillair/runs/usual"
)

// Limits for the approach to a top speed; see the package's doc.
const (
	farFrom, farTo   = 0.75, 0.85 // of the fastest second
	nearFrom, nearTo = 0.92, 0.98

	openLonger  = 3.28 // ratio of the distances to reach them, if it could go no faster
	leastLonger = 2.0  // if it could have gone 4 % faster

	farFades, nearFades = 0.404, 1.326 // distance at full throttle, in fades
	leastFades          = 0.5          // minimum of it, allowing for a slope
)

// A pull that goes on to the end takes 1.4 times as far from 85 to 92 % as from 75 to
// 85 %, and at most a kilometre from 92 to 98 %, on a heavy bike with little drag. Three
// times and twice as much leave room for slopes and gear changes. If it took longer, the
// rider stayed below that speed for a while.
const (
	mostMiddle = 4.0
	mostNear   = 2000.0 // m
)

// Fade is the shortest distance in which the difference to the top speed may
// fall to 1/e, m, on a bike of known mass and drag area; an unknown drag area
// is taken as the largest of any motorcycle.
func Fade(mass, cda, density float64) float64 {
	if !(cda > 0) {
		cda = usual.MostCdA
	}
	return 2 * mass / (3 * density * cda)
}

// pull holds the distances of a leg, m: from 75 to 85 % of its speed, and from
// 92 to 98 %.
type pull struct{ far, near float64 }

// pullTo is the acceleration by which a leg reached its speed; false if it was
// not a single one within the ride.
func (l line) pullTo(s stretch) (pull, bool) {
	at := s.from
	for at < s.to && l.v[at] < nearTo*s.top {
		at++
	}
	var last [4]float64 // m: the last place with a speed below each
	for i, share := range []float64{nearTo, nearFrom, farTo, farFrom} {
		for !l.cut[at] && l.v[at] >= share*s.top { // the first place is cut
			at--
		}
		if l.cut[at] {
			return pull{}, false
		}
		last[i] = l.s[at]
	}
	p := pull{far: last[2] - last[3], near: last[0] - last[1]}
	return p, p.near <= mostNear && last[1]-last[2] <= mostMiddle*p.far
}

// approach classifies how a pass reached its speed.
type approach int

const (
	unseen approach = iota // not visible in the ride
	open                   // approaching a limit
	eased                  // still accelerating when the throttle was eased
	brief                  // accelerating far too fast to be limited by drag: usual riding, or a limiter
)

// approaches classifies legs over one road in both directions. A slope that
// lengthens one of them shortens another, so the ratio of distances is
// evaluated for all together; but a bike that reached the speed quickly even
// once was not at its limit.
func (l line) approaches(fade float64, legs ...stretch) approach {
	sum, seen := 0.0, 0
	for _, s := range legs {
		p, ok := l.pullTo(s)
		if ok && (p.near < leastFades*nearFades*fade || p.far < leastFades*farFades*fade) {
			return brief
		}
		if ok {
			sum, seen = sum+math.Log(math.Min(p.near/p.far, openLonger)), seen+1
		}
	}
	switch {
	case seen < min(2, len(legs)):
		return unseen
	case sum < float64(seen)*math.Log(leastLonger):
		return eased
	}
	return open
}
