package sim

import (
	"reflect"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
	"stillair/sensors/units"
)

// mustRun rides a scenario that has to work.
func mustRun(t testing.TB, sc Scenario, seed uint64) *Ride {
	t.Helper()
	r, err := Run(sc, seed)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// withPlan is the default scenario of a bike with a plan.
func withPlan(b Bike, plan ...Act) Scenario {
	sc := DefaultScenario(b)
	sc.Plan = plan
	return sc
}

func TestSource(t *testing.T) {
	sc := withPlan(Naked(), Launches(1, 20, 0)...)
	for _, c := range []struct {
		name  string
		phone Phone
		baro  float64
	}{
		{"phone with everything", DefaultPhone(), 10},
		{"browser", BrowserPhone(), 0},
		{"no gyroscope", func() Phone { p := DefaultPhone(); p.Gyro.Absent = true; return p }(), 10},
	} {
		t.Run(c.name, func(t *testing.T) {
			sc := sc
			sc.Phone, sc.Baro.Rate = c.phone, c.baro
			sourcetest.Contract(t, func() sensors.Source { return mustRun(t, sc, 3).Source() })
		})
	}
}

func TestSameSeedSameRide(t *testing.T) {
	sc := DemoScenario()
	sc.Plan = append(Launches(1, 20, 0), CoastPair{From: 60 * units.KMH, To: 30 * units.KMH}, Town{Minutes: 1})
	a, b, other := mustRun(t, sc, 5), mustRun(t, sc, 5), mustRun(t, sc, 6)
	if !reflect.DeepEqual(a.Truth, b.Truth) {
		t.Error("the same seed gave another truth")
	}
	if !reflect.DeepEqual(a.Log.Motion, b.Log.Motion) || !reflect.DeepEqual(a.Log.Pressure, b.Log.Pressure) || !reflect.DeepEqual(a.Log.Fixes, b.Log.Fixes) {
		t.Error("the same seed gave another log")
	}
	if reflect.DeepEqual(a.Truth.Winds, other.Truth.Winds) || a.Log.Motion[0] == other.Log.Motion[0] {
		t.Error("another seed gave the same ride")
	}
}

// TestPartsDrawApart holds that another receiver changes the fixes and nothing else.
func TestPartsDrawApart(t *testing.T) {
	sc := withPlan(Naked(), CoastPairs(1, 60*units.KMH, 30*units.KMH)...)
	a := mustRun(t, sc, 1)
	sc.Receiver.Rate, sc.Receiver.DropsPerHour, sc.Receiver.DropMean = 10, 20, 3
	b := mustRun(t, sc, 1)
	if !reflect.DeepEqual(a.Truth.Moments, b.Truth.Moments) || !reflect.DeepEqual(a.Log.Motion, b.Log.Motion) {
		t.Error("another receiver changed the ride")
	}
	if len(b.Log.Fixes) < 5*len(a.Log.Fixes) {
		t.Errorf("%d fixes at 10 Hz against %d at 1 Hz", len(b.Log.Fixes), len(a.Log.Fixes))
	}
}

func TestPlansOfAllBikes(t *testing.T) {
	for _, b := range Bikes() {
		t.Run(b.Name, func(t *testing.T) {
			t.Parallel()
			plan := append(Launches(1, 100*units.KMH, 410), RollOns(1, 0, 60*units.KMH, 100*units.KMH)...)
			plan = append(append(plan, Pulls(1, 0)...), PerturbedCoast(3, 110*units.KMH, 30*units.KMH)...)
			r := mustRun(t, withPlan(b, append(plan, Brake{}, Stand{Seconds: 3})...), 2)
			count := map[Kind]int{}
			for i, d := range r.Truth.Deeds {
				count[d.Kind]++
				if d.End < d.Start || i > 0 && d.Start < r.Truth.Deeds[i-1].Start {
					t.Errorf("deed %d is out of order: %+v", i, d)
				}
			}
			for k, want := range map[Kind]int{KindLaunch: 1, KindRollOn: 1, KindPull: 2, KindCoastDown: 6, KindStop: 1} {
				if count[k] != want {
					t.Errorf("%d of kind %s, want %d", count[k], k, want)
				}
			}
		})
	}
}

func TestBadScenarios(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(*Scenario)
	}{
		{"no mass", func(sc *Scenario) { sc.Bike.Mass = 0 }},
		{"no gears", func(sc *Scenario) { sc.Bike.Gears = nil }},
		{"torque curve goes back", func(sc *Scenario) { sc.Bike.Engine.Torque = []TorquePoint{{3000, 50}, {2000, 60}} }},
		{"gear that is not there", func(sc *Scenario) { sc.Plan = []Act{RollOn{Gear: 9, From: 20, To: 30}} }},
		{"speed out of reach", func(sc *Scenario) { sc.Plan = []Act{Launch{ToSpeed: 200}} }},
		{"cruise out of reach", func(sc *Scenario) { sc.Plan = []Act{Reach{Speed: 200}} }},
		{"push too weak", func(sc *Scenario) { sc.Plan = []Act{Push{Force: 1, ToSpeed: 10}} }},
	} {
		t.Run(c.name, func(t *testing.T) {
			sc := withPlan(Naked(), Stand{Seconds: 1})
			c.spoil(&sc)
			if _, err := Run(sc, 1); err == nil {
				t.Error("no error")
			} else {
				t.Log(err)
			}
		})
	}
}

func BenchmarkQuarterHour(b *testing.B) {
	sc := withPlan(Naked(), CoastPairs(4, 110*units.KMH, 30*units.KMH)...)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		r := mustRun(b, sc, uint64(i))
		b.ReportMetric(r.Truth.Moments[len(r.Truth.Moments)-1].T, "ride-s")
	}
}
