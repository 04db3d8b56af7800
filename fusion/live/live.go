// Package live estimates speed, acceleration, slope and distance while riding.
//
// It is a complementary filter: the accelerometer, integrated, gives the fast
// part of the speed, the satellite receiver the slow part (Higgins, "A
// comparison of complementary and Kalman filtering", IEEE Trans. Aerospace and
// Electronic Systems 11 (1975) 321). Its two gains, on the speed and on the
// accelerometer's offset, are those of a critically damped second-order loop. A
// fix is compared with the estimate for the time that the fix describes, not
// with the present one, so that the receiver's lag causes neither delay nor
// overshoot; the lag is estimated while riding.
//
// The filter starts without knowing how the phone is mounted. Until a few
// changes of speed have shown which way is forward, it follows the receiver
// alone and reports it (State.Aligned). It allocates nothing after New and
// costs the same for every sample. Its figures are for the screen; measured
// results come from the smoother of package fusion, which also uses later
// samples.
package live

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/sensors"
	"stillair/sensors/units"
)

// State is the filter's current estimate.
type State struct {
	T        float64 // s on the log's clock, the latest sample
	Speed    float64 // m/s
	Accel    float64 // forward acceleration, m/s²
	Slope    float64 // sine of the road's slope, uphill positive; NaN until Aligned
	Distance float64 // since the start, m
	Lag      float64 // assumed lag of the receiver's fixes, s
	Aligned  bool    // the direction of travel is known
	Standing bool    // the bike is at rest
}

const (
	gravity = units.StandardGravity // m/s²
	loop    = 0.5                   // natural frequency of the speed loop, rad/s
	quick   = 0.08                  // time constant of the shown acceleration, s
	calm    = 0.5                   // time constant over which rest is judged, s
	pitchS  = 30.0                  // how long a pitch from the gyroscope is used, s
	bending = 0.08                  // rad/s of turning from which the pitch is not updated
	silence = 0.25                  // s between samples from which motion counts as interrupted
	restV   = 0.3                   // m/s of satellite speed under which the bike may stand
	restF   = 0.35                  // m/s² by which the averaged force may vary at rest
	freshS  = 2.5                   // s for which a fix counts for detecting rest
)

// Filter is the live filter. It is not safe for use by several goroutines at
// once.
type Filter struct {
	state State
	axes  axes
	past  history

	begun   bool
	offset  float64 // reading of the forward axis at constant speed, m/s²
	pitch   float64 // nose-up angle from the gyroscope since its reset, rad
	yaw     float64 // turn rate about up over the last half second, rad/s
	drift   r3.Vec  // reading of the gyroscope at rest, rad/s
	calmF   r3.Vec  // force over the last half second, m/s²
	restRef r3.Vec  // calmF when the bike came to rest
	slowF   r3.Vec  // force over the last few seconds, without the acceleration
	sum     r3.Vec  // integral of the force since the start, m/s
	fixed   bool    // a fix has come
	last    sensors.Fix
	lastT   float64 // of the last accepted fix, s
	fixA    float64 // acceleration from the fixes alone, m/s²
}

// New returns a filter without any samples.
func New() *Filter {
	f := &Filter{}
	f.axes.lag = firstLag
	f.state.Lag = firstLag
	f.state.Slope = math.NaN()
	return f
}

// State returns the estimate after the latest sample.
func (f *Filter) State() State { return f.state }

// Motion takes in a reading of accelerometer and gyroscope. Readings that are
// not finite or not later than the one before are skipped.
func (f *Filter) Motion(m sensors.Motion) {
	if !motion.Finite(m.Force) || math.IsNaN(m.T) || math.IsInf(m.T, 0) || (f.begun && m.T <= f.state.T) {
		return
	}
	if !f.begun {
		f.begun = true
		f.state.T = m.T
		f.calmF, f.slowF = m.Force, m.Force
		f.past.reset(m.T)
		return
	}
	h := m.T - f.state.T
	f.state.T = m.T
	if h > silence {
		f.interrupted(h)
		f.past.add(m.T, f.state.Speed, f.sum)
		return
	}
	f.sum = r3.Add(f.sum, r3.Scale(h, m.Force))
	f.calmF = blend(f.calmF, m.Force, h/calm)
	f.lean(m, h)
	f.advance(m.Force, h)
	f.past.add(m.T, f.state.Speed, f.sum)
}

// interrupted bridges missing motion samples: the speed is held. The force is
// assumed to have kept its recent value, and the regression skips that time.
func (f *Filter) interrupted(h float64) {
	f.state.Distance += f.state.Speed * h
	f.sum = r3.Add(f.sum, r3.Scale(h, f.calmF))
	f.past.broken = f.state.T
}

