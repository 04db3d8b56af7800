package accuracy

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"

	"stillair/runs"
	"stillair/runs/marks"
	"stillair/sensors"
	"stillair/sensors/sim"
	"stillair/sensors/units"
)

// The figures of riders.
const (
	noLoad     = "no road load comes out"
	noRun      = "no run is accepted that nobody did"
	noCoast    = "no coast-down is accepted that nobody rolled"
	withinFive = "road load within five standard errors"
	realFound  = "a real run is found"
	movedNoise = "CdA moved, in standard errors of noise alone"
	named50    = "the run that was held back is named"
)

// mount is a machine with its rider, phone and road as the seed draws them.
func mount(bikes []sim.Bike, seed uint64) (sim.Scenario, *rand.Rand) {
	rng := rand.New(rand.NewPCG(seed, 1616))
	b := bikes[int(seed)%len(bikes)]
	sc := sim.DefaultScenario(b)
	sc.Phone = []sim.Phone{sim.DefaultPhone(), sim.TankBagPhone(), sim.DefaultPhone()}[rng.IntN(3)]
	sc.Phone.Shake.Orders = sim.FiringOrders(b.Cylinders)
	sc.Rider.TakeUp = sim.TakeUps()[rng.IntN(len(sim.TakeUps()))]
	sc.Rider.PaceVaries = 0.25
	sc.Wind.SD, sc.Wind.CrossSD = 0.5+rng.Float64(), 0.5
	sc.Road.RoughSD, sc.Road.Grade = 0.0007, 0.003*rng.Float64()
	sc.Receiver.Latency = 0.1 + 0.5*rng.Float64()
	if b.NoClutch {
		sc.Rider.LaunchRPM, sc.Rider.TakeUp = 300, sim.Electric
	}
	sc.Bike.NoClutch = b.NoClutch || len(b.Gears) == 1
	sc.Bike.Cornering = 2e4
	return sc, rng
}

// withClutch are the machines that can roll freely.
func withClutch() []sim.Bike {
	var out []sim.Bike
	for _, b := range sim.Machines() {
		if len(b.Gears) > 1 {
			out = append(out, b)
		}
	}
	return out
}

// slow reports whether a machine is too weak for 80 to 120 km/h.
func slow(b sim.Bike) bool { return b.Name == sim.Scooter().Name || b.Name == sim.Light().Name }

// spanOf is a roll-on that the machine can do, and the pairs of speed asked for.
func spanOf(b sim.Bike) (from, to float64, pairs []marks.SpeedPair) {
	if slow(b) {
		return 40 * units.KMH, 75 * units.KMH, []marks.SpeedPair{{Name: "45-70 km/h", From: 45 * units.KMH, To: 70 * units.KMH}}
	}
	return 60 * units.KMH, 125 * units.KMH, marks.DefaultPairs()
}

// rideAs simulates a scenario and analyses it with the pairs of the machine.
func rideAs(sc sim.Scenario, seed uint64, spoil func(*sim.Ride) *sensors.Log) (*sim.Ride, *runs.Result, error) {
	ride, err := sim.Run(sc, seed)
	if err != nil {
		return nil, nil, fmt.Errorf("the ride cannot be ridden: %w", err)
	}
	log := ride.Log
	if spoil != nil {
		log = spoil(ride)
	}
	_, _, pairs := spanOf(sc.Bike)
	result, err := runs.Analyse(context.Background(), log, runs.Options{RollOns: pairs})
	return ride, result, err
}

