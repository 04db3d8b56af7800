package android

import (
	"math"
	"slices"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/sensors"
	"stillair/sensors/device"
)

const ms = int64(1e6)

func f(t int64) event              { return event{t, force, r3.Vec{Z: 9.81}} }
func w(t int64, x float64) event   { return event{t, turn, r3.Vec{X: x}} }
func p(t int64, hPa float64) event { return event{t, pressure, r3.Vec{X: hPa}} }

func TestForcesGetTheTurnOfTheirInstant(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		noTurn bool
		events []event
		turns  []float64 // of each force returned
	}{
		{"between two", false, []event{w(0, 1), f(2 * ms), w(4*ms, 3)}, []float64{2}},
		{"at one", false, []event{w(0, 1), w(5*ms, 7), f(5 * ms), w(9*ms, 8)}, []float64{7}},
		{"waits for the next", false, []event{w(0, 1), f(2 * ms)}, nil},
		{"none before it", false, []event{f(0), w(2*ms, 1), f(3 * ms), w(4*ms, 3)}, []float64{nan, 2}},
		{"a gap in the turns", false, []event{w(0, 1), f(30 * ms), w(60*ms, 3), f(61 * ms), w(62*ms, 5)}, []float64{nan, 4}},
		{"the turns ended", false, []event{w(0, 1), f(2 * ms), f(200 * ms)}, []float64{nan}},
		{"no gyroscope", true, []event{f(0), f(5 * ms)}, []float64{nan, nan}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, oneByOne := range []bool{false, true} {
				j := join{noTurn: c.noTurn}
				var b device.Batch
				if oneByOne {
					for _, e := range c.events {
						j.add([]event{e}, &b)
					}
				} else {
					j.add(c.events, &b)
				}
				var got []float64
				for _, m := range b.Motion {
					got = append(got, m.Turn.X)
				}
				if !slices.EqualFunc(got, c.turns, func(a, b float64) bool { return a == b || a != a && b != b }) {
					t.Errorf("one by one %v: turns %v, want %v", oneByOne, got, c.turns)
				}
			}
		})
	}
}

func TestJoinKeepsNothingItNeedsNot(t *testing.T) {
	var j join
	var b device.Batch
	for i := range int64(100000) {
		j.add([]event{w(i*5*ms, 1), f(i*5*ms + ms)}, &b)
		if i%1000 == 0 {
			b.Clear()
		}
	}
	if len(j.forces) > 2 || len(j.turns) > 3 || cap(j.forces) > 100 {
		t.Errorf("holds %d forces and %d turns after 100000", len(j.forces), len(j.turns))
	}
}

func TestPressureInPascal(t *testing.T) {
	var j join
	var b device.Batch
	j.add([]event{p(2000*ms, 1013.25)}, &b)
	if len(b.Pressure) != 1 || b.Pressure[0].T != 2 || math.Abs(b.Pressure[0].Pa-101325) > 1e-6 {
		t.Errorf("pressure %+v", b.Pressure)
	}
}

func TestLocation(t *testing.T) {
	at := time.Date(2026, 5, 3, 10, 0, 0, 5e8, time.UTC)
	x := location{t: 12_500_000_000, utc: at.UnixMilli(), lat: 48, lon: 11, alt: math.NaN(), speed: 20, speedSD: 0.3, bearing: 360, h2: 3}.fix()
	if x.T != 12.5 || x.Speed != 20 || x.SpeedSD != 0.3 || x.BearingDeg != 0 || !x.UTC.Equal(at) || !math.IsNaN(x.Alt) {
		t.Errorf("fix %+v", x)
	}
	// 68 % of a two-dimensional normal error lie within 1.5096 standard
	// deviations: 1 − exp(−1.5096²/2) = 0.68.
	if math.Abs(1-math.Exp(-math.Pow(3/x.HSD, 2)/2)-0.68) > 1e-9 {
		t.Errorf("standard deviation %g m of a 68 %% radius of 3 m", x.HSD)
	}
}

func TestEveryStateIsPutInWords(t *testing.T) {
	for state := asking; state <= broken; state++ {
		said, ok := fixReport(state, "because")
		if !ok || said.Sensor != sensors.SensorFix || said.Detail.IsZero() && said.Condition != sensors.Available {
			t.Errorf("state %d: %+v", state, said)
		}
	}
	if _, ok := fixReport(starting, ""); ok {
		t.Error("something is said before anything is known")
	}
}
