package accuracy

import (
	"math"
	"slices"

	"stillair/runs"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

const nothingFalse = "nothing is found that nobody did"

// detection rides every kind of run and forty minutes of town.
func detection() Study {
	s := Study{Name: "detection", Title: "Finding the runs",
		About: "Launches, roll-ons, pulls, coast-downs and a stop, with engine braking that is none of them, and then forty minutes of town with nothing in it to measure."}
	kinds := []sim.Kind{sim.KindLaunch, sim.KindRollOn, sim.KindPull, sim.KindCoastDown, sim.KindStop}
	for _, b := range sim.Bikes() {
		limits := []Limit{inside(nothingFalse, HitRate, 1, 1)}
		for _, k := range kinds {
			limits = append(limits, inside(string(k), HitRate, 1, 1))
		}
		s.Cases = append(s.Cases, Case{Name: shortName(b), Seeds: 20, Limits: limits,
			Ride: func(seed uint64) (Record, error) { return detect(b, kinds, seed) }})
	}
	return s
}

// everything is a plan with every kind of run.
func everything() []sim.Act {
	plan := sim.Launches(2, 120*units.KMH, 420)
	plan = append(plan, sim.RollOns(2, 0, 60*units.KMH, 125*units.KMH)...)
	plan = append(plan, sim.Pulls(1, 4)...)
	plan = append(plan, sim.CoastPairs(2, 110*units.KMH, 30*units.KMH)...)
	plan = append(plan, sim.Reach{Speed: 30}, sim.EngineBrake{To: 8})
	plan = append(plan, sim.Reach{Speed: 30}, sim.Brake{Decel: 6}, sim.Stand{Seconds: 5})
	return append(plan, sim.Town{Minutes: 40})
}

func detect(b sim.Bike, kinds []sim.Kind, seed uint64) (Record, error) {
	sc := sim.DefaultScenario(b)
	sc.Plan = everything()
	ride, result, err := wholeRide(sc, seed)
	if err != nil {
		return Record{}, err
	}
	var r Record
	known := map[int]bool{}
	for _, kind := range kinds {
		deeds := ride.Truth.Of(kind)
		hits := 0
		for _, d := range deeds {
			if foundOnce(result, d, known) {
				hits++
			}
		}
		r.count(string(kind), hits, len(deeds))
	}
	wrong := false
	for _, run := range result.Runs {
		wrong = wrong || run.Accepted() && !known[run.ID]
	}
	r.once(nothingFalse, !wrong)
	return r, nil
}

// foundOnce looks for the run of a deed and notes which runs it explains: a
// roll-on in one gear is a pull as well, and a pull runs through the speeds of
// a roll-on.
func foundOnce(result *runs.Result, d sim.Deed, known map[int]bool) bool {
	open := func(k string) bool { return k == string(runs.RollOn) || k == string(runs.Pull) }
	hits := 0
	for _, run := range result.Runs {
		if !run.Accepted() || run.End < d.Start || run.Start > d.End {
			continue
		}
		if string(run.Kind) == string(d.Kind) {
			hits++
		}
		if string(run.Kind) == string(d.Kind) || open(string(run.Kind)) && open(string(d.Kind)) {
			known[run.ID] = true
		}
	}
	return hits == 1
}

// pulls measures power at the road from pulls in one gear, one each way, with
// the road load from coast-downs of the same ride.
func pulls() Study {
	s := Study{Name: "power", Title: "Power at the road", Unit: percent,
		About: "One pull each way in fourth gear and three pairs of coast-downs, the whole way from the log, in a wind of 1.5 m/s and with a mass that is told 1 % wrong. The truth is the force of the engine at the road times the speed, its own inertia left out."}
	for _, b := range sim.Bikes() {
		s.Cases = append(s.Cases, Case{Name: shortName(b), Seeds: 200,
			Limits: []Limit{atMost(peak, Bias, 0.01), atMost(peak, Spread, 0.02), inside(along, Coverage, 0.92, 0.98), inside(curved, HitRate, 0.98, 1)},
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
	// a spread of told masses that is the same for any number of seeds
	sc.Told.MassSD = 0.01 * b.Mass
	sc.Told.MassError = sc.Told.MassSD * spreadOut(seed)
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
	_, top, _ := c.Peak()
	highest := slices.Max(truth)
	r.add(peak, top.X/highest-1, top.SE/highest, 0)
	for i := 0; i < len(c.Speed); i += max(1, len(c.Speed)/8) {
		r.add(along, c.Power[i].X/truth[i]-1, c.Power[i].SE/truth[i], 0)
	}
	return r, nil
}

// spreadOut turns seeds into normal numbers whose fractions of a turn are
// spread evenly (the golden ratio's multiples).
func spreadOut(seed uint64) float64 {
	_, part := math.Modf(float64(seed) * (math.Sqrt(5) - 1) / 2)
	return math.Sqrt2 * math.Erfinv(2*math.Min(math.Max(part, 1e-6), 1-1e-6)-1)
}

// truePower is the engine's power at the road at each speed, W: the mean over
// the pulls.
func truePower(truth *sim.Truth, speeds []float64) []float64 {
	out := make([]float64, len(speeds))
	deeds := truth.Of(sim.KindPull)
	for i, v := range speeds {
		for _, d := range deeds {
			t := truth.TimeAtSpeed(d.Start, v)
			out[i] += driveAt(truth, t) * v / float64(len(deeds))
		}
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