// nothingWrong notes whether all that was accepted was done, and how far the road
// load is off.
func (r *Record) nothingWrong(sc sim.Scenario, ride *sim.Ride, result *runs.Result) {
	wrong, coasts := 0, 0
	for _, run := range result.Runs {
		if run.Accepted() && !wasDone(sc, ride.Truth, run) {
			wrong++
			if run.Kind == runs.CoastDown {
				coasts++
			}
			r.Notes = append(r.Notes, fmt.Sprintf("%s at %.0f s, %.0f to %.0f km/h", run.Kind, run.Start, run.FromMPS/units.KMH, run.ToMPS/units.KMH))
		}
	}
	r.once(noRun, wrong == 0)
	r.once(noCoast, coasts == 0)
	rolling := sc.Bike.Crr + sc.Bike.OilDrag/(sc.Bike.Mass*sc.Road.Gravity)
	for _, l := range result.RoadLoads {
		far := max(math.Abs(l.CdA.X-sc.Bike.CdA)/l.CdA.SE, math.Abs(l.Crr.X-rolling)/l.Crr.SE)
		r.once(withinFive, far <= 5)
		if far > 5 {
			r.Notes = append(r.Notes, fmt.Sprintf("CdA %v (%.3f), Crr %v (%.4f)", l.CdA, sc.Bike.CdA, l.Crr, rolling))
		}
	}
}

// wasDone reports whether an event of the kind covers most of a run.
func wasDone(sc sim.Scenario, truth *sim.Truth, run runs.Run) bool {
	open := map[sim.Kind]bool{sim.KindRollOn: true, sim.KindPull: true, sim.KindLaunch: true}
	for _, d := range truth.Events {
		shared := min(run.End, d.End) - max(run.Start, d.Start)
		if shared < 0.7*(run.End-run.Start) {
			continue
		}
		switch run.Kind {
		case runs.CoastDown:
			if d.Kind == sim.KindCoastDown && !sc.Bike.NoClutch && !slices.Contains(d.Spoilt, string(sim.GearIn)) {
				return true
			}
		case runs.RollOn, runs.Pull:
			if open[d.Kind] {
				return true
			}
		default:
			if string(d.Kind) == string(run.Kind) {
				return true
			}
		}
	}
	return run.Kind == runs.Stop // hard braking counts as a stop
}

// found notes the events of a kind that were accepted as such.
func (r *Record) found(kind sim.Kind, ride *sim.Ride, result *runs.Result) {
	for _, d := range ride.Truth.Of(kind) {
		hit := false
		var why []string
		for _, run := range result.Runs {
			if string(run.Kind) != string(kind) || min(run.End, d.End)-max(run.Start, d.Start) < 0.5*(d.End-d.Start) {
				continue
			}
			hit = hit || run.Accepted()
			for _, reason := range run.Reasons {
				why = append(why, string(reason.Code))
			}
		}
		r.once(realFound, hit)
		r.once(realFound+": "+string(kind), hit)
		if !hit {
			r.Notes = append(r.Notes, fmt.Sprintf("%s at %.0f s lost: %v", kind, d.Start, why))
		}
	}
}

// rider is one way of riding: the plan, and the required result.
type rider struct {
	name   string
	bikes  []sim.Bike
	plan   func(sc *sim.Scenario, rng *rand.Rand) []sim.Act
	judge  func(r *Record, sc sim.Scenario, ride *sim.Ride, result *runs.Result)
	limits []Limit
}

// riders simulates riders that were not used for tuning.
func riders() Study {
	s := Study{Name: "riders", Title: "Riders as they ride", Unit: Unit{Name: "se", Factor: 1, Digits: 2},
		About: "Machines from 9 to 145 kW, of which three were there when thresholds were chosen, ridden with the throttle part open, shut in gear, in traffic and out of town. What nobody did must not be measured, what was done must be found, and no road load may lie far off."}
	for _, k := range append(falseKinds(), realKinds()...) {
		s.Cases = append(s.Cases, Case{Name: k.name, Seeds: 60, Limits: append(k.limits, inside(noRun, HitRate, 0.99, 1), inside(noCoast, HitRate, 0.99, 1), inside(withinFive, HitRate, 1, 1)),
			Ride: func(seed uint64) (Record, error) { return k.ride(seed) }})
	}
	s.Cases = append(append(s.Cases, heldBack()...), holes())
	return s
}

