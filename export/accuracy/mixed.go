package accuracy

import (
	"fmt"
	"math"
	"math/rand/v2"

	"stillair/runs"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// The figures of power in mixed riding.
const (
	ridden   = "speeds ridden at full throttle that a curve covers"
	oneGear  = "a curve is of one gear"
	fullOnly = "a curve has no part throttle in it"
)

// mixed measures power where a ride has pulls in several gears and over different
// speeds, roll-ons, and part throttle in the same gears among them.
func mixed() Study {
	s := Study{Name: "power-mixed", Title: "Power in mixed riding", Unit: percent,
		About: "Three pairs of coast-downs, and in any order pulls in two gears over different parts of their range, roll-ons in the highest gear, accelerations at part throttle in the same gears and in half of the rides launches. The truth is the force of the engine at the road times the speed, at full throttle in the gear of the curve. Of the speeds ridden at full throttle only those count at which the throttle was open all the way. A phone in a soft bag hardly feels the engine, so that nothing tells the gear."}
	add := func(name string, bag bool, bikes []sim.Bike) {
		s.Cases = append(s.Cases, Case{Name: name, Seeds: 60,
			Limits: []Limit{atMost(peak, Bias, 0.01), atMost(peak, Spread, 0.025), inside(peak, Coverage, 0.90, 1), inside(along, Coverage, 0.90, 1),
				inside(ridden, HitRate, 0.95, 1), inside(oneGear, HitRate, 0.99, 1), inside(fullOnly, HitRate, 0.99, 1)},
			Ride: func(seed uint64) (Record, error) { return mixedRide(bikes, bag, seed) }})
	}
	for _, b := range withClutch() {
		add(shortName(b), false, []sim.Bike{b})
	}
	add("phone in a soft bag", true, withClutch())
	return s
}

func mixedRide(bikes []sim.Bike, bag bool, seed uint64) (Record, error) {
	sc, rng := mount(bikes, seed)
	b := sc.Bike
	sc.Phone = sim.DefaultPhone()
	if bag {
		sc.Phone = sim.TankBagPhone()
	}
	sc.Phone.Shake.Orders = sim.FiringOrders(b.Cylinders)
	sc.Entered.MassSD = 0.01 * b.Mass
	sc.Entered.MassError = sc.Entered.MassSD * spreadOut(seed)
	sc.Road.RoughSD = 0
	from, to := coastSpan(b)
	sc.Plan = append(sim.CoastPairs(3, from, to), mixedPlan(b, rng)...)
	sc.Plan = append(sc.Plan, sim.Brake{}, sim.Stand{Seconds: 10})
	ride, result, err := rideAs(sc, seed, nil)
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", b.Name, err)
	}
	r := Record{Notes: []string{sc.Bike.Name}}
	covered := map[int]map[int]bool{}
	for _, p := range result.Powers {
		r.curve(p, ride.Truth, result, covered)
	}
	r.covers(ride.Truth, covered)
	return r, nil
}

// mixedPlan is the plan of a mixed ride in any order. Pulls come as two, there
// and back, and so do the rest.
func mixedPlan(b sim.Bike, rng *rand.Rand) (plan []sim.Act) {
	var twos [][]sim.Act
	top := len(b.Gears)
	for _, gear := range []int{top - 3, top - 2} {
		limit := b.Engine.ShiftRPM / b.Gears[gear-1]
		low, high := (0.25+0.1*rng.Float64())*limit, (0.9+0.1*rng.Float64())*min(limit, 46)
		pull := sim.Pull{Gear: gear, From: low, To: high}
		part := pull
		part.From, part.To = low+0.15*limit*rng.Float64(), high-0.1*limit*rng.Float64()
		some := func() sim.Act {
			return sim.PartOpen{Gear: gear, From: low, To: 0.85 * high, Share: 0.35 + 0.4*rng.Float64()}
		}
		twos = append(twos, []sim.Act{pull, pull}, []sim.Act{part, part}, []sim.Act{some(), some()})
	}
	from, to, _ := spanOf(b)
	roll := sim.RollOn{From: from, To: min(to, 34)}
	twos = append(twos, []sim.Act{roll, roll}, []sim.Act{partOf(b, from, 0.9*to, rng), sim.Hold{Speed: from, Seconds: 5}})
	if rng.IntN(2) == 0 {
		launch := sim.Launch{ToSpeed: from + 8}
		twos = append(twos, []sim.Act{launch, launch})
	}
	rng.Shuffle(len(twos), func(i, j int) { twos[i], twos[j] = twos[j], twos[i] })
	for _, two := range twos {
		for _, act := range two {
			plan = append(plan, act, sim.Reach{Speed: 12}, sim.TurnRound{})
		}
	}
	return plan
}