// lean integrates the gyroscope's pitch rate, except in turns, where part of
// the turn appears as pitch in the axes of a leaning bike.
func (f *Filter) lean(m sensors.Motion, h float64) {
	if !m.HasTurn() || !f.axes.known {
		return
	}
	w := r3.Sub(m.Turn, f.drift)
	if f.state.Standing {
		f.drift = blend(f.drift, m.Turn, h/10)
	}
	wu, wl := r3.Dot(w, f.axes.up), r3.Dot(w, f.axes.left)
	f.yaw += (wu - f.yaw) * math.Min(h/calm, 1)
	if math.Abs(f.yaw) > bending {
		wl = 0
	}
	f.pitch -= h * (wl + f.pitch/pitchS)
	f.axes.turning += (math.Abs(wu*f.state.Speed) - f.axes.turning) * math.Min(h/calm, 1)
}

// advance integrates speed and distance over one sample.
func (f *Filter) advance(force r3.Vec, h float64) {
	s := &f.state
	if s.Standing && r3.Norm(r3.Sub(f.calmF, f.restRef)) > restF {
		s.Standing = false
	}
	a := f.fixA
	if f.axes.known {
		forward := r3.Dot(force, f.axes.forward) - gravity*f.pitch
		if s.Standing {
			f.offset += (forward - f.offset) * math.Min(h/1.0, 1)
		}
		a = forward - f.offset
	}
	if s.Standing {
		s.Speed, s.Accel = 0, s.Accel*(1-math.Min(h/quick, 1))
		return
	}
	v := math.Max(s.Speed+a*h, 0)
	s.Distance += h * (s.Speed + v) / 2
	s.Speed = v
	s.Accel += (a - s.Accel) * math.Min(h/quick, 1)
}

// Fix takes in a report of the receiver. One that is not finite, not later
// than the one before or not a speed is skipped.
func (f *Filter) Fix(x sensors.Fix) {
	if !(x.Speed >= 0 && x.Speed < 150) || math.IsNaN(x.T) || math.IsInf(x.T, 0) || (f.fixed && x.T <= f.last.T) {
		return
	}
	s := &f.state
	if !f.fixed || x.T-f.lastT > 10 {
		f.fixed = true
		f.last, f.lastT = x, x.T
		f.axes.restart()
		s.Speed = x.Speed
		f.past.shift(x.Speed-f.past.at(x.T-s.Lag).speed, x.T-s.Lag)
		return
	}
	dt := x.T - f.last.T
	f.learn(x)
	f.correct(x, dt)
	f.rest(x)
	f.last, f.lastT = x, x.T
}

// learn updates the axes with the fix and keeps the displayed acceleration
// continuous when they change.
func (f *Filter) learn(x sensors.Fix) {
	before, known := f.axes.forward, f.axes.known
	f.axes.learn(x, &f.past)
	f.state.Lag = f.axes.lag
	f.state.Aligned = f.axes.known
	if !f.axes.known || f.axes.forward == before {
		return
	}
	if !known {
		f.offset, f.pitch = 0, 0
		return
	}
	f.offset += r3.Dot(r3.Sub(f.axes.forward, before), f.calmF)
}

// correct pulls speed and offset towards the fix: K₁ = 1 - e^(-2ωΔ) on the
// speed and ω²Δ on the offset, the sampled form of a critically damped loop.
func (f *Filter) correct(x sensors.Fix, dt float64) {
	s := &f.state
	then := f.past.at(x.T - s.Lag)
	e := x.Speed - then.speed
	if !f.axes.known {
		gain := 1 - math.Exp(-dt/0.5)
		f.fixA += (math.Max(-15, math.Min(15, (x.Speed-f.last.Speed)/dt)) - f.fixA) * (1 - math.Exp(-dt/0.7))
		s.Speed = math.Max(s.Speed+gain*e, 0)
		f.past.shift(gain*e, math.Inf(-1))
		return
	}
	f.fixA = 0
	gain := 1 - math.Exp(-2*loop*dt)
	if math.Abs(e) > 3 { // an outlier, or the filter has diverged: correct it gently
		gain *= 3 / math.Abs(e)
		if f.axes.lost(e) {
			gain = 1
		}
	} else {
		f.axes.found()
	}
	s.Speed = math.Max(s.Speed+gain*e, 0)
	f.past.shift(gain*e, math.Inf(-1))
	f.offset -= math.Max(-1, math.Min(1, loop*loop*math.Min(dt, 2)*e/(1+loop*math.Min(dt, 2))))
	s.Slope = math.Max(-0.4, math.Min(0.4, (f.offset+gravity*f.pitch)/gravity))
}

// rest detects standstills: two fixes without speed and a constant force.
func (f *Filter) rest(x sensors.Fix) {
	s := &f.state
	slow := x.Speed < restV && f.last.Speed < restV && x.T-f.last.T < freshS
	switch {
	case x.Speed > 2*restV:
		s.Standing = false
	case slow && !s.Standing && r3.Norm(r3.Sub(f.calmF, f.past.calm(x.T, f.sum))) < restF:
		s.Standing = true
		f.restRef = f.calmF
		s.Speed = 0
	case s.Standing:
		f.restRef = blend(f.restRef, f.calmF, 0.2)
	}
}

func blend(a, b r3.Vec, share float64) r3.Vec {
	share = math.Min(share, 1)
	return r3.Add(a, r3.Scale(share, r3.Sub(b, a)))
}
