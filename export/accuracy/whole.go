package accuracy

import (
	"context"
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs"
	"stillair/runs/roadload"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

func root(x float64) float64 { return math.Sqrt(math.Max(x, 0)) }

func metres(v float64) string { return fmt.Sprintf("%.1f m/s", v) }

// wholeRide simulates a scenario and analyses its log.
func wholeRide(sc sim.Scenario, seed uint64) (*sim.Ride, *runs.Result, error) {
	ride, err := sim.Run(sc, seed)
	if err != nil {
		return nil, nil, fmt.Errorf("the ride cannot be ridden: %w", err)
	}
	result, err := runs.Analyse(context.Background(), ride.Log, runs.Options{})
	return ride, result, err
}

// wholeCoasts measures the whole path from a log to the road load.
func wholeCoasts() Study {
	s := Study{Name: "coast-downs-whole", Title: "Coast-downs, from the log to the result", Unit: percent,
		About: "Five opposite pairs from 110 to 30 km/h as a phone records them: the runs are found, paired and fitted with nothing entered but mass and air."}
	for i, b := range sim.Bikes() {
		for _, c := range []struct {
			name   string
			change func(*sim.Scenario)
		}{
			{"smooth road", func(*sim.Scenario) {}},
			{"calm", func(sc *sim.Scenario) { sc.Wind.SD = 0.5 }},
			{"rough road", func(sc *sim.Scenario) { sc.Road.RoughSD = 0.002 }},
			{farther, func(sc *sim.Scenario) {
				sc.Road.RoughSD, sc.Baro.Rate = 0.002, 0
				sc.Plan = sim.FartherPairs(5, 110*units.KMH, 30*units.KMH, 200)
			}},
			{"twice the gusts", func(sc *sim.Scenario) { sc.Wind.GustRatio *= 2 }},
			{"10 fixes a second", func(sc *sim.Scenario) { sc.Receiver.Rate = 10 }},
		} {
			if i > 0 && c.name != "smooth road" {
				continue
			}
			s.Cases = append(s.Cases, Case{Name: shortName(b) + ", " + c.name, Seeds: 200, Limits: wholeLimits(i, c.name),
				Ride: func(seed uint64) (Record, error) {
					sc := sim.DefaultScenario(b)
					sc.Entered.MassSD = 0.3 // the true mass equals the entered one
					sc.Plan = sim.CoastPairs(5, 110*units.KMH, 30*units.KMH)
					c.change(&sc)
					return coastRide(sc, seed)
				}})
		}
	}
	return s
}

// farther is the rough road for a phone without a barometer.
const farther = "rough road, no barometer, each pair 200 m farther on"

func wholeLimits(bike int, name string) []Limit {
	l := []Limit{inside(cda, Coverage, 0.92, 0.98), inside(crr, Coverage, 0.92, 0.98)}
	if bike == 0 && name == "smooth road" {
		l = append(l, atMost(cda, Bias, 0.005), atMost(cda, Spread, 0.016), atMost(crr, Bias, 0.015), atMost(crr, Spread, 0.027))
	}
	if name == farther {
		l = append(l, atMost(cda, OverBound, 1.4))
	}
	return l
}

func shortName(b sim.Bike) string {
	const made = "invented "
	if len(b.Name) > len(made) && b.Name[:len(made)] == made {
		return b.Name[len(made):]
	}
	return b.Name
}

func coastRide(sc sim.Scenario, seed uint64) (Record, error) {
	ride, result, err := wholeRide(sc, seed)
	if err != nil {
		return Record{}, err
	}
	var r Record
	r.once("a road load comes out", len(result.RoadLoads) == 1)
	if len(result.RoadLoads) != 1 {
		return r, nil
	}
	bound, err := coastBound(sc, ride)
	if err != nil {
		return Record{}, err
	}
	l := result.Estimate.Loads[0] // the intervals of noise: the assumptions hold in these rides
	r.Values = append(r.Values,
		relative(cda, l.CdA, l.CdACI, sc.Bike.CdA, bound.At(0, 0)),
		relative(crr, l.Crr, l.CrrCI, sc.Bike.Crr, bound.At(1, 1)))
	return r, nil
}

// coastBound is the least covariance of CdA and Crr on a smooth road, for the
// runs as they were ridden and the errors as they were made.
func coastBound(sc sim.Scenario, ride *sim.Ride) (*mat.SymDense, error) {
	opts := roadload.DefaultOptions(sc.Wind.SD)
	opts.Slope.SE = 0
	opts.Gravity = sc.Road.Gravity
	opts.Noise.GustSD, opts.Noise.GustTime = sc.Wind.GustRatio*sc.Wind.SD, sc.Wind.GustTau
	opts.Noise.WhiteSD, opts.Noise.DriftSD, opts.Noise.DriftTime = sc.Receiver.WhiteSD, sc.Receiver.CorrSD, sc.Receiver.CorrTau
	opts.Noise.RoadSD = 0
	var input []roadload.Run
	for i, d := range ride.Truth.Of(sim.KindCoastDown) {
		run := roadload.Run{ID: i + 1, Pair: d.Pair, Dir: -1, Mass: sc.Bike.Mass, Inertia: sc.Bike.Mass + sc.Bike.RotatingMass, Density: sc.Air.Density}
		if d.Out {
			run.Dir = 1
		}
		for _, f := range ride.Log.Fixes {
			if t := f.T - ride.Truth.Lag; t >= d.Start && t <= d.End {
				run.T, run.V = append(run.T, t), append(run.V, ride.Truth.V(t))
			}
		}
		input = append(input, run)
	}
	return roadload.Bound(input, []roadload.Design{{CdA: sc.Bike.CdA, Crr: sc.Bike.Crr}}, opts)
}
