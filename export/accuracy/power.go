package accuracy

import (
	"math"

	"gonum.org/v1/gonum/floats"

	"stillair/runs/effect"
	"stillair/runs/measure"
	"stillair/runs/power"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// pulls measures power at the road from pulls in one gear, one each way, with
// the road load from coast-downs of the same ride.
func pulls() Study {
	s := Study{Name: "power", Title: "Power at the road", Unit: percent,
		About: "One pull each way in fourth gear and three pairs of coast-downs, from the log to the result, in a wind of 1.5 m/s and with a mass that is entered 1 % wrong. The truth is the force of the engine at the road times the speed, its own inertia left out. The bound is the uncertainty of a curve through the true motion with the size of every error known, at the bandwidth that such a curve takes; a smoother curve, at the price of some bias, may lie below it."}
	for _, b := range sim.Bikes() {
		s.Cases = append(s.Cases, Case{Name: shortName(b), Seeds: 200,
			Limits: []Limit{atMost(peak, Bias, 0.005), atMost(peak, Spread, 0.02), atMost(peak, OverBound, 1.10), inside(peak, Coverage, 0.93, 0.97), inside(along, Coverage, 0.92, 0.98), inside(curved, HitRate, 0.98, 1)},
			Ride:   func(seed uint64) (Record, error) { return pullRide(b, seed) }})
	}
	return s
}

const (
	peak   = "peak power"
	along  = "power along the curve"
	curved = "a curve comes out"
)

func pullRide(b sim.Bike, seed uint64) (Record, error) {
	sc := sim.DefaultScenario(b)
	// a spread of entered masses that is the same for any number of seeds
	sc.Entered.MassSD = 0.01 * b.Mass
	sc.Entered.MassError = sc.Entered.MassSD * spreadOut(seed)
	sc.Plan = append(sim.CoastPairs(3, 110*units.KMH, 30*units.KMH), sim.Pulls(1, 4)...)
	ride, result, err := wholeRide(sc, seed)
	if err != nil {
		return Record{}, err
	}
	var r Record
	r.once(curved, len(result.Powers) == 1)
	if len(result.Powers) != 1 {
		return r, nil
	}
	c := result.Powers[0].Curve
	truth := truePower(ride.Truth, c.Speed)
	best, err := powerBound(sc, ride)
	if err != nil {
		return Record{}, err
	}
	_, top, _ := c.Peak()
	at := floats.MaxIdx(truth)
	highest := truth[at]
	r.add(peak, top.X/highest-1, top.SE/highest, best.At(c.Speed[at]).SE/highest)
	for i := 0; i < len(c.Speed); i += max(1, len(c.Speed)/8) {
		if math.IsNaN(truth[i]) {
			continue
		}
		r.add(along, c.Power[i].X/truth[i]-1, c.Power[i].SE/truth[i], best.At(c.Speed[i]).SE/truth[i])
	}
	return r, nil
}

// powerBound is the curve that the true motion would give, with the
// uncertainties that the bounds of motion and road load leave in it, and with
// the sizes of wind, slope and mass error as they were drawn. Its bandwidth is
// what the true motion asks for, so a smoother curve may be less uncertain.
func powerBound(sc sim.Scenario, ride *sim.Ride) (*power.Curve, error) {
	track := knownRide(sc, ride)
	load, err := coastBound(sc, ride)
	if err != nil {
		return nil, err
	}
	bike := power.Bike{MassSD: sc.Entered.MassSD, RotatingMass: sc.Bike.RotatingMass, Load: effect.Load{
		CdA: measure.Value{X: sc.Bike.CdA, SE: root(load.At(0, 0))}, Crr: measure.Value{X: sc.Bike.Crr, SE: root(load.At(1, 1))},
		Cov: load.At(0, 1), K: sc.Bike.CrrSlope, Mass: sc.Bike.Mass, Density: sc.Air.Density, Gravity: sc.Road.Gravity}}
	day := power.Day{WindSD: sc.Wind.SD, GustSD: sc.Wind.GustRatio * sc.Wind.SD, GustTime: sc.Wind.GustTau, GradeSD: levelRoad}
	var pulls []power.Stretch
	for i, d := range ride.Truth.Of(sim.KindPull) {
		pulls = append(pulls, power.Stretch{From: d.Start, To: d.End, Dir: float64(1 - 2*(i%2)), Pair: i/2 + 1})
	}
	return power.Bound(track, pulls, bike, day)
}

// levelRoad is the slope's standard deviation where the road is level: small,
// and not zero, which the curve would not take.
const levelRoad = 1e-5

// spreadOut turns seeds into normal numbers whose fractions of a turn are
// spread evenly (the golden ratio's multiples).
func spreadOut(seed uint64) float64 {
	_, part := math.Modf(float64(seed) * (math.Sqrt(5) - 1) / 2)
	return math.Sqrt2 * math.Erfinv(2*math.Min(math.Max(part, 1e-6), 1-1e-6)-1)
}

// truePower is the engine's power at the road at each speed, W: the mean over
// the pulls that reach it. It is not a number where none does, though the fit, which
// knows speeds to within its errors, takes it for reached.
func truePower(truth *sim.Truth, speeds []float64) []float64 {
	out := make([]float64, len(speeds))
	events := truth.Of(sim.KindPull)
	for i, v := range speeds {
		n := 0.0
		for _, d := range events {
			if t := truth.TimeAtSpeed(d.Start, v); t <= d.End {
				out[i] += driveAt(truth, t) * v
				n++
			}
		}
		out[i] /= n
	}
	return out
}

// driveAt is the force of the engine at the road, N.
func driveAt(truth *sim.Truth, t float64) float64 {
	m := truth.Moments
	for lo, hi := 0, len(m)-1; ; {
		if hi-lo <= 1 {
			u := (t - m[lo].T) / (m[hi].T - m[lo].T)
			return m[lo].Drive + u*(m[hi].Drive-m[lo].Drive)
		}
		if mid := (lo + hi) / 2; m[mid].T <= t {
			lo = mid
		} else {
			hi = mid
		}
	}
}
