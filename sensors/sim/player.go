package sim

import (
	"fmt"
	"math"
	"math/rand/v2"

	"stillair/sensors"
	"stillair/sensors/chunk"
	"stillair/sensors/finding"
)

// longestRide is the time after which a ride that does not end is aborted, s.
const longestRide = 6 * 3600

// player rides a plan and holds the state from step to step. The play method of
// an act sets the command and calls step until it is done.
type player struct {
	sc     *Scenario
	bike   Bike // with the current setup
	setup  string
	engine *engine
	road   *profile
	wind   *wind
	rng    *rand.Rand // the rider's

	now     motion
	cmd     command
	gear    int
	steps   int
	most    float64     // highest share of the full force that this acceleration uses
	wanted  float64     // current acceleration set by the rider's hand, m/s²
	wander  gaussMarkov // of the speed that is held
	leaning matern      // wander of the lean
	lean    [2]float64  // wander of the lean at the last tick and the next
	jolt    jolt
	spring  [2]float64 // pitch on the springs, rad, and its rate
	antics  []Antic
	pushed  float64 // start of the push that the antics count from, s

	moved   float64 // instant of the last first movement, s since the start
	stillAt float64 // distance ridden at the last first movement, m
	rolled  float64 // instant at which the bike had rolled one foot from there; NaN: not yet
	stopped float64 // instant of the last stop
	lastNet float64 // net force at rest in the step before, N; NaN: unknown
	pairs   int     // coast-down pairs so far

	phone    *phone
	receiver *receiver
	baro     *baro
	mic      *microphone
	truth    *Truth
	moments  chunk.Buffer[Moment]
	setups   setups
	every    int // ticks from moment to moment
	err      error
}

func newPlayer(sc Scenario, seed uint64) (*player, error) {
	if err := sc.Check(); err != nil {
		return nil, err
	}
	p := &player{
		sc: &sc, bike: sc.Bike, engine: newEngine(sc.Bike.Engine),
		road: newProfile(sc.Road, seed), wind: newWind(sc.Wind, seed), rng: stream(seed, streamRider),
		gear: 1, most: mostOpen, lastNet: math.NaN(), moved: math.NaN(), rolled: math.NaN(), truth: &Truth{Lag: sc.Receiver.Latency, SmoothTau: sc.Receiver.SmoothTau},
		every: max(1, int(math.Round(1/tick/sc.TruthRate))),
	}
	p.now.cos, p.now.rpm = 1, sc.Bike.Engine.IdleRPM
	p.wander = newGaussMarkov(p.rng, sc.Rider.SpeedWander, 5, tick)
	p.leaning = newMatern(sc.Rider.LeanWander, 0.8, tick)
	p.phone = newPhone(&sc, seed, p.truth)
	p.receiver = newReceiver(&sc, seed)
	p.baro = newBarometer(&sc, seed)
	p.mic = newMicrophone(&sc, seed)
	p.noteWind()
	return p, nil
}

// playAll plays the plan.
func (p *player) playAll() error {
	if p.sc.Rider.Waits > 0 {
		p.rest(p.sc.Rider.Waits)
	}
	for i, a := range p.sc.Plan {
		a.play(p)
		if p.err != nil {
			return finding.Fail("sim.act", finding.Count("act", i+1), finding.Text("kind", fmt.Sprintf("%T", a)), sensors.Cause(p.err)).Because(p.err)
		}
	}
	p.moment(p.now.a)
	return nil
}

// time is the time since the start, s.
func (p *player) time() float64 { return float64(p.steps) * dt }

// step rides one step as commanded.
func (p *player) step() {
	in := p.steps % stepsPerTick
	if in == 0 {
		p.onTick()
	}
	before := p.now
	p.perform()
	a := p.advance(float64(in) / stepsPerTick)
	if in == 0 && p.steps/stepsPerTick%p.every == 0 {
		p.now, before = before, p.now
		p.moment(a)
		p.now, before = before, p.now
	}
	p.attitude()
	p.crank()
	p.surroundings(float64(in+1) / stepsPerTick)
	t := p.time()
	p.phone.step(t, &before, &p.now, p)
	p.receiver.step(t, &before, &p.now, p)
	p.baro.step(t, &p.now, p)
	p.mic.step(t, &before, &p.now, p)
	p.steps++
	if t > longestRide {
		p.fail(finding.Fail("sim.endless"))
	}
}

// onTick updates the wind and the wander of speed and lean.
func (p *player) onTick() {
	p.wind.advance()
	p.wander.advance(p.rng)
	p.leaning.advance(p.rng)
	p.lean = [2]float64{p.lean[1], p.leaning.x}
}

// fail ends the ride; the first error is kept.
func (p *player) fail(err error) {
	if p.err == nil {
		p.err = err
	}
}

// ok reports whether the ride continues.
func (p *player) ok() bool { return p.err == nil }

// wait rides for a time as commanded.
func (p *player) wait(seconds float64) {
	for end := p.time() + seconds; p.time() < end && p.ok(); {
		p.step()
	}
}

// noteWind records the mean wind.
func (p *player) noteWind() {
	p.truth.Winds = append(p.truth.Winds, Spell{From: p.clock(p.time()), Along: p.wind.goal[0], Cross: p.wind.goal[1]})
}

// clock converts time since the start to the log's clock.
func (p *player) clock(t float64) float64 { return t + p.sc.ClockZero }

// moment records the true state; a is the acceleration at this instant.
func (p *player) moment(a float64) {
	n := &p.now
	m := Moment{
		T: p.clock(p.time()), V: n.v, A: a, S: n.s, X: n.x, Y: n.y, Height: p.road.height(n.x), Heading: n.heading,
		Slope: n.slope, Head: n.head, Cross: n.cross, RPM: n.rpm, Gear: p.gear, Throttle: p.cmd.throttle,
		Brake: p.cmd.brake, Yaw: n.yaw, Lean: n.lean, Pitch: n.pitch,
	}
	switch {
	case p.closed():
		m.Clutch = 1
		m.Drive = p.drive(n.v, 0) - p.engineMass()*a
	case p.cmd.mode == slipping || p.cmd.mode == metered:
		m.Clutch = 0.5
		m.Drive = p.drive(n.v, 0)
	case p.cmd.mode == pushed:
		m.Drive = p.drive(n.v, 0)
	}
	p.moments.Add(m)
}
