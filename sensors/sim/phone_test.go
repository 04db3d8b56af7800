package sim

import (
	"math"
	"testing"

	"stillair/sensors"
	"stillair/sensors/units"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat"
)

// flawless is a phone without errors and vibration.
func flawless(rate float64) Phone {
	return Phone{Rate: rate, Shake: Vibration{RefRPM: 6000, RefSpeed: 20}}
}

// stiff removes the springs and the wobble, so that only the motion is measured.
func stiff(sc Scenario) Scenario {
	sc.Phone = flawless(100)
	sc.Bike.Pitch.PerAccel, sc.Rider.LeanWander = 0, 0
	return sc
}

// TestForceOfMotion checks that the reading along the bike's forward axis is
// dv/dt + g·sin θ and that the rest is gravity, for any mount.
func TestForceOfMotion(t *testing.T) {
	sc := stiff(withPlan(Naked(), Stand{Seconds: 3}, Launch{ToSpeed: 30}, CoastDown{From: 25, To: 15}, Brake{}))
	sc.Road.Grade, sc.Road.RoughSD = 0.01, 0.004
	for seed := range uint64(5) {
		r := mustRun(t, sc, seed)
		m, far, n := r.Truth.Mounts[0], 0, 0
		near(t, "handedness", r3.Dot(r3.Cross(m.Forward, m.Left), m.Up), 1, 1e-12)
		for _, x := range r.Log.Motion {
			now := r.Truth.Moments[r.Truth.at(x.T+0.001)]
			forward := now.A + sc.Road.Gravity*now.Slope
			n++
			if math.Abs(r3.Dot(x.Force, m.Forward)-forward) > 0.05 {
				far++ // within a step of the throttle or the clutch
			}
			near(t, "sideways", r3.Dot(x.Force, m.Left), 0, 1e-6)
			near(t, "upwards", r3.Dot(x.Force, m.Up), sc.Road.Gravity, 0.2) // crests and dips: v²·dθ/dx
		}
		if far > n/100 {
			t.Errorf("the forward reading is off in %d of %d readings", far, n)
		}
	}
}

// TestTurnRound checks that the gyroscope's turn about the vertical adds up to
// half a circle, that the bike leans by atan(v·ψ'/g), and that the rider feels
// no sideways force: a coordinated turn (Cossalter, Motorcycle Dynamics, chapter 4).
func TestTurnRound(t *testing.T) {
	sc := stiff(withPlan(Naked(), Reach{Speed: 8}, TurnRound{}, Hold{Speed: 5, Seconds: 1}))
	r := mustRun(t, sc, 1)
	m, d := r.Truth.Mounts[0], r.Truth.Of(KindTurn)[0]
	yaw, most := 0.0, 0.0
	for _, x := range r.Log.Motion {
		if x.T < d.Start || x.T > d.End {
			continue
		}
		now := r.Truth.Moments[r.Truth.at(x.T+0.001)]
		up := r3.Dot(x.Turn, m.Up)*math.Cos(now.Lean) - r3.Dot(x.Turn, m.Left)*math.Sin(now.Lean)
		yaw += up / sc.Phone.Rate
		most = max(most, now.Lean)
		near(t, "lean", now.Lean, math.Atan(now.V*now.Yaw/sc.Road.Gravity), 0.01)
		near(t, "sideways", r3.Dot(x.Force, m.Left), 0, 0.1)
	}
	near(t, "turned", yaw, math.Pi, 0.03)
	if most < 10*units.Degree || most > 30*units.Degree {
		t.Errorf("leans up to %.0f°", most/units.Degree)
	}
	last := r.Truth.Moments[len(r.Truth.Moments)-1]
	near(t, "heading", last.Heading, math.Pi, 1e-12)
}

// TestSquat checks that a steady acceleration lifts the nose by PerAccel and
// that a phone then feels g·sin of it.
func TestSquat(t *testing.T) {
	sc := vacuum(Push{Force: 4 * (290 + 11.6), ToSpeed: 40})
	sc.Phone, sc.Rider.LeanWander = flawless(100), 0
	r := mustRun(t, sc, 1)
	pitch, at := 4*sc.Bike.Pitch.PerAccel, r.Truth.Of(KindPush)[0].Start+8
	near(t, "pitch", r.Truth.Moments[r.Truth.at(at)].Pitch, pitch, 0.01*pitch)
	x := r.Log.Motion[int((at-sc.ClockZero)*100)]
	want := 4*math.Cos(pitch) + sc.Road.Gravity*math.Sin(pitch)
	near(t, "forward", r3.Dot(x.Force, r.Truth.Mounts[0].Forward), want, 0.01)
}

