package runs

import (
	"context"
	"flag"
	"math"
	"sync"
	"testing"

	"stillair/runs/compare"
	"stillair/sensors/finding"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// unenteredRides is the number of rides with a load that was not entered.
var unenteredRides = flag.Int("unentered", 2, "how many rides to analyse with, and as many without, a load that was not entered")

// loadedRide is A B B A with coast-downs and pulls, B with more drag and more
// weight. The rider enters neither weight.
func loadedRide(drag, kilos float64, seed uint64) (*Result, error) {
	b := sim.Naked()
	sc := sim.DefaultScenario(b)
	sc.Wind.SD = 0.5
	plain, loaded := sim.Setup{Name: "plain"}, sim.Setup{Name: "loaded", CdA: drag * b.CdA, Mass: b.Mass + kilos}
	for _, s := range []sim.Setup{plain, loaded, loaded, plain} {
		sc.Plan = append(sc.Plan, sim.Change{Setup: s, Seconds: 60})
		sc.Plan = append(sc.Plan, sim.CoastPairs(1, 110*units.KMH, 30*units.KMH)...)
		sc.Plan = append(sc.Plan, sim.Pulls(1, 4)...)
	}
	ride, err := sim.Run(sc, seed)
	if err != nil {
		return nil, err
	}
	for i := range ride.Log.Ride.Setups {
		ride.Log.Ride.Setups[i].Mass = math.NaN()
	}
	return Analyse(context.Background(), ride.Log, Options{})
}

// TestUnenteredLoad: a load of 20 kg that was not entered, with 4 % more drag, is
// noticed in the pulls of nine rides in ten, and no ride reports less drag instead
// of more. Without a load no more than one ride in ten reports one.
func TestUnenteredLoad(t *testing.T) {
	t.Parallel()
	rides := *unenteredRides
	if testing.Short() {
		rides = 1
	}
	for _, c := range []struct {
		name        string
		kilos       float64
		least, most float64 // share of rides that report it
	}{{"20 kg more", 20, 0.9, 1}, {"nothing more", 0, 0, 0.1}} {
		t.Run(c.name, func(t *testing.T) {
			var lock sync.Mutex
			var n, heavier, lighter, less, more float64
			parallel(rides, func(i int) {
				result, err := loadedRide(1.04, c.kilos, uint64(i)+7000)
				if err != nil || len(result.Compared) != 1 || result.Compared[0].CdA == nil {
					t.Errorf("seed %d: no comparison: %v", i, err)
					return
				}
				lock.Lock()
				defer lock.Unlock()
				v := result.Compared[0]
				n++
				heavier += one(finding.Any(v.Notes, codeHeavier))
				lighter += one(finding.Any(v.Notes, codeLighter))
				less += one(v.CdA.Finding == compare.Differs && v.CdA.Percent < 0)
				more += one(v.CdA.Finding == compare.Differs && v.CdA.Percent > 0)
				if v.Power != nil {
					t.Logf("seed %d: power %+.1f %% (%.1f to %.1f), drag %+.1f %% (%.1f to %.1f)", i, v.Power.Percent, v.Power.CIPercent[0], v.Power.CIPercent[1], v.CdA.Percent, v.CdA.CIPercent[0], v.CdA.CIPercent[1])
				}
			})
			t.Logf("%.0f rides: heavier %.0f, lighter %.0f; less drag for 4 %% more %.0f, more %.0f", n, heavier, lighter, less, more)
			if heavier < c.least*n || heavier+lighter > c.most*n+1 || c.kilos > 0 && lighter > 0 || less > 0 {
				t.Errorf("of %.0f rides %.0f are called heavier, %.0f lighter, %.0f with less drag", n, heavier, lighter, less)
			}
		})
	}
}

// TestOftenPart: several pulls at part throttle among those that count
// invalidate the conclusion about the weight; a single one does not.
func TestOftenPart(t *testing.T) {
	at := func(setup string, reasons ...finding.Code) Run {
		r := Run{Kind: Pull, Setup: setup}
		for _, c := range reasons {
			r.Reasons = append(r.Reasons, finding.New(c))
		}
		return r
	}
	full, part, short := at("a"), at("b", codeUnproven), at("b", "pull.too_short")
	tests := []struct {
		name string
		runs []Run
		want bool
	}{
		{"all full", []Run{full, full, at("b"), at("b")}, false},
		{"one of five at part throttle", []Run{full, full, at("b"), at("b"), part}, false},
		{"as many at part throttle as full", []Run{full, at("b"), part, at("a", codeBelowBike)}, true},
		{"rejected for other causes", []Run{full, at("b"), short, short}, false},
		{"of another setup", []Run{full, at("b"), at("c", codeUnproven), at("c", codeUnproven)}, false},
	}
	for _, tt := range tests {
		if got := oftenPart(&Result{Runs: tt.runs}, Comparison{A: "a", B: "b"}); got != tt.want {
			t.Errorf("%s: %v", tt.name, got)
		}
	}
}
