package runs

import (
	"math"
	"slices"
	"testing"

	"stillair/runs/pairing"
	"stillair/runs/roadload"
	"stillair/runs/usual"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/sim/batch"
	"stillair/sensors/units"
)

// TestPossible: every published motorcycle is possible (0.18 to 0.7 m²,
// Cossalter, Motorcycle Dynamics), the result of coasting with engine drag is
// not.
func TestPossible(t *testing.T) {
	tests := []struct {
		name     string
		cda, crr float64
		want     bool
	}{
		{"lying behind a fairing", 0.18, 0.012, true},
		{"a tourer with luggage", 0.9, 0.025, true},
		{"chance took the rolling below zero", 0.5, -0.003, true},
		{"a gear left in", 0.43, 0.071, false},
		{"a light engine in top gear", 0.36, 0.043, false},
		{"soft tyres on rough asphalt", 0.6, 0.034, true},
		{"no air at all", 0.02, 0.02, false},
		{"a barn door", 2, 0.02, false},
	}
	for _, tt := range tests {
		l := roadload.Load{CdA: Value{X: tt.cda, SE: 0.02}, Crr: Value{X: tt.crr, SE: 0.002}}
		if got := possible(l); got != tt.want {
			t.Errorf("%s: possible %v, want %v", tt.name, got, tt.want)
		}
	}
}

// TestGearIn: rolling resistances that sources give for tyres on asphalt are hardly
// ever taken for a gear left in, twice as much is mentioned, and what a large engine adds
// is near certain.
func TestGearIn(t *testing.T) {
	tests := []struct {
		name        string
		crr         float64
		least, most float64
	}{
		{"a racing tyre", 0.012, 0, 0},
		{"a motorcycle (Cossalter, Motorcycle Dynamics)", 0.02, 0, gearMentioned},
		{"car tyres on tar macadam (Wong, from memory)", 0.025, 0, gearMentioned},
		{"twice the usual", 0.034, gearMentioned, 0.5},
		{"a 650 single in top gear", usual.Crr + 0.043, 0.99, 1},
	}
	for _, tt := range tests {
		if got := gearIn(Value{X: tt.crr, SE: 0.002}); got < tt.least || got > tt.most {
			t.Errorf("%s: %.4f, want %g to %g", tt.name, got, tt.least, tt.most)
		}
	}
}

// TestNoRoadLoadFromTheEngine: coast-downs with a gear left in all the way give
// no result, whether or not they look like coast-downs, and the reason is
// given.
func TestNoRoadLoadFromTheEngine(t *testing.T) {
	t.Parallel()
	each := batch.Size(20, 2)
	bikes := sim.Bikes()
	parallel(len(bikes)*each, func(i int) {
		sc := sim.DefaultScenario(bikes[i%len(bikes)])
		left := []sim.Spoil{{Kind: sim.GearIn, AtSpeed: 130 * units.KMH, Seconds: 300}}
		for range 3 {
			sc.Plan = append(sc.Plan, sim.CoastPair{From: 110 * units.KMH, To: 40 * units.KMH, Spoils: [2][]sim.Spoil{left, left}})
		}
		ride, result := rideAndResult(t, sc, fresh+uint64(i))
		if ride == nil {
			return
		}
		for _, l := range result.RoadLoads {
			t.Errorf("%s, seed %d: CdA %v, Crr %v out of engine braking", sc.Bike.Name, i, l.CdA, l.Crr)
		}
	})
}

// TestImpossibleSetup: of two setups only the coast-downs of the one with an
// impossible result do not count, whether they have a counterpart or not.
func TestImpossibleSetup(t *testing.T) {
	result := &Result{Runs: []Run{{ID: 1, Kind: CoastDown, Setup: "a", Pair: 1}, {ID: 2, Kind: CoastDown, Setup: "b", Pair: 1},
		{ID: 3, Kind: CoastDown, Setup: "a"}, {ID: 4, Kind: Launch, Setup: "a"}}}
	f := fitted{names: []string{"a", "b"}, runs: []roadload.Run{{ID: 1}, {ID: 2, Setup: 1}}}
	f.places = make([]pairing.Coast, 2)
	result.reject(f, 0, codeImpossibleRun, finding.New(codeImpossible))
	var counts []int
	for _, r := range result.Runs {
		if r.Accepted() {
			counts = append(counts, r.ID)
		}
	}
	if !slices.Equal(counts, []int{2, 4}) || !finding.Any(result.Warnings, codeImpossible) {
		t.Errorf("runs %+v, warnings %v", result.Runs, result.Warnings)
	}
	if rest := f.without(0); len(rest.names) != 1 || rest.names[0] != "b" || len(rest.runs) != 1 || rest.runs[0].Setup != 0 {
		t.Errorf("left over: %+v", rest)
	}
}

// TestCommonResidual: residuals with the same shape in all runs are reported; different
// ones, or those of few runs, are not.
func TestCommonResidual(t *testing.T) {
	tests := []struct {
		name string
		runs int
		left func(run int, v float64) float64
		want bool
	}{
		{"a step at 14 m/s", 6, func(_ int, v float64) float64 { return -0.5 * math.Exp(-math.Pow((v-14)/2, 2)) }, true},
		{"a step at 14 m/s in three runs", 3, func(_ int, v float64) float64 { return -0.5 * math.Exp(-math.Pow((v-14)/2, 2)) }, false},
		{"gusts", 6, func(run int, v float64) float64 { return 0.5 * math.Sin(float64(run*run)+v/4) }, false},
		{"nothing", 6, func(int, float64) float64 { return 0 }, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			est := &roadload.Estimate{}
			for k := range tt.runs {
				f := roadload.RunFit{ID: k + 1}
				for v := 30.0; v > 7; v -= 0.25 {
					f.Fit = append(f.Fit, v)
					f.V = append(f.V, v+tt.left(k, v)+0.05*math.Sin(float64(7*k)+3*v))
				}
				est.Runs = append(est.Runs, f)
			}
			most, at := commonResidual(est, 0)
			if (most > mostInCommon) != tt.want || tt.want && math.Abs(at-14) > 3 {
				t.Errorf("%.2f m/s at %.1f m/s", most, at)
			}
		})
	}
}

// TestEngineBrakingBetweenRollOns: closing the throttle in gear between
// roll-ons, out and back on one road, gives no road load. The limits were not
// tuned on these rides.
func TestEngineBrakingBetweenRollOns(t *testing.T) {
	t.Parallel()
	bikes := sim.Bikes()
	parallel(len(bikes)*batch.Size(12, 1), func(i int) {
		sc := sim.DefaultScenario(bikes[i%len(bikes)])
		for range 6 {
			sc.Plan = append(sc.Plan, sim.RollOn{From: 60 * units.KMH, To: 125 * units.KMH}, sim.EngineBrake{To: 45 * units.KMH}, sim.TurnRound{})
		}
		ride, result := rideAndResult(t, sc, fresh+uint64(i))
		if ride == nil {
			return
		}
		for _, l := range result.RoadLoads {
			t.Errorf("%s, seed %d: CdA %v, Crr %v out of engine braking", sc.Bike.Name, fresh+i, l.CdA, l.Crr)
		}
		for _, r := range result.Runs {
			if r.Kind == CoastDown && r.Accepted() {
				t.Logf("%s, seed %d: engine braking from %.0f to %.0f km/h passes for a coast-down", sc.Bike.Name, fresh+i, r.FromMPS*3.6, r.ToMPS*3.6)
			}
		}
	})
}
