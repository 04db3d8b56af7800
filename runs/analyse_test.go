package runs

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"stillair/sensors"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// shortRide is a launch and a pair of coast-downs of the invented naked bike.
func shortRide(t testing.TB, change func(sc *sim.Scenario)) *sim.Ride {
	t.Helper()
	sc := sim.DefaultScenario(sim.Naked())
	sc.Plan = append(sim.Launches(1, 125*units.KMH, 410), sim.CoastPairs(2, 100*units.KMH, 30*units.KMH)...)
	if change != nil {
		change(&sc)
	}
	ride, err := sim.Run(sc, 7)
	if err != nil {
		t.Fatal(err)
	}
	return ride
}

// TestDefaultsAreNamed: values that the rider did not enter are assumed, and listed.
func TestDefaultsAreNamed(t *testing.T) {
	all := []string{"mass_kg", "mass_sd_kg", "rotating_mass_kg", "air.temperature_c", "air.pressure_hpa", "air.humidity_pct", "wind_sd_mps"}
	tests := []struct {
		name string
		ride func(r *sensors.Ride)
		baro bool
		want []string
	}{
		{"all entered", func(*sensors.Ride) {}, false, nil},
		{"nothing entered", func(r *sensors.Ride) { *r = sensors.UnknownRide() }, false, all},
		{"nothing entered, barometer on board", func(r *sensors.Ride) { *r = sensors.UnknownRide() }, true,
			slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == "air.pressure_hpa" })},
		{"wheels not entered", func(r *sensors.Ride) { r.RotatingMass = math.NaN() }, false, []string{"rotating_mass_kg"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			log := &sensors.Log{Ride: sensors.Ride{Mass: 290, MassSD: 3, RotatingMass: 12, WindSD: 1,
				Air: sensors.Air{Temperature: 20, TemperatureEnd: math.NaN(), Pressure: 100000, Humidity: 0.5}}}
			tt.ride(&log.Ride)
			if tt.baro {
				log.Pressure = []sensors.Pressure{{T: 0, Pa: 95000}, {T: 1, Pa: 95100}}
			}
			before := log.Ride
			known := settle(log)
			if !slices.Equal(known.defaults, tt.want) {
				t.Errorf("defaults %q, want %q", known.defaults, tt.want)
			}
			r := known.ride
			for name, v := range map[string]float64{"mass": r.Mass, "its sd": r.MassSD, "wheels": r.RotatingMass, "wind": r.WindSD,
				"temperature": r.Air.Temperature, "pressure": r.Air.Pressure, "humidity": r.Air.Humidity, "density": known.air.Density().X} {
				if math.IsNaN(v) || v == 0 {
					t.Errorf("%s is %v", name, v)
				}
			}
			if tt.baro && r.Air.Pressure != 95050 {
				t.Errorf("pressure %v, want the barometer's", r.Air.Pressure)
			}
			if log.Ride.Bike != before.Bike || math.Float64bits(log.Ride.Mass) != math.Float64bits(before.Mass) {
				t.Error("the log was changed")
			}
		})
	}
}