// TestErrorsAtRest compares the readings of a parked bike with the errors put in.
func TestErrorsAtRest(t *testing.T) {
	sc := withPlan(Naked(), Stand{Seconds: 120})
	sc.Phone.Accel = Accelerometer{NoiseSD: 0.05, BiasSD: 0.3, ScaleSD: 0.01}
	sc.Phone.Shake = flawless(100).Shake
	r := mustRun(t, sc, 7)
	var fx, gx []float64
	for _, m := range r.Log.Motion {
		fx, gx = append(fx, m.Force.X), append(gx, m.Turn.X)
	}
	up := r3.Scale(sc.Road.Gravity, r.Truth.Mounts[0].Up)
	near(t, "mean", stat.Mean(fx, nil), up.X*(1+r.Truth.Scale.X)+r.Truth.AccelBias.X, 4*0.05/math.Sqrt(12000))
	near(t, "noise", stat.StdDev(fx, nil), 0.05, 0.0015)
	near(t, "gyroscope's bias", stat.Mean(gx, nil), r.Truth.GyroBias.X, 1e-4)
	near(t, "gyroscope's noise", stat.StdDev(gx, nil), 0.002, 6e-5)
}

// TestFolding checks that engine orders above half the sampling rate appear
// where the sampling theorem folds them.
func TestFolding(t *testing.T) {
	const seconds = 60
	for _, rate := range []float64{60, 100, 200} {
		for _, multiple := range []float64{0.5, 1, 2} {
			sc := vacuum(Push{Force: 5000, ToSpeed: 25}, Hold{Speed: 25, Seconds: seconds})
			sc.Phone, sc.Rider.SpeedWander, sc.Rider.LeanWander = flawless(rate), 0, 0
			sc.Phone.Shake.RMS, sc.Phone.Shake.EngineShare = 6, 1
			sc.Phone.Shake.Orders = []Order{{Multiple: multiple, Weight: 1}}
			r := mustRun(t, sc, 1)
			last := r.Truth.Moments[len(r.Truth.Moments)-1]
			line := multiple * last.RPM / 60
			want := math.Abs(line - rate*math.Round(line/rate))
			near(t, "folded line", peak(r.Log.Motion, rate, seconds-20), want, 0.1)
		}
	}
}

// peak returns the frequency of the strongest line in the last part of a log, Hz.
func peak(log []sensors.Motion, rate, seconds float64) float64 {
	log = log[len(log)-int(rate*seconds):]
	best, at := 0.0, 0
	power := make([]float64, len(log)/2+1)
	for _, axis := range []func(r3.Vec) float64{
		func(v r3.Vec) float64 { return v.X }, func(v r3.Vec) float64 { return v.Y }, func(v r3.Vec) float64 { return v.Z },
	} {
		x := make([]float64, len(log))
		for i, m := range log {
			x[i] = axis(m.Force)
		}
		mean := stat.Mean(x, nil)
		for i := range x {
			x[i] -= mean
		}
		for i, c := range fourier.NewFFT(len(x)).Coefficients(nil, x) {
			power[i] += real(c)*real(c) + imag(c)*imag(c)
		}
	}
	for i, p := range power {
		if p > best {
			best, at = p, i
		}
	}
	return float64(at) * rate / float64(len(log))
}

// TestVibrationSize checks that the vibration has the size asked for at full
// throttle, RefRPM and RefSpeed.
func TestVibrationSize(t *testing.T) {
	for _, rms := range []float64{6, 18} {
		ph := DefaultPhone()
		ph.Shake.RMS = rms
		s := newShaker(ph, 1)
		p := &player{cmd: command{throttle: 1}}
		var sum float64
		const n = 200_000
		for i := range n {
			at := motion{v: ph.Shake.RefSpeed, rpm: ph.Shake.RefRPM, turns: float64(i) * 0.7123}
			x, _ := s.feel(0, &at, &at, p)
			sum += r3.Norm2(x)
		}
		near(t, "rms", math.Sqrt(sum/n), rms, 0.02*rms)
	}
}

