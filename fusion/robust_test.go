package fusion_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// simulate runs a scenario or ends the test.
func simulate(t testing.TB, sc sim.Scenario, seed uint64) *sim.Ride {
	t.Helper()
	r, err := sim.Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// fewLaunches is an invented ride of a few minutes.
func fewLaunches() sim.Scenario {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(sim.Launches(4, 110/3.6, 0), sim.Stand{Seconds: 5})
	return sc
}

func runFewLaunches() (*sim.Ride, error) { return sim.Run(fewLaunches(), 11) }

// misfit compares a track with the truth wherever the bike moves and keep is
// true: the rms of the speed's error, m/s, and of the error over its own
// standard uncertainty.
func misfit(tr *fusion.Track, truth *sim.Truth, keep func(t float64) bool) (rms, normalised float64) {
	var e2, z2, n float64
	for i := 0; i < len(tr.T); i += 10 {
		v := truth.V(tr.T[i])
		if v < 0.5 || !keep(tr.T[i]) {
			continue
		}
		e := tr.V[i] - v
		e2 += e * e
		z2 += e * e / (tr.VSD[i] * tr.VSD[i])
		n++
	}
	return math.Sqrt(e2 / n), math.Sqrt(z2 / n)
}

func always(float64) bool { return true }

// trouble is one way in which phones corrupt a recording.
type trouble struct {
	name  string
	phone func(*sim.Scenario)                    // changes the phone or the receiver
	spoil func(*sensors.Log, *rand.Rand)         // changes the log
	keep  func(*fusion.Track) func(float64) bool // where the speed must still be correct
	rms   float64                                // m/s
}

func troubles() []trouble {
	return []trouble{
		{name: "as it comes", rms: 0.2},
		{name: "no gyroscope", phone: func(sc *sim.Scenario) { sc.Phone.Gyro.Absent = true }, rms: 0.25},
		{name: "60 Hz browser", phone: func(sc *sim.Scenario) { sc.Phone = sim.BrowserPhone() }, rms: 0.4},
		{name: "200 Hz", phone: func(sc *sim.Scenario) { sc.Phone.Rate = 200 }, rms: 0.2},
		{name: "5 Hz fixes", phone: func(sc *sim.Scenario) { sc.Receiver.Rate = 5 }, rms: 0.15},
		{name: "10 Hz fixes", phone: func(sc *sim.Scenario) { sc.Receiver.Rate = 10 }, rms: 0.15},
		{name: "one fix in 50 wild", rms: 0.25, spoil: func(l *sensors.Log, rng *rand.Rand) {
			for i := range l.Fixes {
				if rng.IntN(50) == 0 {
					l.Fixes[i].Speed = 40 * rng.Float64()
				}
			}
		}},
		{name: "every fix twice", rms: 0.25, spoil: func(l *sensors.Log, _ *rand.Rand) {
			var twice []sensors.Fix
			for _, f := range l.Fixes {
				again := f
				again.T += 0.4
				twice = append(twice, f, again)
			}
			l.Fixes = twice
		}},
		{name: "speeds alone", rms: 0.2, spoil: func(l *sensors.Log, _ *rand.Rand) {
			for i, f := range l.Fixes {
				l.Fixes[i] = sensors.NewFix(f.T, f.Speed)
			}
		}},
		{name: "motion lost for three seconds, five times", rms: 0.3, spoil: func(l *sensors.Log, rng *rand.Rand) {
			for range 5 {
				at := l.Motion[rng.IntN(len(l.Motion))].T
				l.Motion = slices.DeleteFunc(l.Motion, func(m sensors.Motion) bool { return m.T > at && m.T < at+3 })
			}
		}, keep: outsideGaps},
		{name: "a tunnel of 40 s", rms: 0.3, spoil: func(l *sensors.Log, _ *rand.Rand) {
			at := l.Fixes[60].T
			l.Fixes = slices.DeleteFunc(l.Fixes, func(f sensors.Fix) bool { return f.T > at && f.T < at+40 })
		}, keep: outsideGaps},
		{name: "a gyroscope in degrees a second", rms: 0.25, spoil: func(l *sensors.Log, _ *rand.Rand) {
			for i := range l.Motion {
				l.Motion[i].Turn = r3.Scale(180/math.Pi, l.Motion[i].Turn)
			}
		}},
		{name: "a gyroscope the wrong way round", rms: 0.25, spoil: func(l *sensors.Log, _ *rand.Rand) {
			for i := range l.Motion {
				l.Motion[i].Turn = r3.Scale(-1, l.Motion[i].Turn)
			}
		}},
		{name: "not-a-number here and there", rms: 0.2, spoil: func(l *sensors.Log, rng *rand.Rand) {
			for range 200 {
				l.Motion[rng.IntN(len(l.Motion))].Force.X = math.NaN()
				l.Motion[rng.IntN(len(l.Motion))].Turn.Y = math.Inf(1)
			}
			l.Fixes[40].Speed = math.NaN()
		}},
	}
}

// TestTroubledLogs corrupts a simulated ride in the ways that phones do.
func TestTroubledLogs(t *testing.T) {
	for _, c := range troubles() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			sc := fewLaunches()
			if c.phone != nil {
				c.phone(&sc)
			}
			ride := simulate(t, sc, 11)
			if c.spoil != nil {
				c.spoil(ride.Log, rand.New(rand.NewPCG(5, 6)))
			}
			tr, err := fusion.Smooth(ride.Log, fusion.Options{})
			if err != nil {
				t.Fatal(err)
			}
			keep := always
			if c.keep != nil {
				keep = c.keep(tr)
			}
			rms, z := misfit(tr, ride.Truth, keep)
			t.Logf("speed off by %.3f m/s rms, %.2f of its own uncertainty, lag %.3f ± %.3f, gaps %v, notes %q",
				rms, z, tr.Lag.Seconds, tr.Lag.SE, tr.Gaps, tr.Notes)
			if rms > c.rms {
				t.Errorf("speed off by %.3f m/s rms, want at most %.2f", rms, c.rms)
			}
			if z > 2 {
				t.Errorf("errors are %.2f times what the track says", z)
			}
		})
	}
}

