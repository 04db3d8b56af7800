package sim

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// jolt is a Jolt in progress.
type jolt struct {
	Jolt
	start float64
}

// at returns the accelerations at t, m/s².
func (j *jolt) at(t float64) (up, along float64) {
	u := (t - j.start) / j.Seconds
	if !(u > 0 && u < 1) {
		return 0, 0
	}
	s := math.Sin(math.Pi * u)
	return j.Up * s, j.Along * s
}

// chassis returns the specific force and the turn rate in the bike's axes
// (forward, left, up, fixed to the leaning and pitching chassis) a fraction u of
// the step after from.
//
// In axes along the road the specific force is (dv/dt + g·sin θ, v·ψ', g·cos θ
// + v·θ'). Leaning by φ to the left turns these about the forward axis, pitching by p nose up
// then about the chassis' left axis.
func chassis(u float64, from, to *motion, g float64, j jolt, at float64, sh *shaker) (force, turn r3.Vec) {
	mix := func(a, b float64) float64 { return a + u*(b-a) }
	v, yaw := mix(from.v, to.v), mix(from.yaw, to.yaw)
	slope, slopeRate := mix(from.slope, to.slope), (to.slope-from.slope)/dt
	up, along := j.at(at)
	road := r3.Vec{
		X: to.a + g*slope + along,
		Y: v * yaw,
		Z: g*math.Sqrt(1-slope*slope) + v*slopeRate + up + sh.bounce(v),
	}
	sinL, cosL := math.Sincos(mix(from.lean, to.lean))
	sinP, cosP := math.Sincos(mix(from.pitch, to.pitch))
	leaned := r3.Vec{X: road.X, Y: cosL*road.Y - sinL*road.Z, Z: sinL*road.Y + cosL*road.Z}

	rise := mix(from.pitchRate, to.pitchRate)
	rate := r3.Vec{X: -to.leanRate, Y: -rise - (yaw*sinL + slopeRate*cosL), Z: yaw*cosL - slopeRate*sinL}
	return pitchUp(leaned, sinP, cosP), pitchUp(rate, sinP, cosP)
}

// pitchUp expresses a vector in axes that are turned nose up.
func pitchUp(v r3.Vec, sin, cos float64) r3.Vec {
	return r3.Vec{X: v.X*cos + v.Z*sin, Y: v.Y, Z: v.Z*cos - v.X*sin}
}
