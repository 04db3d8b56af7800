package runs

import (
	"context"
	"math"
	"testing"

	"stillair/runs/power"
	"stillair/sensors/sim"
)

// TestGearOfPulls rides an invented bike's pulls there and back in the fourth
// gear and holds what is found of the gear, whatever the rider told: right, or
// nothing.
func TestGearOfPulls(t *testing.T) {
	const fourth = 193.0 // 1/min for each m/s of the invented naked bike
	tests := []struct {
		name  string
		gears bool
		limit float64
	}{
		{"gears told", true, math.NaN()},
		{"the engine's limit alone", false, 9500},
		{"nothing", false, math.NaN()},
	}
	sc := sim.DefaultScenario(sim.Naked())
	sc.Phone.Rate = 200
	sc.Plan = append(sim.Launches(1, 0, 300), sim.Pulls(2, 4)...)
	ride, err := sim.Run(sc, 3)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			log := *ride.Log
			if !tt.gears {
				log.Ride.Gears = nil
			}
			log.Ride.LimitRPM = tt.limit
			res, err := Analyse(context.Background(), &log, Options{})
			if err != nil {
				t.Fatal(err)
			}
			if len(res.Powers) != 1 {
				t.Fatalf("%d power curves, want the pulls in one", len(res.Powers))
			}
			p := res.Powers[0]
			t.Logf("gear %q, %.1f/min for each m/s, from %d pulls", p.Gear, p.RPMPerMPS, len(p.Curve.Pulls))
			if tt.gears && p.Gear != "4" {
				t.Errorf("gear %q, want 4", p.Gear)
			}
			if known := !math.IsNaN(p.RPMPerMPS); known && math.Abs(p.RPMPerMPS/fourth-1) > 0.01 {
				t.Errorf("%.1f/min for each m/s, want %.0f or nothing", p.RPMPerMPS, fourth)
			}
		})
	}
}

// TestPullsThatBelongTogether holds which pulls share a curve.
func TestPullsThatBelongTogether(t *testing.T) {
	pull := func(gear string, ratio, from, to float64) gearedPull {
		return gearedPull{Revs: Revs{Gear: gear, RPMPerMPS: ratio}, pull: power.Pull{V: []float64{from, to}}}
	}
	nan := math.NaN()
	tests := []struct {
		name   string
		pulls  []gearedPull
		groups int
	}{
		{"one gear", []gearedPull{pull("4", 193, 11, 46), pull("4", 193, 12, 44)}, 1},
		{"two gears", []gearedPull{pull("4", 193, 11, 46), pull("6", 146, 11, 46)}, 2},
		{"one of them not known", []gearedPull{pull("4", 193, 11, 46), pull("", nan, 12, 45)}, 1},
		{"not known, other speeds", []gearedPull{pull("4", 193, 11, 30), pull("", nan, 25, 45)}, 2},
		{"found, not named", []gearedPull{pull("", 192, 11, 46), pull("", 194, 11, 44)}, 1},
	}
	for _, tt := range tests {
		if got := len(bySetupAndGear(tt.pulls)); got != tt.groups {
			t.Errorf("%s: %d curves, want %d", tt.name, got, tt.groups)
		}
	}
}
