package sim

import (
	"math"
	"reflect"
	"testing"

	"stillair/sensors"
	"stillair/sensors/sourcetest"
	"stillair/sensors/units"
)

// mustRun runs a scenario and fails the test on an error.
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
		{"receiver and barometer alone", Phone{Shake: DefaultPhone().Shake}, 10},
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
	sc := DemoScenario(Naked())
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

// TestPartsDrawApart checks that a different receiver changes the fixes and nothing
// else.
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
			for i, d := range r.Truth.Events {
				count[d.Kind]++
				if d.End < d.Start || i > 0 && d.Start < r.Truth.Events[i-1].Start {
					t.Errorf("event %d is out of order: %+v", i, d)
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
		{"speed that is no number", func(sc *Scenario) { sc.Plan = []Act{Hold{Speed: math.NaN(), Seconds: 1}} }},
		{"infinite noise", func(sc *Scenario) { sc.Phone.Accel.NoiseSD = math.Inf(1) }},
		{"nothing planned", func(sc *Scenario) { sc.Plan = []Act{nil} }},
		{"bend on the spot", func(sc *Scenario) { sc.Plan = []Act{Reach{Speed: 5}, Bend{Angle: 1}} }},
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

// BenchmarkRide rides four pairs of coast-downs, some 16 minutes, with all
// sensors and with the receiver alone.
func BenchmarkRide(b *testing.B) {
	for _, c := range []struct {
		name       string
		rate, baro float64
	}{{"all sensors", 100, 10}, {"fixes alone", 0, 0}} {
		b.Run(c.name, func(b *testing.B) {
			sc := withPlan(Naked(), CoastPairs(4, 110*units.KMH, 30*units.KMH)...)
			sc.Phone.Rate, sc.Baro.Rate = c.rate, c.baro
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				r := mustRun(b, sc, uint64(i))
				b.ReportMetric(r.Truth.Moments[len(r.Truth.Moments)-1].T, "ride-s")
			}
		})
	}
}

// TestSpoils checks that the disturbance of a coast-down is in the truth.
func TestSpoils(t *testing.T) {
	const from, to = 90 * units.KMH, 50 * units.KMH
	length := map[SpoilKind]float64{}
	for _, s := range []Spoil{{}, {Kind: Brush, AtSpeed: 20, Seconds: 2, Size: 300}, {Kind: Truck, AtSpeed: 20, Seconds: 4, Size: 8}, {Kind: GearIn, AtSpeed: from, Seconds: 99}} {
		sc := withPlan(Naked(), CoastDown{From: from, To: to})
		sc.Wind.SD = 0
		if s.Kind != "" {
			sc.Plan = []Act{CoastDown{From: from, To: to, Spoils: []Spoil{s}}}
		}
		tr := mustRun(t, sc, 1).Truth
		d := tr.Of(KindCoastDown)[0]
		length[s.Kind] = tr.Through(d, from, to)
		brake, wind, clutch := 0.0, 0.0, 0.0
		for _, m := range tr.Moments[tr.at(d.Start+0.02):tr.at(d.End)] {
			brake, wind, clutch = max(brake, m.Brake), max(wind, m.Head), max(clutch, m.Clutch)
		}
		near(t, "brake", brake, map[SpoilKind]float64{Brush: 300}[s.Kind], 0)
		near(t, "wind", wind, map[SpoilKind]float64{Truck: 8}[s.Kind], 0.01)
		near(t, "clutch", clutch, map[SpoilKind]float64{GearIn: 1}[s.Kind], 0)
		if (len(d.Spoilt) > 0) != (s.Kind != "") {
			t.Errorf("%q is listed as %v", s.Kind, d.Spoilt)
		}
	}
	// 300 N for 2 s take 600 Ns, and with that 600/301.6 kg = 2 m/s; at about 0.75 m/s²
	// the run is some 2.6 s shorter.
	if won := length[""] - length[Brush]; won < 1.5 || won > 4 {
		t.Errorf("the brush shortens the run by %.2f s", won)
	}
	if length[GearIn] > 0.8*length[""] {
		t.Errorf("with a gear in it lasts %.1f s, without %.1f s", length[GearIn], length[""])
	}
}

func TestDemo(t *testing.T) {
	r := mustRun(t, DemoScenario(Naked()), 1)
	count := map[string]int{}
	for _, d := range r.Truth.Of(KindCoastDown) {
		count[d.Setup]++
	}
	if count["short screen"] != 8 || count["tall screen"] != 8 {
		t.Errorf("coast-downs by setup: %v", count)
	}
	ride := r.Log.Ride
	if len(ride.Setups) != 4 || ride.SetupAt(r.Truth.Of(KindCoastDown)[4].Start).Mass != 291 {
		t.Errorf("setups entered: %+v", ride.Setups)
	}
}

// FuzzRun checks that no scenario of reasonable size makes the simulator panic
// or hang: it returns a ride whose log is in order, or an error.
func FuzzRun(f *testing.F) {
	f.Add(uint64(1), 290.0, 0.55, 1.5, 0.01, 30.0, 10.0, 100.0, 1.0, 0.2)
	f.Add(uint64(2), 40.0, 5.0, 25.0, -0.3, 90.0, 0.0, 7.0, 10.0, -1.0)
	f.Add(uint64(3), 3000.0, 0.0, 0.0, 0.2, 5.0, 20.0, 999.0, 0.1, 30.0)
	f.Fuzz(func(t *testing.T, seed uint64, mass, cda, wind, grade, from, to, rate, fixes, latency float64) {
		sc := DefaultScenario(Naked())
		sc.Bike.Mass, sc.Bike.CdA, sc.Wind.SD, sc.Road.Grade = mass, cda, math.Mod(wind, 50), math.Mod(grade, 1)
		sc.Phone.Rate, sc.Receiver.Rate, sc.Receiver.Latency = rate, fixes, latency
		from, to = math.Mod(from, 100), math.Mod(to, 100)
		sc.Plan = []Act{Launch{ToSpeed: from}, CoastDown{From: from, To: to}, Brake{To: to}, TurnRound{}, Stand{Seconds: math.Mod(to, 20)}}
		r, err := Run(sc, seed)
		if err != nil {
			return
		}
		for i, m := range r.Truth.Moments {
			if math.IsNaN(m.V+m.A+m.S+m.Slope+m.Head+m.RPM) || m.V < 0 || i > 0 && m.T <= r.Truth.Moments[i-1].T {
				t.Fatalf("moment %d: %+v", i, m)
			}
		}
		for i := 1; i < len(r.Log.Fixes); i++ {
			if r.Log.Fixes[i].T <= r.Log.Fixes[i-1].T {
				t.Fatalf("fix %d does not rise", i)
			}
		}
	})
}

func TestPresets(t *testing.T) {
	bikes := Bikes()
	if testing.Short() {
		bikes = bikes[:1]
	}
	for _, p := range Presets() {
		for _, b := range bikes {
			t.Run(p.Name+" "+b.Name, func(t *testing.T) {
				t.Parallel()
				sc := p.Scenario(b)
				sc.Phone.Rate, sc.Baro.Rate = 0, 0
				r := mustRun(t, sc, 9)
				if last := r.Truth.Moments[len(r.Truth.Moments)-1]; last.V != 0 || last.T < 200 {
					t.Errorf("ends at %.0f s with %.1f m/s", last.T, last.V)
				}
			})
		}
	}
}
