package runs

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/roadload/loadtest"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestSameTyresOtherDay simulates the same tyres at 6 and at 28 °C. Their
// rolling resistance decreases exponentially, by 0.6 or by 0.9 % per kelvin:
// the extremes of published values, and not the law of the correction.
// Corrected to 20 °C, the interval of each day must contain the true value, and
// that of their difference zero; uncorrected they differ by 14 to 22 %.
func TestSameTyresOtherDay(t *testing.T) {
	tests := batch.Size(30, 3)
	for _, softens := range []float64{0.006, 0.009} {
		held, alike, naive := 0, 0, 0
		for seed := range tests {
			var day [2]RoadLoad
			for i, celsius := range []float64{6, 28} {
				w := loadtest.Naked()
				truth := w.Crr
				w.Crr *= math.Exp(-softens * (celsius - 20))
				e, err := roadload.Fit(w.Ride(rand.New(rand.NewPCG(uint64(seed), 83+uint64(i))), 0, 0, 0), roadload.DefaultOptions(0.5))
				if err != nil {
					t.Fatal(err)
				}
				day[i].Crr = e.Loads[0].Crr
				day[i].CrrAt20 = at20(day[i].Crr, measure.Value{X: celsius, SE: 1.5})
				if l := day[i].CrrAt20; math.Abs(l.X-truth) < 1.96*l.SE {
					held++
				}
			}
			plain := Value{X: day[1].Crr.X - day[0].Crr.X, SE: math.Hypot(day[0].Crr.SE, day[1].Crr.SE)}
			if math.Abs(plain.X) < 1.96*plain.SE {
				naive++
			}
			if d := towards20(plain, day[0], day[1]); math.Abs(d.X) < 1.96*d.SE {
				alike++
			}
		}
		t.Logf("%.1f %% a kelvin, n %d: truth held %d of %d, days alike %d, uncorrected %d", 100*softens, tests, held, 2*tests, alike, naive)
		if held < 2*tests*9/10 || alike < tests*9/10 {
			t.Errorf("%.1f %% a kelvin: the truth was held %d times in %d, the days were alike %d times in %d", 100*softens, held, 2*tests, alike, tests)
		}
	}
}

// TestTowards20 compares with a correction by hand: 1.4 % more rolling
// resistance at 10 than at 12 °C is hardly more than the effect of temperature,
// and the uncertainty of the correction, in which all but 2 K cancel, is small.
func TestTowards20(t *testing.T) {
	load := func(crr, celsius float64) RoadLoad {
		l := RoadLoad{Crr: Value{X: crr, SE: 1e-4}}
		l.CrrAt20 = at20(l.Crr, measure.Value{X: celsius})
		return l
	}
	a, b := load(0.02, 12), load(0.02028, 10)
	got := towards20(Value{X: 0.00028, SE: 1e-4}, a, b)
	// 0.02028·(1 − 0.086) − 0.02·(1 − 0.0688), and 0.002/0.0086 of the correction
	if math.Abs(got.X-(-0.00008808)) > 1e-8 || math.Abs(got.SE-math.Hypot(1e-4, 0.002/0.0086*0.00036808)) > 1e-8 {
		t.Errorf("%.8f ± %.8f", got.X, got.SE)
	}
}

// TestTellsAt20: a road load measured in the cold is also given for 20 °C, by K0 =
// 0.0086/K of coast-down standards (from memory); one measured near 20 °C, or at
// an unknown temperature, is not.
func TestTellsAt20(t *testing.T) {
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = sim.CoastPairs(1, 110*units.KMH, 40*units.KMH)
	ride, err := sim.Run(sc, 3)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		celsius float64
		want    bool
	}{{6, true}, {19, false}, {math.NaN(), false}} {
		log := *ride.Log
		log.Ride.Air.Temperature = c.celsius
		result, err := Analyse(context.Background(), &log, Options{})
		if err != nil || len(result.RoadLoads) != 1 {
			t.Fatalf("%v: %v, %d road loads", c.celsius, err, len(result.RoadLoads))
		}
		l := result.RoadLoads[0]
		if got := finding.Any(l.Notes, codeAt20); got != c.want {
			t.Errorf("%v °C: said: %v", c.celsius, got)
		}
		if c.want && math.Abs(l.CrrAt20.X/l.Crr.X-(1-0.0086*14)) > 0.002 {
			t.Errorf("Crr %.5f, at 20 °C %.5f", l.Crr.X, l.CrrAt20.X)
		}
	}
}
