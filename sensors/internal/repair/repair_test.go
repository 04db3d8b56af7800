package repair

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/sim"
)

func TestOrder(t *testing.T) {
	at := func(ts ...float64) (out []sensors.Pressure) {
		for i, x := range ts {
			out = append(out, sensors.Pressure{T: x, Pa: float64(i)})
		}
		return out
	}
	for _, c := range []struct {
		name     string
		in       []sensors.Pressure
		want     []float64 // Pa, equal to the position in the file
		disorder Disorder
	}{
		{"empty", nil, nil, Disorder{}},
		{"in order", at(1, 2, 3), []float64{0, 1, 2}, Disorder{}},
		{"two swapped", at(1, 3, 2, 4), []float64{0, 2, 1, 3}, Disorder{Moved: 1}},
		{"doubled, the first is kept", at(1, 2, 2, 2, 3), []float64{0, 1, 4}, Disorder{Doubled: 2}},
		{"doubled and swapped", at(2, 1, 2, 1), []float64{1, 0}, Disorder{Moved: 2, Doubled: 2}},
	} {
		got, d := Order(c.in, PressureTime)
		var order []float64
		for _, p := range got {
			order = append(order, p.Pa)
		}
		if !slices.Equal(order, c.want) || d != c.disorder {
			t.Errorf("%s: %v, %+v; want %v, %+v", c.name, order, d, c.want, c.disorder)
		}
	}
}

// ride is some minutes of an invented ride with a few bends, with the phone at
// an arbitrary attitude and all of its errors.
func ride(t *testing.T, seed uint64) *sensors.Log {
	t.Helper()
	sc := sim.DefaultScenario(sim.Bikes()[seed%3])
	sc.Plan = []sim.Act{sim.Stand{Seconds: 5}, sim.Town{Minutes: 5}, sim.Reach{Speed: 15}, sim.TurnRound{},
		sim.Reach{Speed: 12}, sim.Bend{Angle: 1.2, Radius: 40}, sim.Reach{Speed: 20}}
	r, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	return r.Log
}

func change(log *sensors.Log, force, turn float64) *sensors.Log {
	out := *log
	out.Motion = slices.Clone(log.Motion)
	for i := range out.Motion {
		out.Motion[i].Force = r3.Scale(force, out.Motion[i].Force)
		out.Motion[i].Turn = r3.Scale(turn, out.Motion[i].Turn)
	}
	return &out
}

// TestSignOfSimulatedRides: on each ride the sign and the unit are found, for
// all combinations that a file may have.
func TestSignOfSimulatedRides(t *testing.T) {
	const degree = 180 / math.Pi
	seeds := 12
	if testing.Short() {
		seeds = 3
	}
	for seed := range uint64(seeds) {
		up := ride(t, seed)
		for _, c := range []struct {
			name        string
			force, turn float64
			want        Yaw
		}{
			{"up, rad/s", 1, 1, Yaw{Known: true, Scale: 1}},
			{"down, rad/s", -1, 1, Yaw{Known: true, Down: true, Scale: 1}},
			{"up, deg/s", 1, degree, Yaw{Known: true, Scale: 1 / degree}},
			{"down, rad/s converted once too often", -1, 1 / degree, Yaw{Known: true, Down: true, Scale: degree}},
			{"down, deg/s", -1, degree, Yaw{Known: true, Down: true, Scale: 1 / degree}},
		} {
			got := Sign(change(up, c.force, c.turn))
			if got != c.want {
				t.Errorf("seed %d, %s: %+v, want %+v", seed, c.name, got, c.want)
			}
		}
		withoutBearing := *up
		withoutBearing.Fixes = slices.Clone(up.Fixes)
		for i := range withoutBearing.Fixes {
			withoutBearing.Fixes[i].BearingDeg = math.NaN()
		}
		if got := Sign(&withoutBearing); got.Known && got.Down {
			t.Errorf("seed %d: from positions alone the sign comes out wrong", seed)
		}
	}
}