// fullOpen is the throttle from which on it counts as full.
const fullOpen = 0.99

// fullAt are the events at full throttle that cover most of a run, and their
// gear.
func fullAt(truth *sim.Truth, run runs.Run) (d sim.Event, full bool) {
	for _, d := range truth.Events {
		if min(run.End, d.End)-max(run.Start, d.Start) > 0.7*(run.End-run.Start) {
			return d, d.Kind == sim.KindPull || d.Kind == sim.KindRollOn
		}
	}
	return d, false
}

// curve notes one curve beside the truth, and in covered which cells of speed of
// which gear it covers.
func (r *Record) curve(p runs.PowerCurve, truth *sim.Truth, result *runs.Result, covered map[int]map[int]bool) {
	gear, same, allFull := 0, true, true
	for _, id := range p.Curve.Pulls {
		d, full := fullAt(truth, result.Runs[id-1])
		allFull = allFull && full
		if gear == 0 {
			gear = d.Gear
		}
		same = same && d.Gear == gear
	}
	r.once(oneGear, same)
	r.once(fullOnly, allFull)
	if !same || !allFull {
		r.Notes = append(r.Notes, fmt.Sprintf("curve of gear %q: pulls %v", p.Gear, p.Curve.Pulls))
		return
	}
	if covered[gear] == nil {
		covered[gear] = map[int]bool{}
	}
	c := p.Curve
	want, highest := fullPower(truth, gear, c.Speed), 0.0
	for i, v := range c.Speed {
		covered[gear][speedCell(v)] = true
		highest = max(highest, want[i])
		if i%max(1, len(c.Speed)/8) == 0 && want[i] > 0 {
			r.add(along, c.Power[i].X/want[i]-1, c.Power[i].SE/want[i], 0)
		}
	}
	_, top, _ := c.Peak()
	r.add(peak, top.X/highest-1, top.SE/highest, 0)
	if math.Abs(top.X/highest-1) > 3*top.SE/highest {
		r.Notes = append(r.Notes, fmt.Sprintf("gear %d (%q): peak %.0f ± %.0f, true %.0f", gear, p.Gear, top.X, top.SE, highest))
	}
}

// speedCell numbers the speeds by steps of 1 km/h.
func speedCell(v float64) int { return int(math.Round(v / units.KMH)) }

// fullPower is the engine's power at the road in a gear at full throttle, W: the
// mean over all moments of pulls and roll-ons near each speed; 0 where there was
// none.
func fullPower(truth *sim.Truth, gear int, speeds []float64) []float64 {
	out := make([]float64, len(speeds))
	const near = 0.25 // m/s
	for i, v := range speeds {
		var force, n float64
		atFull(truth, func(m sim.Moment) {
			if m.Gear == gear && math.Abs(m.V-v) < near {
				force, n = force+m.Drive, n+1
			}
		})
		if n > 0 {
			out[i] = force / n * v
		}
	}
	return out
}

// atFull visits all moments of pulls and roll-ons at full throttle.
func atFull(truth *sim.Truth, visit func(sim.Moment)) {
	step := truth.Moments[1].T - truth.Moments[0].T
	for _, d := range truth.Events {
		if d.Kind != sim.KindPull && d.Kind != sim.KindRollOn {
			continue
		}
		for k := int((d.Start - truth.Moments[0].T) / step); k < len(truth.Moments) && truth.Moments[k].T < d.End; k++ {
			if m := truth.Moments[k]; m.Throttle >= fullOpen {
				visit(m)
			}
		}
	}
}

// covers notes how much of what was ridden at full throttle the curves cover.
func (r *Record) covers(truth *sim.Truth, covered map[int]map[int]bool) {
	seen := map[[2]int]bool{}
	atFull(truth, func(m sim.Moment) { seen[[2]int{m.Gear, speedCell(m.V)}] = true })
	hits := 0
	for at := range seen {
		if covered[at[0]][at[1]] {
			hits++
		}
	}
	r.count(ridden, hits, len(seen))
}