// TestUnknownMass: without a mass the figures come with a warning and an
// uncertainty of about a fifth.
func TestUnknownMass(t *testing.T) {
	t.Parallel()
	ride := shortRide(t, func(sc *sim.Scenario) { sc.Entered.Nothing = true })
	result, err := Analyse(context.Background(), ride.Log, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Contains(result.Defaults, "mass_kg") || !finding.Any(result.Warnings, codeUsualMass) {
		t.Errorf("defaults %q, warnings %q", result.Defaults, result.Warnings)
	}
	if len(result.RoadLoads) != 1 {
		t.Fatalf("%d road loads", len(result.RoadLoads))
	}
	if l := result.RoadLoads[0]; l.CdA.SE < 0.15*l.CdA.X {
		t.Errorf("CdA %v ± %v is too sure of itself", l.CdA.X, l.CdA.SE)
	}
}

// TestProgressRises: the share rises from 0 to 1, stage by stage.
// TestMassInPounds: an implausibly high mass gives a warning that it may be in
// pounds, whether it was entered for the ride or for a setup.
func TestMassInPounds(t *testing.T) {
	nan := math.NaN()
	for _, tt := range []struct {
		name        string
		ride, setup float64 // kg
		said        float64 // kg if it was in pounds; 0: no warning
	}{
		{"639", 639, nan, 289.8}, {"of a setup", 280, 700, 317.5}, {"of a setup alone", nan, 640, 290.3},
		{"a large tourer with two riders", 490, nan, 0}, {"usual", 290, 300, 0}, {"unknown", nan, nan, 0},
	} {
		ride := sensors.UnknownRide()
		ride.Mass = tt.ride
		ride.Setups = []sensors.Setup{{Name: "a", Mass: tt.setup}}
		said := 0.0
		for _, w := range settle(&sensors.Log{Ride: ride}).warnings {
			if x, ok := w.Arg("pounds"); ok && w.Code == codeMaybePounds {
				said = x.X
			}
		}
		if math.Abs(said-tt.said) > 0.1 {
			t.Errorf("%s: %.1f kg, want %.1f", tt.name, said, tt.said)
		}
	}
}

func TestProgressRises(t *testing.T) {
	t.Parallel()
	ride := shortRide(t, nil)
	last := 0.0
	var stages []Stage
	_, err := Analyse(context.Background(), ride.Log, Options{Progress: func(stage Stage, share float64) {
		if share < last || share > 1 {
			t.Errorf("%s: the share goes from %v to %v", stage, last, share)
		}
		last = share
		if !slices.Contains(stages, stage) {
			stages = append(stages, stage)
		}
	}})
	if err != nil {
		t.Fatal(err)
	}
	if want := []Stage{Smoothing, Finding, Measuring, Fitting}; !reflect.DeepEqual(stages, want) || last != 1 {
		t.Errorf("stages %q up to %v", stages, last)
	}
}

// TestBrief: the brief analysis for a halt gives the same runs and marks,
// without the slow parts.
func TestBrief(t *testing.T) {
	t.Parallel()
	ride := shortRide(t, nil)
	whole, err := Analyse(context.Background(), ride.Log, Options{})
	if err != nil {
		t.Fatal(err)
	}
	brief, err := Analyse(context.Background(), ride.Log, Options{Brief: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(brief.Runs) != len(whole.Runs) || len(brief.RoadLoads) != 0 || len(whole.RoadLoads) != 1 {
		t.Fatalf("%d and %d runs, %d and %d road loads", len(brief.Runs), len(whole.Runs), len(brief.RoadLoads), len(whole.RoadLoads))
	}
	for i := range brief.Runs {
		if a, b := fmt.Sprint(brief.Runs[i].Marks), fmt.Sprint(whole.Runs[i].Marks); a != b { // as text, since NaN does not equal NaN
			t.Errorf("run %d has other marks", brief.Runs[i].ID)
		}
	}
}

// TestCancel: an analysis ends with the context's error.
func TestCancel(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Analyse(ctx, shortRide(t, nil).Log, Options{}); !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
}

// TestEmptyLog: a log without a ride gives an error, not a result.
func TestEmptyLog(t *testing.T) {
	_, err := Analyse(context.Background(), &sensors.Log{Ride: sensors.UnknownRide()}, Options{})
	var input *sensors.InputError
	if !errors.As(err, &input) || input.Remedy.IsZero() {
		t.Errorf("got %v, want an error that says what to do", err)
	}
}

// TestSameAnswerTwice: the result does not depend on the order in which the cores work.
func TestSameAnswerTwice(t *testing.T) {
	t.Parallel()
	ride := shortRide(t, nil)
	a, errA := Analyse(context.Background(), ride.Log, Options{})
	b, errB := Analyse(context.Background(), ride.Log, Options{})
	if errA != nil || errB != nil {
		t.Fatal(errA, errB)
	}
	if len(a.RoadLoads) != 1 || len(b.RoadLoads) != 1 || a.RoadLoads[0].CdA != b.RoadLoads[0].CdA || len(a.Runs) != len(b.Runs) {
		t.Errorf("the second analysis of a log differs from the first")
	}
}

// TestNoPositions: coast-downs of unknown direction are kept, with a caution.
func TestNoPositions(t *testing.T) {
	t.Parallel()
	log := shortRide(t, nil).Log
	for i := range log.Fixes {
		f := sensors.NewFix(log.Fixes[i].T, log.Fixes[i].Speed)
		log.Fixes[i] = f
	}
	result, err := Analyse(context.Background(), log, Options{})
	if err != nil {
		t.Fatal(err)
	}
	singles := 0
	for _, r := range result.Runs {
		if r.Kind == CoastDown && r.Accepted() && finding.Any(r.Cautions, "pair.no_direction") {
			singles++
		}
	}
	if singles != 4 || len(result.RoadLoads) != 0 {
		t.Errorf("%d coast-downs say that their direction is not known, %d road loads", singles, len(result.RoadLoads))
	}
}