func TestSignIsUnknownWithoutEvidence(t *testing.T) {
	up := ride(t, 1)
	noTurn := change(up, 1, math.NaN())
	noFix := *up
	noFix.Fixes = nil
	rng := rand.New(rand.NewPCG(4, 2))
	noise := change(up, 1, 1)
	for i := range noise.Motion {
		noise.Motion[i].Turn = r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
	}
	for name, log := range map[string]*sensors.Log{"no gyroscope": noTurn, "no fixes": &noFix, "a gyroscope of noise": noise, "nothing": {}} {
		if got := Sign(log); got.Known {
			t.Errorf("%s: %+v, want unknown", name, got)
		}
	}
}

func TestUnitsOfSimulatedRides(t *testing.T) {
	log := ride(t, 2)
	for _, c := range []struct {
		name string
		mps2 float64
	}{{"m/s²", 1}, {"g", 9.80665}, {"mg", 0.00980665}} {
		name, scale := ForceUnit(ForceSize(change(log, 1/c.mps2, 1).Motion))
		if name != c.name || math.Abs(scale-c.mps2) > 1e-12 {
			t.Errorf("forces in %s were taken for %q", c.name, name)
		}
	}
	for _, c := range []struct {
		name string
		mps  float64
	}{{"m/s", 1}, {"km/h", 1 / 3.6}, {"mph", 0.44704}, {"knots", 1852.0 / 3600}} {
		fixes := slices.Clone(log.Fixes)
		for i := range fixes {
			fixes[i].Speed /= c.mps
		}
		unit, ratio := SpeedFromPositions(fixes)
		if unit.Name != c.name {
			t.Errorf("speeds in %s were taken for %+v (%v)", c.name, unit, ratio)
		}
	}
	// Without positions this ride's gain for km/h, 3.38, might be that of ft/s.
	lost := *log
	for i := range lost.Fixes {
		lost.Fixes[i].LatDeg, lost.Fixes[i].LonDeg = math.NaN(), math.NaN()
	}
	for _, c := range []struct {
		name  string
		mps   float64
		notes int
		err   bool
	}{{"m/s", 1, 0, false}, {"km/h", 1 / 3.6, 0, true}, {"ft/s", 0.3048, 0, true}, {"mph", 0.44704, 0, true}, {"knots", 1852.0 / 3600, 0, true}} {
		without := lost
		without.Fixes = slices.Clone(lost.Fixes)
		for i := range without.Fixes {
			without.Fixes[i].Speed /= c.mps
		}
		_, err := Speed(&without, "gnss.csv")
		if (err != nil) != c.err || len(without.Notes) != c.notes {
			t.Errorf("speeds in %s without positions: %v, %v", c.name, err, without.Notes)
		}
		if err == nil && math.Abs(without.Fixes[300].Speed-lost.Fixes[300].Speed) > 1e-9 {
			t.Errorf("speeds in %s without positions came out as %g, want %g", c.name, without.Fixes[300].Speed, lost.Fixes[300].Speed)
		}
	}
	for _, unit := range []float64{1, 1e-3, 1e-6, 1e-9} {
		motion := slices.Clone(log.Motion)
		for i := range motion {
			motion[i].T /= unit
		}
		if got := ClockUnit(motion); got != unit {
			t.Errorf("times in units of %g s were taken for %g", unit, got)
		}
	}
}

func TestForceWithoutGravity(t *testing.T) {
	log := ride(t, 3)
	for i := range log.Motion {
		log.Motion[i].Force = r3.Scale(0.03, log.Motion[i].Force)
	}
	if name, _ := ForceUnit(ForceSize(log.Motion)); name != "" {
		t.Errorf("a force of a third of m/s² was taken to be in %s", name)
	}
}

// TestSpeedByForce: on simulated rides of all bikes the gain is 1 within what
// separates the units.
func TestSpeedByForce(t *testing.T) {
	for seed := range uint64(6) {
		if gain, ok := SpeedByForce(ride(t, seed)); !ok || math.Abs(gain-1) > 0.15 {
			t.Errorf("seed %d: gain %.3f (%v), want 1", seed, gain, ok)
		}
	}
}
