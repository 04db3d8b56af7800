package runs

import (
	"testing"

	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestPhonesThatShake: with phones at 60 readings a second, or with 18 m/s² of
// vibration, 47 of 48 roll-ons without gaps in the recording are found, and
// none in half an hour of town each.
func TestPhonesThatShake(t *testing.T) {
	t.Parallel()
	tests := []struct {
		name  string
		phone sim.Phone
		bike  sim.Bike
	}{
		{"naked, 60 Hz", sim.BrowserPhone(), sim.Naked()},
		{"tourer, 60 Hz", sim.BrowserPhone(), sim.Tourer()},
		{"sport, 60 Hz", sim.BrowserPhone(), sim.Sport()},
		{"naked, harsh", sim.HarshPhone(), sim.Naked()},
		{"tourer, harsh", sim.HarshPhone(), sim.Tourer()}, // little thrust and much vibration
		{"sport, harsh", sim.HarshPhone(), sim.Sport()},
	}
	for _, tt := range tests {
		if testing.Short() && tt.bike.Name != "invented naked" {
			continue
		}
		each := batch.All(12, 1)
		found, of := make([]int, each), make([]int, each)
		parallel(each, func(i int) {
			sc := sim.DefaultScenario(tt.bike)
			sc.Phone = tt.phone
			sc.Phone.Stamp.GapsPerHour = 0
			sc.Plan = append(sim.Launches(2, 125*units.KMH, 420), sim.RollOns(4, 0, 75*units.KMH, 125*units.KMH)...)
			if i%4 == 0 {
				sc.Plan = append(sc.Plan, sim.Town{Minutes: float64(batch.All(30, 4))})
			}
			ride, result := rideAndResult(t, sc, uint64(i+1))
			if ride == nil {
				return
			}
			last := 0.0
			for _, d := range ride.Truth.Of(sim.KindRollOn) {
				of[i]++
				last = max(last, d.End)
				for _, r := range result.Runs {
					if r.Kind == RollOn && r.Accepted() && r.Start < d.End && r.End > d.Start {
						found[i]++
						break
					}
				}
			}
			for _, r := range result.Runs {
				if r.Start > last+20 && r.Accepted() {
					t.Errorf("%s, seed %d: in town there was no %s at %.0f s, %.0f to %.0f km/h", tt.name, i+1, r.Kind, r.Start, r.FromMPS*3.6, r.ToMPS*3.6)
				}
			}
		})
		hits, all := 0, 0
		for i := range found {
			hits, all = hits+found[i], all+of[i]
		}
		t.Logf("%s: %d of %d roll-ons found", tt.name, hits, all)
		if hits < all-1 && !testing.Short() {
			t.Errorf("%s: %d of %d roll-ons found", tt.name, hits, all)
		}
	}
}