func (k rider) ride(seed uint64) (Record, error) {
	sc, rng := mount(k.bikes, seed)
	sc.Plan = append(k.plan(&sc, rng), sim.Brake{}, sim.Stand{Seconds: 10})
	ride, result, err := rideAs(sc, seed, nil)
	if err != nil {
		return Record{}, fmt.Errorf("%s: %w", sc.Bike.Name, err)
	}
	var r Record
	r.Notes = append(r.Notes, sc.Bike.Name)
	r.nothingWrong(sc, ride, result)
	if k.judge != nil {
		k.judge(&r, sc, ride, result)
	}
	return r, nil
}

// falseKinds are ways of riding with nothing in them, or almost nothing, to
// measure.
func falseKinds() []rider {
	none := func(r *Record, _ sim.Scenario, _ *sim.Ride, result *runs.Result) {
		r.once(noLoad, len(result.RoadLoads) == 0)
	}
	limits := []Limit{inside(noLoad, HitRate, 0.99, 1)}
	return []rider{
		{"engine braking between roll-ons", sim.Machines(), engineBraking, func(r *Record, sc sim.Scenario, ride *sim.Ride, result *runs.Result) {
			none(r, sc, ride, result)
			r.found(sim.KindRollOn, ride, result)
		}, append(limits, inside(realFound, HitRate, 0.97, 1))},
		{"part throttle beside full", sim.Machines(), partBesideFull, func(r *Record, sc sim.Scenario, ride *sim.Ride, result *runs.Result) {
			none(r, sc, ride, result)
			r.found(sim.KindRollOn, ride, result)
		}, append(limits, inside(realFound, HitRate, 0.97, 1))},
		{"part throttle alone", sim.Machines(), partAlone, none, limits},
		{"a gear left in", withClutch(), gearIn, none, limits},
		{"everyday riding", sim.Machines(), everyday, none, limits},
		{"stop and go", sim.Machines(), stopAndGo, none, limits},
		{"coasting without a clutch", []sim.Bike{sim.Scooter(), sim.Volt()}, coastDay, none, limits},
	}
}

func engineBraking(sc *sim.Scenario, rng *rand.Rand) (plan []sim.Act) {
	from, to, _ := spanOf(sc.Bike)
	for range 6 {
		plan = append(plan, sim.RollOn{From: from, To: to}, sim.EngineBrake{To: from * (0.5 + 0.2*rng.Float64())}, sim.TurnRound{})
	}
	return plan
}

func partBesideFull(sc *sim.Scenario, rng *rand.Rand) (plan []sim.Act) {
	from, to, _ := spanOf(sc.Bike)
	plan = append(plan, sim.Stand{Seconds: 5}, sim.Launch{ToSpeed: to}, sim.Reach{Speed: 12}, sim.TurnRound{})
	for i := range 7 {
		if i%3 == 0 {
			plan = append(plan, sim.RollOn{From: from, To: to}, sim.Reach{Speed: 12}, sim.TurnRound{})
			continue
		}
		plan = append(plan, partOf(sc.Bike, from, to, rng), sim.Reach{Speed: 12}, sim.TurnRound{})
	}
	return plan
}

// partOf opens the throttle by a third to three quarters in one of the higher gears.
func partOf(b sim.Bike, from, to float64, rng *rand.Rand) sim.Act {
	gear := max(1, len(b.Gears)-rng.IntN(3))
	if limit := b.Engine.ShiftRPM / b.Gears[gear-1]; to > 0.95*limit {
		gear = len(b.Gears)
	}
	return sim.PartOpen{Gear: gear, From: from, To: to, Share: 0.35 + 0.4*rng.Float64()}
}

func partAlone(sc *sim.Scenario, rng *rand.Rand) (plan []sim.Act) {
	from, to, _ := spanOf(sc.Bike)
	for range 5 {
		plan = append(plan, partOf(sc.Bike, from, to, rng), sim.Reach{Speed: 12}, sim.TurnRound{})
	}
	return plan
}

// coastSpan is from and to which speed a machine rolls.
func coastSpan(b sim.Bike) (from, to float64) {
	if slow(b) {
		return 80 * units.KMH, 25 * units.KMH
	}
	return 110 * units.KMH, 35 * units.KMH
}

