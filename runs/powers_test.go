package runs

import (
	"context"
	"math"
	"testing"

	"stillair/runs/power"
	"stillair/sensors/sim"
)

// TestGearOfPulls simulates pulls there and back in fourth gear and checks the
// gear found, for any entries of the rider: the right one, or none.
func TestGearOfPulls(t *testing.T) {
	const fourth = 193.0 // 1/min per m/s of the invented naked bike
	tests := []struct {
		name  string
		gears bool
		limit float64
	}{
		{"gears entered", true, math.NaN()},
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

// TestPullsThatBelongTogether checks which pulls share a curve.
func TestPullsThatBelongTogether(t *testing.T) {
	pull := func(ratio, watts, from, to float64) gearedPull {
		d := driven(watts, from, to, math.NaN())
		return gearedPull{Revs: Revs{RPMPerMPS: ratio}, pull: power.Pull{V: d.v}, drive: d}
	}
	nan := math.NaN()
	tests := []struct {
		name   string
		pulls  []gearedPull
		groups int
	}{
		{"one gear", []gearedPull{pull(193, 5e4, 11, 42), pull(193, 5e4, 12, 40)}, 1},
		{"two gears", []gearedPull{pull(193, 5e4, 11, 42), pull(146, 5e4, 11, 42)}, 2},
		{"one of them not known", []gearedPull{pull(193, 5e4, 11, 42), pull(nan, 5e4, 12, 41)}, 1},
		{"not known, and weaker", []gearedPull{pull(193, 5e4, 11, 42), pull(nan, 4e4, 12, 40)}, 2},
		{"not known, a part of the other's speeds", []gearedPull{pull(nan, 5e4, 11, 42), pull(nan, 5e4, 20, 35)}, 1},
		{"not known, other speeds", []gearedPull{pull(193, 5e4, 11, 28), pull(nan, 5e4, 25, 42)}, 2},
		{"one bridges two", []gearedPull{pull(193, 5e4, 11, 22), pull(193, 5e4, 25, 42), pull(193, 5e4, 15, 35)}, 1},
		{"found, not quite the same", []gearedPull{pull(192, 5e4, 11, 42), pull(194, 5e4, 11, 40)}, 1},
	}
	for _, tt := range tests {
		if got := len(bySetupAndGear(tt.pulls)); got != tt.groups {
			t.Errorf("%s: %d curves, want %d", tt.name, got, tt.groups)
		}
	}
}
