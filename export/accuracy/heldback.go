package accuracy

import (
	"fmt"
	"math"

	"stillair/runs"
	"stillair/sensors"
	"stillair/sensors/sim"
)

// heldBack are days of five pairs of coast-downs, the last run of which is held
// back all the way, beside the same day without that. Everything before that run
// is the same to the last bit.
func heldBack() []Case {
	const always = 1000
	var out []Case
	for _, c := range []struct {
		name  string
		spoil sim.Spoil
		named bool
	}{
		{"brake of 20 N", sim.Spoil{Kind: sim.Brush, AtSpeed: always, Seconds: always, Size: 20}, false},
		{"brake of 50 N", sim.Spoil{Kind: sim.Brush, AtSpeed: always, Seconds: always, Size: 50}, true},
		{"brake of 120 N", sim.Spoil{Kind: sim.Brush, AtSpeed: always, Seconds: always, Size: 120}, true},
		{"gear left in", sim.Spoil{Kind: sim.GearIn, AtSpeed: always, Seconds: always}, true},
	} {
		limits := []Limit{atMost(moved, Spread, 0.5), atMost(movedNoise, Spread, 0.5)}
		if c.named {
			limits = append(limits, inside(named50, HitRate, 0.95, 1))
		}
		out = append(out, Case{Name: "one run of ten held back: " + c.name, Seeds: 60, Limits: limits,
			Ride: func(seed uint64) (Record, error) { return heldBackRide(c.spoil, c.named, seed) }})
	}
	return out
}

func heldBackRide(spoil sim.Spoil, named bool, seed uint64) (Record, error) {
	sc, _ := mount(withClutch(), seed)
	from, to := coastSpan(sc.Bike)
	sc.Plan = append(sim.CoastPairs(5, from, to), sim.Brake{}, sim.Stand{Seconds: 5})
	_, clean, err := rideAs(sc, seed, nil)
	if err != nil {
		return Record{}, err
	}
	last := sc.Plan[4].(sim.CoastPair)
	last.Spoils[1] = []sim.Spoil{spoil}
	sc.Plan[4] = last
	ride, result, err := rideAs(sc, seed, nil)
	if err != nil {
		return Record{}, err
	}
	r := Record{Notes: []string{sc.Bike.Name}}
	if len(clean.RoadLoads) != 1 || len(result.RoadLoads) != 1 {
		return r, fmt.Errorf("%s: %d and %d road loads: %v", sc.Bike.Name, len(clean.RoadLoads), len(result.RoadLoads), result.Warnings)
	}
	a, b := clean.RoadLoads[0], result.RoadLoads[0]
	r.add(moved, (b.CdA.X-a.CdA.X)/a.CdA.SE, 1, 0)
	r.add(movedNoise, (b.CdA.X-a.CdA.X)/a.CdANoise, 1, 0)
	if named {
		r.once(named50, said(ride.Truth, result))
	}
	return r, nil
}

// said reports whether every spoilt coast-down has a reason or a caution.
func said(truth *sim.Truth, result *runs.Result) bool {
	for _, d := range truth.Of(sim.KindCoastDown) {
		if len(d.Spoilt) == 0 {
			continue
		}
		found := false
		for _, run := range result.Runs {
			found = found || run.Kind == runs.CoastDown && run.Start < d.End && run.End > d.Start && len(run.Reasons)+len(run.Cautions) > 0
		}
		if !found {
			return false
		}
	}
	return true
}

// holes are coast-downs whose motion readings have holes of 0.05 to 1 s.
func holes() Case {
	return Case{Name: "holes in the motion of coast-downs", Seeds: 60,
		Limits: []Limit{inside(realFound, HitRate, 1, 1), inside(cda, Coverage, 0.90, 1), inside(withinFive, HitRate, 1, 1)},
		Ride: func(seed uint64) (Record, error) {
			sc, rng := mount(withClutch(), seed)
			sc.Plan = append(coastDay(&sc, rng), sim.Brake{}, sim.Stand{Seconds: 5})
			ride, result, err := rideAs(sc, seed, func(ride *sim.Ride) *sensors.Log {
				log := *ride.Log
				log.Motion = nil
				for _, m := range ride.Log.Motion {
					if !inHole(ride.Truth, m.T, seed) {
						log.Motion = append(log.Motion, m)
					}
				}
				return &log
			})
			if err != nil {
				return Record{}, err
			}
			r := Record{Notes: []string{sc.Bike.Name}}
			r.nothingWrong(sc, ride, result)
			r.found(sim.KindCoastDown, ride, result)
			r.load(sc, result)
			return r, nil
		}}
}

// inHole reports whether a time lies in the hole of a coast-down, each of another
// length and place.
func inHole(truth *sim.Truth, at float64, seed uint64) bool {
	for i, d := range truth.Of(sim.KindCoastDown) {
		_, part := math.Modf(float64(seed+7*uint64(i)) * 0.618)
		from := d.Start + (0.1+0.8*part)*(d.End-d.Start)
		if at > from && at < from+0.05+0.95*part {
			return true
		}
	}
	return false
}
