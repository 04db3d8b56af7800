package sim

import (
	"math"
	"math/rand/v2"

	"stillair/sensors"
	"stillair/sensors/chunk"

	"gonum.org/v1/gonum/spatial/r3"
)

// slipTime is how long the phone takes to slip, s.
const slipTime = 0.2

// phone is the phone's motion sensors.
type phone struct {
	set       *Phone
	zero      float64 // the log's clock at the start
	gravity   float64
	rng, loss *rand.Rand
	period    float64
	n         int
	mount     r3.Mat // from bike axes to phone axes
	slip      int    // slips begun
	slipRate  r3.Vec // turn rate while slipping, bike axes
	slipFrom  r3.Mat
	slipEnd   float64
	bias      r3.Vec
	drift     [3]gaussMarkov
	scale     r3.Vec
	gyroBias  r3.Vec
	shake     *shaker
	gaps      *lapses
	log       chunk.Buffer[sensors.Motion]
}

func newPhone(sc *Scenario, seed uint64, tr *Truth) *phone {
	ph := &phone{
		set: &sc.Phone, zero: sc.ClockZero, gravity: sc.Road.Gravity, period: 1 / sc.Phone.Rate,
		rng: stream(seed, streamMotion), loss: stream(seed, streamLoss), slipEnd: math.Inf(-1),
	}
	draw := stream(seed, streamMount)
	ph.mount = *drawMount(sc.Phone.Mount, draw)
	ph.bias = gaussVec(draw, sc.Phone.Accel.BiasSD)
	ph.scale = gaussVec(draw, sc.Phone.Accel.ScaleSD)
	ph.gyroBias = gaussVec(draw, sc.Phone.Gyro.BiasSD)
	for i := range ph.drift {
		ph.drift[i] = newGaussMarkov(draw, sc.Phone.Accel.DriftSD, sc.Phone.Accel.DriftTau, ph.period)
	}
	ph.shake = newShaker(sc.Phone, seed)
	ph.gaps = newLapses(ph.loss, sc.Phone.Stamp.GapsPerHour, sc.Phone.Stamp.GapMean)
	tr.AccelBias, tr.Scale, tr.GyroBias = r3.Add(ph.bias, r3.Vec{X: ph.drift[0].x, Y: ph.drift[1].x, Z: ph.drift[2].x}), ph.scale, ph.gyroBias
	ph.noteMount(tr, 0)
	return ph
}

// drawMount returns the matrix of an attitude, at random if none is given
// (uniform over all rotations: Shoemake, Uniform random rotations, 1992).
func drawMount(given *r3.Rotation, rng *rand.Rand) *r3.Mat {
	if given != nil {
		return given.Mat()
	}
	q := [4]float64{}
	for i := range q {
		q[i] = rng.NormFloat64()
	}
	norm := math.Sqrt(q[0]*q[0] + q[1]*q[1] + q[2]*q[2] + q[3]*q[3])
	r := r3.Rotation{Real: q[0] / norm, Imag: q[1] / norm, Jmag: q[2] / norm, Kmag: q[3] / norm}
	return r.Mat()
}

func gaussVec(rng *rand.Rand, sd float64) r3.Vec {
	x, y, z := rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()
	return r3.Vec{X: sd * x, Y: sd * y, Z: sd * z}
}

func (ph *phone) noteMount(tr *Truth, t float64) {
	tr.Mounts = append(tr.Mounts, Mount{
		From:    t + ph.zero,
		Forward: ph.mount.MulVec(r3.Vec{X: 1}), Left: ph.mount.MulVec(r3.Vec{Y: 1}), Up: ph.mount.MulVec(r3.Vec{Z: 1}),
	})
}

// step takes the readings that fall into the step that began at t.
func (ph *phone) step(t float64, from, to *motion, p *player) {
	if ph.set.Rate == 0 {
		return
	}
	for at := float64(ph.n) * ph.period; at < t+dt; at = float64(ph.n) * ph.period {
		ph.turn(at, p.truth)
		m := ph.read(at, (at-t)/dt, from, to, p)
		ph.n++
		ph.keep(m)
	}
}

// turn lets the phone slip when it is time.
func (ph *phone) turn(at float64, tr *Truth) {
	if ph.slip < len(ph.set.Slips) && at >= ph.set.Slips[ph.slip].At {
		s := ph.set.Slips[ph.slip]
		ph.slip++
		ph.slipFrom.CloneFrom(&ph.mount)
		ph.slipEnd = at + slipTime
		ph.slipRate = r3.Scale(s.Angle/slipTime, r3.Unit(s.Axis))
	}
	if ph.slipRate == (r3.Vec{}) {
		return
	}
	left := max(ph.slipEnd-at, 0)
	angle := r3.Norm(ph.slipRate) * (slipTime - left)
	back := r3.NewRotation(-angle, ph.slipRate) // seen from the phone, the bike turns the other way
	ph.mount.Mul(&ph.slipFrom, back.Mat())
	if left == 0 {
		ph.slipRate = r3.Vec{}
		ph.noteMount(tr, ph.slipEnd)
	}
}

// read returns the reading at an instant, a fraction of the step after from.
func (ph *phone) read(at, u float64, from, to *motion, p *player) sensors.Motion {
	force, turn := chassis(u, from, to, ph.gravity, p.jolt, at, ph.shake)
	force, turn = ph.mount.MulVec(force), ph.mount.MulVec(r3.Add(turn, ph.slipRate))

	shake, noise := ph.shake.feel(u, from, to, p)
	force = r3.Add(force, shake)
	a := &ph.set.Accel
	e := gaussVec(ph.rng, a.NoiseSD)
	force.X += force.X*ph.scale.X + ph.bias.X + ph.drift[0].advance(ph.rng) + e.X
	force.Y += force.Y*ph.scale.Y + ph.bias.Y + ph.drift[1].advance(ph.rng) + e.Y
	force.Z += force.Z*ph.scale.Z + ph.bias.Z + ph.drift[2].advance(ph.rng) + e.Z
	if a.Range > 0 {
		force = r3.Vec{X: cut(force.X, a.Range), Y: cut(force.Y, a.Range), Z: cut(force.Z, a.Range)}
	}
	m := sensors.Motion{T: at + ph.zero, Force: force}
	if ph.set.Gyro.Absent {
		m.Turn = r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
		return m
	}
	sd := math.Hypot(ph.set.Gyro.NoiseSD, noise*ph.set.Shake.TurnPerAcc)
	m.Turn = r3.Add(r3.Add(turn, ph.gyroBias), gaussVec(ph.rng, sd))
	return m
}

func cut(x, limit float64) float64 { return max(min(x, limit), -limit) }

// keep stamps a reading and logs it, unless it is lost. Readings whose stamps
// do not increase are lost too, since no log has two readings at one time.
func (ph *phone) keep(m sensors.Motion) {
	s := &ph.set.Stamp
	at := m.T - ph.zero
	lost := ph.loss.Float64() < s.MissingProb
	m.T += s.JitterSD * ph.loss.NormFloat64()
	if s.Quantum > 0 {
		m.T = math.Round(m.T/s.Quantum) * s.Quantum
	}
	if lost || ph.gaps.in(at) {
		return
	}
	if last := ph.log.Last(); last != nil && m.T <= last.T {
		return
	}
	ph.log.Add(m)
}