func gearIn(sc *sim.Scenario, _ *rand.Rand) (plan []sim.Act) {
	from, to := coastSpan(sc.Bike)
	left := []sim.Spoil{{Kind: sim.GearIn, AtSpeed: 2 * from, Seconds: 300}}
	for range 3 {
		plan = append(plan, sim.CoastPair{From: from, To: to, Spoils: [2][]sim.Spoil{left, left}})
	}
	return plan
}

func everyday(*sim.Scenario, *rand.Rand) []sim.Act {
	return []sim.Act{sim.Town{Minutes: 6}, sim.Country{Minutes: 10}}
}

func stopAndGo(sc *sim.Scenario, rng *rand.Rand) (plan []sim.Act) {
	sc.Rider.Pace = 1 + 2*rng.Float64()
	for range 25 {
		plan = append(plan, sim.Reach{Speed: (12 + 45*rng.Float64()) * units.KMH}, sim.Hold{Speed: 8, Seconds: 3 * rng.Float64()},
			sim.Brake{Decel: 1 + 2.2*rng.Float64()}, sim.Stand{Seconds: 1 + 8*rng.Float64()})
	}
	return plan
}

func coastDay(sc *sim.Scenario, _ *rand.Rand) []sim.Act {
	from, to := coastSpan(sc.Bike)
	if sc.Bike.NoClutch {
		to = 40 * units.KMH
	}
	return sim.CoastPairs(3, from, to)
}

// realKinds are runs that must be found, and days of coast-downs with something
// odd about them.
func realKinds() []rider {
	all := func(kinds ...sim.Kind) func(*Record, sim.Scenario, *sim.Ride, *runs.Result) {
		return func(r *Record, sc sim.Scenario, ride *sim.Ride, result *runs.Result) {
			for _, k := range kinds {
				r.found(k, ride, result)
			}
			r.load(sc, result)
		}
	}
	limits := []Limit{inside(realFound, HitRate, 0.97, 1)}
	out := []rider{
		{"launches and roll-ons", sim.Machines(), launchesAndRollOns, all(sim.KindLaunch, sim.KindRollOn), limits},
		{"coast-downs", withClutch(), coastDay, all(sim.KindCoastDown), append(limits, inside(cda, Coverage, 0.90, 1))},
		{"coast-downs round bends", withClutch(), bendyDay, all(sim.KindCoastDown), append(limits, inside(cda, Coverage, 0.90, 1))},
		{"coast-downs with oil drag", withClutch(), func(sc *sim.Scenario, rng *rand.Rand) []sim.Act {
			sc.Bike.OilDrag = 5 + 15*rng.Float64()
			return coastDay(sc, rng)
		}, all(sim.KindCoastDown), append(limits, inside(cda, Coverage, 0.90, 1))},
	}
	return out
}

// load notes drag area and rolling resistance beside the truth.
func (r *Record) load(sc sim.Scenario, result *runs.Result) {
	for _, l := range result.RoadLoads {
		r.Values = append(r.Values, relative(cda, l.CdA, l.CdACI, sc.Bike.CdA, 0))
	}
}

func launchesAndRollOns(sc *sim.Scenario, _ *rand.Rand) (plan []sim.Act) {
	from, to, _ := spanOf(sc.Bike)
	for range 3 {
		plan = append(plan, sim.Stand{Seconds: 6}, sim.Launch{ToSpeed: to}, sim.Reach{Speed: 12}, sim.TurnRound{},
			sim.RollOn{From: from, To: to}, sim.Reach{Speed: 12}, sim.TurnRound{})
	}
	return plan
}

func bendyDay(sc *sim.Scenario, rng *rand.Rand) []sim.Act {
	from, to := coastSpan(sc.Bike)
	x := 50 + 100*rng.Float64()
	for range 4 {
		length := 120 + 130*rng.Float64()
		angle := (0.1 + 0.25*rng.Float64()) * float64(1-2*rng.IntN(2))
		sc.Road.Bends = append(sc.Road.Bends, sim.Curve{X: x, Length: length, Angle: angle})
		x += length + 20
	}
	return sim.CoastPairs(3, from, to)
}
