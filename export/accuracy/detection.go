package accuracy

import (
	"stillair/runs"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

const nothingFalse = "nothing is found that nobody did"

// detection simulates every kind of run and forty minutes of town riding.
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
		events := ride.Truth.Of(kind)
		hits := 0
		for _, d := range events {
			if foundOnce(result, d, known) {
				hits++
			}
		}
		r.count(string(kind), hits, len(events))
	}
	wrong := false
	for _, run := range result.Runs {
		wrong = wrong || run.Accepted() && !known[run.ID]
	}
	r.once(nothingFalse, !wrong)
	return r, nil
}

// foundOnce finds the run of an event and marks the runs that it explains: a
// roll-on in one gear is a pull as well, and a pull runs through the speeds of
// a roll-on.
func foundOnce(result *runs.Result, d sim.Event, known map[int]bool) bool {
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
