package view

import (
	"strings"
	"testing"

	"stillair/app/store"
	"stillair/export/results"
	"stillair/runs/effect"
	"stillair/runs/measure"
)

// TestSeasonBattery compares with a calculation by hand: at 100 km/h 231.5 N for
// the air and 54.5 N for the tyres are 286 J/m, of which 85 % come from each
// joule: 93 Wh/km, and 12.5 kWh last for 134 km; a mile is 1.609 km, and 60 mph
// are slower.
func TestSeasonBattery(t *testing.T) {
	battery := 12.5
	load := effect.Load{CdA: measure.Value{X: 0.5, SE: 0.001}, Crr: measure.Value{X: 0.02, SE: 0.0001}, K: 0.004, Mass: 250, Density: 1.2, Gravity: 9.81}
	ask := SeasonAsk{Season: &results.SeasonDocument{Bikes: []results.SeasonBike{{Bike: "quiet"}}}, Garage: []store.Bike{{Name: "loud"}, {Name: "quiet", Battery: &battery}},
		Loads: []SetupLoad{{Bike: "loud", Setup: "bare", Load: load}, {Bike: "quiet", Setup: "bare", Load: load}}}
	v := english().Season(ask)
	if len(v.Battery) != 1 || v.Battery[0].Reading.Spoken() != "93 ± 11 Wh/km" || v.Battery[0].Words != "134 ± 15 km from 12.5 kWh" || !strings.Contains(v.Steady, "100 km/h") || !strings.Contains(v.Drive, "85 ± 10 %") {
		t.Errorf("%+v", v)
	}
	if mph := imperial().Season(ask); mph.Battery[0].Reading.Unit != "Wh/mi" || !strings.Contains(mph.Battery[0].Words, "mi from") || !strings.Contains(mph.Steady, "60 mph") {
		t.Errorf("%+v", mph.Battery)
	}
	ask.Garage[1].Battery = nil
	if v := english().Season(ask); len(v.Battery) > 0 {
		t.Errorf("of a bike without a battery: %+v", v.Battery)
	}
}
