package mount_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/fusion/mount"
	"stillair/sensors/sim"
)

func angle(a, b r3.Vec) float64 { return math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)) }

// ride is an invented ride: a little town, launches, coast-downs.
func ride(t *testing.T, seed uint64, change func(*sim.Scenario)) *sim.Ride {
	t.Helper()
	sc := sim.DefaultScenario(sim.Bikes()[seed%3])
	sc.Plan = []sim.Act{sim.Town{Minutes: 4}}
	sc.Plan = append(sc.Plan, sim.Launches(2, 90/3.6, 0)...)
	sc.Plan = append(sc.Plan, sim.CoastPairs(1, 90/3.6, 40/3.6)...)
	sc.Plan = append(sc.Plan, sim.Town{Minutes: 4})
	change(&sc)
	r, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func seeds() int {
	if testing.Short() {
		return 1
	}
	return 6
}

// TestAnyAttitude checks the mounts of phones at random attitudes.
func TestAnyAttitude(t *testing.T) {
	cases := []struct {
		name   string
		change func(*sim.Scenario)
		lagOff float64 // s
	}{
		{name: "quiet", change: func(sc *sim.Scenario) { sc.Phone.Shake.RMS = 1 }, lagOff: 0.05},
		{name: "shaken", change: func(*sim.Scenario) {}, lagOff: 0.1},
		{name: "harsh", change: func(sc *sim.Scenario) { sc.Phone.Shake.RMS = 18 }, lagOff: 0.25},
		{name: "no gyroscope", change: func(sc *sim.Scenario) { sc.Phone.Gyro.Absent = true }, lagOff: 0.15},
		{name: "10 Hz fixes", change: func(sc *sim.Scenario) { sc.Receiver.Rate = 10 }, lagOff: 0.1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			var z2, n float64
			for seed := range uint64(seeds()) {
				r := ride(t, seed+1, c.change)
				found, err := mount.Find(motion.New(r.Log.Motion), r.Log.Fixes)
				if err != nil {
					t.Fatal(err)
				}
				if len(found.Mounts) != 1 {
					t.Errorf("seed %d: %d mounts, there was no slip: %+v", seed, len(found.Mounts), found.Mounts)
					continue
				}
				m, truth := found.Mounts[0], r.Truth.Mounts[0]
				off, tilt := angle(m.Forward, truth.Forward), angle(m.Up, truth.Up)
				if off > 0.1 || tilt > 0.05 {
					t.Errorf("seed %d: forward off by %.3f rad (said %.3f), up by %.3f", seed, off, m.SE, tilt)
				}
				level := r3.Dot(m.Forward, truth.Up) // the angle to up, whose standard error is SE
				z2 += level * level / (m.SE * m.SE)
				n++
				if math.Abs(found.Lag-r.Truth.Lag) > c.lagOff {
					t.Errorf("seed %d: lag %.3f s, truth %.3f", seed, found.Lag, r.Truth.Lag)
				}
			}
			z := math.Sqrt(z2 / n)
			t.Logf("normalised error of forward's angle to up: %.2f", z)
			if z > 2 {
				t.Errorf("forward's angle to up errs by %.1f times what is said", z)
			}
		})
	}
}

// TestSlip checks that a slip of the phone in its holder is found, and its time.
func TestSlip(t *testing.T) {
	cases := []struct {
		name   string
		axis   r3.Vec // bike axes
		angle  float64
		noGyro bool // no gyroscope
	}{
		{name: "nods forward", axis: r3.Vec{Y: 1}, angle: 0.5},
		{name: "rolls", axis: r3.Vec{X: 1}, angle: -0.4},
		{name: "turns about the vertical", axis: r3.Vec{Z: 1}, angle: 0.9},
		{name: "rolls, no gyroscope", axis: r3.Vec{X: 1}, angle: -0.4, noGyro: true},
		{name: "tumbles", axis: r3.Vec{X: 1, Y: 1, Z: 1}, angle: 2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			const at = 330.0
			r := ride(t, 4, func(sc *sim.Scenario) {
				sc.Phone.Slips = []sim.Slip{{At: at, Axis: c.axis, Angle: c.angle}}
				sc.Phone.Gyro.Absent = c.noGyro
			})
			found, err := mount.Find(motion.New(r.Log.Motion), r.Log.Fixes)
			if err != nil {
				t.Fatal(err)
			}
			if len(found.Mounts) != 2 {
				t.Fatalf("%d mounts, want 2: %+v", len(found.Mounts), found.Mounts)
			}
			when := r.Truth.Mounts[1].From
			t.Logf("slipped at %.1f s, found %.1f s", when, found.Mounts[0].To)
			if math.Abs(found.Mounts[0].To-when) > 1 {
				t.Errorf("slip found at %.1f s, was at %.1f", found.Mounts[0].To, when)
			}
			for i, m := range found.Mounts {
				if off := angle(m.Forward, r.Truth.Mounts[i].Forward); off > 0.15 {
					t.Errorf("mount %d: forward off by %.3f rad", i, off)
				}
			}
		})
	}
}

// TestSideStand: a bike that leans on its side stand for a while, without a fix
// that shows any speed, is not a phone that slips, with a gyroscope and without.
func TestSideStand(t *testing.T) {
	const leaning = 0.22 // rad
	for _, noGyro := range []bool{false, true} {
		sc := sim.DefaultScenario(sim.Naked())
		sc.Plan = append(sim.Launches(1, 90/3.6, 0), sim.Stand{Seconds: 100})
		sc.Plan = append(sc.Plan, sim.Launches(3, 90/3.6, 0)...)
		sc.Phone.Gyro.Absent = noGyro
		r, err := sim.Run(sc, 3)
		if err != nil {
			t.Fatal(err)
		}
		stood, since := 0.0, 0.0 // when the long stand begins
		for _, m := range r.Truth.Moments {
			if m.V > 0 {
				since = m.T
			} else if m.T-since > 80 && stood == 0 {
				stood = since
			}
		}
		axis := r.Truth.Mounts[0].Forward
		for i := range r.Log.Motion {
			m := &r.Log.Motion[i]
			u := math.Min(m.T-stood-5, stood+75-m.T) // s since it began to lean, or until it is upright again
			by := leaning * math.Max(0, math.Min(1, u))
			rate := 0.0
			if u > 0 && u < 1 {
				rate = math.Copysign(leaning, stood+40-m.T)
			}
			m.Force = r3.NewRotation(-by, axis).Rotate(m.Force)
			m.Turn = r3.Add(m.Turn, r3.Scale(rate, axis))
		}
		found, err := mount.Find(motion.New(r.Log.Motion), r.Log.Fixes)
		if err != nil {
			t.Fatal(err)
		}
		if len(found.Mounts) != 1 {
			t.Errorf("without gyroscope %v: %d mounts, there was no slip: %+v", noGyro, len(found.Mounts), found.Mounts)
		}
	}
}

// TestNoFlip: speeds with the wrong sign for half a ride turn the direction of
// travel by 180° in the regression, but the gyroscope shows that the phone did not
// turn.
func TestNoFlip(t *testing.T) {
	r := ride(t, 2, func(*sim.Scenario) {})
	half := len(r.Log.Fixes) / 2
	for i := half; i < len(r.Log.Fixes); i++ {
		r.Log.Fixes[i].Speed = 40 - r.Log.Fixes[i].Speed
	}
	found, err := mount.Find(motion.New(r.Log.Motion), r.Log.Fixes)
	if err == nil && len(found.Mounts) != 1 {
		t.Errorf("%d mounts, no phone turned: %+v", len(found.Mounts), found.Mounts)
	}
}