// outsideGaps excludes what the track itself reports as a gap.
func outsideGaps(tr *fusion.Track) func(float64) bool {
	return func(t float64) bool {
		return !slices.ContainsFunc(tr.Gaps, func(s fusion.Span) bool { return s.Contains(t) })
	}
}

// TestTooLittle checks that insufficient data gives an error with a remedy, not a
// guess.
func TestTooLittle(t *testing.T) {
	steady := func(n int) []sensors.Motion {
		var m []sensors.Motion
		for i := range n {
			m = append(m, sensors.Motion{T: float64(i) * 0.01, Force: r3.Vec{Z: 9.8}})
		}
		return m
	}
	at := func(n int, start, speed float64) []sensors.Fix {
		var f []sensors.Fix
		for i := range n {
			f = append(f, sensors.NewFix(start+float64(i), speed))
		}
		return f
	}
	cases := []struct {
		name string
		log  sensors.Log
	}{
		{name: "nothing"},
		{name: "no fixes", log: sensors.Log{Motion: steady(6000)}},
		{name: "all not-a-number", log: sensors.Log{Motion: []sensors.Motion{{T: math.NaN()}, {Force: r3.Vec{X: math.Inf(1)}}}, Fixes: at(60, 0, math.NaN())}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := fusion.Smooth(&c.log, fusion.Options{})
			var input *sensors.InputError
			if !errors.As(err, &input) {
				t.Fatalf("got %v, want an input error", err)
			}
			if input.What.IsZero() || input.Remedy.IsZero() {
				t.Errorf("%q does not say what to fix", err)
			}
		})
	}
}

// TestSlippingPhone checks the speed while the phone slips in its holder.
func TestSlippingPhone(t *testing.T) {
	sc := fewLaunches()
	sc.Phone.Slips = []sim.Slip{{At: 130, Axis: r3.Vec{Y: 1}, Angle: 0.5}}
	ride := simulate(t, sc, 11)
	tr, err := fusion.Smooth(ride.Log, fusion.Options{})
	if err != nil {
		t.Fatal(err)
	}
	rms, z := misfit(tr, ride.Truth, always)
	t.Logf("speed off by %.3f m/s rms, %.2f of its own uncertainty, mounts %+v", rms, z, tr.Mounts)
	if len(tr.Mounts) != 2 || math.Abs(tr.Mounts[0].To-ride.Truth.Mounts[1].From) > 1 {
		t.Errorf("mounts %+v, slipped at %.1f s", tr.Mounts, ride.Truth.Mounts[1].From)
	}
	if rms > 0.3 || z > 2 {
		t.Errorf("speed off by %.3f m/s rms, %.2f of its own uncertainty", rms, z)
	}
}