// TestBounce checks the size of the springs' bounce.
func TestBounce(t *testing.T) {
	s := newShaker(DefaultPhone(), 1)
	x := make([]float64, 400_000)
	for i := range x {
		x[i] = s.bounce(s.set.RefSpeed)
	}
	near(t, "rms", stat.StdDev(x, nil), s.set.BounceRMS, 0.03*s.set.BounceRMS)
}

// TestSlip checks that a slip of the phone is in the truth and measured by the
// gyroscope.
func TestSlip(t *testing.T) {
	sc := stiff(withPlan(Naked(), Stand{Seconds: 20}))
	sc.Phone.Slips = []Slip{{At: 10, Axis: r3.Vec{Y: 1}, Angle: 0.3}}
	r := mustRun(t, sc, 1)
	if len(r.Truth.Mounts) != 2 {
		t.Fatalf("%d mounts", len(r.Truth.Mounts))
	}
	a, b := r.Truth.Mounts[0], r.Truth.Mounts[1]
	near(t, "axis stays", r3.Norm(r3.Sub(a.Left, b.Left)), 0, 1e-12)
	near(t, "angle", math.Acos(r3.Dot(a.Up, b.Up)), 0.3, 1e-9)
	turned := r3.Vec{}
	for _, m := range r.Log.Motion {
		turned = r3.Add(turned, r3.Scale(0.01, m.Turn))
		want := a.Up
		if m.T > b.From {
			want = b.Up
		} else if m.T > b.From-slipTime-0.01 {
			continue
		}
		near(t, "gravity", r3.Norm(r3.Sub(m.Force, r3.Scale(sc.Road.Gravity, want))), 0, 1e-9)
	}
	near(t, "felt by the gyroscope", r3.Norm(r3.Sub(turned, r3.Scale(0.3, a.Left))), 0, 0.016)
	// The phone's new axes are the old ones turned by the measured rotation;
	// seen from the phone, the bike turns the other way.
	back := r3.NewRotation(-0.3, a.Left).Rotate(a.Up)
	near(t, "sense of the turn", r3.Norm(r3.Sub(back, b.Up)), 0, 1e-9)
}

// TestStamps checks the quantum of stamps and the rates of losses and gaps.
func TestStamps(t *testing.T) {
	sc := withPlan(Naked(), Stand{Seconds: 1800})
	sc.Phone = BrowserPhone()
	log := mustRun(t, sc, 1).Log.Motion
	gaps := 0
	for i, m := range log {
		ms := m.T * 1000
		near(t, "whole milliseconds", ms, math.Round(ms), 1e-6)
		if i > 0 && m.T-log[i-1].T > 0.1 {
			gaps++
		}
		if i > 0 && m.T <= log[i-1].T {
			t.Fatalf("stamp %d does not rise", i)
		}
	}
	share := float64(len(log)) / (60 * 1800)
	near(t, "share that arrives", share, 0.99, 0.005)
	if gaps == 0 || gaps > 12 {
		t.Errorf("%d gaps in half an hour, set to 6 an hour", gaps)
	}
}

// TestFilter: a second-order magnitude passes 1/√2 at its cut-off and falls
// by a factor of four for each octave above (textbook).
func TestFilter(t *testing.T) {
	s := &shaker{cutOff: 40}
	near(t, "at the cut-off", s.pass(40), 1/math.Sqrt2, 1e-12)
	near(t, "an octave", s.pass(800)/s.pass(1600), 4, 0.01)
	near(t, "without a filter", (&shaker{}).pass(1000), 1, 0)
}

// TestRange checks that readings are clipped at the sensor's range.
func TestRange(t *testing.T) {
	sc := withPlan(Naked(), Reach{Speed: 20})
	sc.Phone.Accel.Range, sc.Phone.Shake.RMS = 12, 18
	most := 0.0
	for _, m := range mustRun(t, sc, 1).Log.Motion {
		most = max(most, math.Abs(m.Force.X), math.Abs(m.Force.Y), math.Abs(m.Force.Z))
	}
	near(t, "greatest reading", most, 12, 0)
}
