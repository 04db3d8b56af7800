package repair

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
)

// Yaw is the result from bends recorded by both the gyroscope and the satellites.
type Yaw struct {
	// Known is false if there is no result: no gyroscope, no course, too few
	// bends, or the two do not agree.
	Known bool
	// Down is true if the specific force of the file points down at rest.
	Down bool
	// Scale is what the turn rate of the file must be multiplied by to be in
	// rad/s: 1, π/180 if it is in deg/s, or 180/π if it was converted from deg/s
	// by mistake.
	Scale float64
}

// Sign compares the turn rate about the direction of the specific force with
// the turning of the course over ground.
//
// The accelerometer alone cannot distinguish up from down if the phone's
// attitude is arbitrary: forces with all signs reversed are those of a phone
// with mirrored axes, in which up and forward are found as well as in the true
// one. That does no harm either, since speed, slope and distance come out the
// same. The gyroscope breaks the tie: right-handed about the axis that points
// up, a left-hand bend is a positive turn rate, while the bearing, which counts
// clockwise, falls. So over all stretches between fixes
//
//	mean of ω·f/|f|  against  −Δbearing/Δt
//
// correlates with +1 where f points up and −1 where it points down. The ratio
// of their spreads gives the unit: 1 for rad/s, 57.3 for deg/s. A leaning bike
// shows its turn rate times the cosine of the lean, which is near enough.
//
// The times of fixes are tried with delays up to 1.5 s and the best agreement is
// taken. It counts as known from a correlation of 0.8 over at least twelve stretches
// and 2 rad (115°) of turning. On a straight road there is no result, and degrees
// mistaken for radians go unnoticed unless they are too large, see MostTurn.
func Sign(log *sensors.Log) Yaw {
	bs := blocks(log.Motion)
	course := courses(log.Fixes)
	best := agreement{}
	for lag := 0.0; lag <= 1.5; lag += blockLength {
		if a := compare(bs, course, lag); math.Abs(a.r) > math.Abs(best.r) {
			best = a
		}
	}
	for _, scale := range []float64{1, math.Pi / 180, 180 / math.Pi} {
		if ratio := best.ratio * scale; ratio > 1/1.7 && ratio < 1.7 {
			enough := math.Abs(best.r) >= 0.8 && best.n >= 12 && best.turned >= 2
			return Yaw{Known: enough, Down: best.r < 0, Scale: scale}
		}
	}
	return Yaw{}
}

type agreement struct {
	r      float64 // correlation
	ratio  float64 // spread of the gyroscope's rates over that of the satellites'
	turned float64 // by the satellites, rad
	n      int
}

func compare(bs []block, course []heading, lag float64) agreement {
	var a agreement
	var sx, sy, sxx, syy, sxy float64
	for i := 1; i < len(course); i++ {
		from, to := course[i-1], course[i]
		dt := to.t - from.t
		if dt < 0.3 || dt > 5 {
			continue
		}
		force, turn, ok := mean(bs, from.t-lag, to.t-lag)
		x := r3.Dot(turn, force) / r3.Norm(force)
		if !ok || math.IsNaN(x) {
			continue
		}
		change := -math.Remainder(to.rad-from.rad, 2*math.Pi)
		y := change / dt
		a.n++
		a.turned += math.Abs(change)
		sx, sy, sxx, syy, sxy = sx+x, sy+y, sxx+x*x, syy+y*y, sxy+x*y
	}
	n := float64(a.n)
	vx, vy := sxx-sx*sx/n, syy-sy*sy/n
	if a.n < 3 || !(vx > 0 && vy > 0) {
		return agreement{}
	}
	a.r = (sxy - sx*sy/n) / math.Sqrt(vx*vy)
	a.ratio = math.Sqrt(vx / vy)
	return a
}

// MostTurn returns a large turn rate of the ride without its vibration: what
// its mean over a quarter of a second exceeds 3 % of the time, in the file's
// unit. In rad/s no ride comes to 6, which is a full circle in a second; in
// deg/s any bend does.
func MostTurn(motion []sensors.Motion) float64 {
	var sizes []float64
	for _, b := range blocks(motion) {
		sizes = append(sizes, r3.Norm(b.turn))
	}
	return quantile(sizes, 0.97)
}

// HasTurn reports whether any sample has a turn rate.
func HasTurn(motion []sensors.Motion) bool {
	return slices.ContainsFunc(motion, sensors.Motion.HasTurn)
}
