package sim

import (
	"math"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

func (a Stand) play(p *player) {
	p.halt(p.sc.Rider.BrakeDecel)
	d := p.begin(KindStand)
	p.rest(a.Seconds)
	p.end(d)
}

func (a Reach) play(p *player) { p.reach(a.Speed) }
func (a Hold) play(p *player)  { p.hold(a.Speed, a.Seconds) }

func (a NewWind) play(p *player) {
	p.wind.draw()
	p.noteWind()
}

func (a Change) play(p *player) {
	p.halt(p.sc.Rider.BrakeDecel)
	p.fit(a.Setup)
	d := p.begin(KindStand)
	p.rest(a.Seconds)
	p.end(d)
}

func (a Brake) play(p *player) {
	decel := a.Decel
	if decel == 0 {
		decel = p.sc.Rider.BrakeDecel
	}
	if a.To > 0 {
		p.brakeTo(a.To, decel)
		return
	}
	d := p.begin(KindStop)
	p.brakeTo(0, decel)
	d.End, d.Dist = p.stopped, p.now.s-d.Dist
	p.keep(d)
	p.rest(0.5)
}

func (a EngineBrake) play(p *player) {
	if a.Gear > 0 && a.Gear != p.gear {
		p.shift(a.Gear, p.sc.Rider.ShiftTime)
	}
	d := p.begin(KindEngine)
	p.cmd = command{mode: geared}
	for p.ok() && p.now.v > a.To && p.now.v*p.ratio() > p.engine.IdleRPM {
		p.step()
		if p.late(d.Start, giveUp) {
			p.fail(finding.Fail("sim.engine_brake", finding.Speed("to", a.To)))
		}
	}
	p.end(d)
	p.easeGear()
}

// play of a launch: the clutch bites along a ramp while the engine is held at
// LaunchRPM, until road and engine meet; then full throttle.
func (a Launch) play(p *player) {
	p.halt(p.sc.Rider.BrakeDecel)
	r := &p.sc.Rider
	p.crawl(a.Creep, 2, a.CreepRest)
	if p.now.v == 0 {
		p.cmd = command{mode: atRest, revs: r.LaunchRPM}
		p.wait(0.8)
	}
	p.antics, p.pushed = a.Antics, p.time()
	x := p.now.x
	bite := r.ClutchTime * max(1+r.ClutchSD*p.rng.NormFloat64(), 0.3)
	full := min(p.engine.force(1, r.LaunchRPM, turnOf(p.ratio())), p.lift())
	p.moved = math.NaN()
	if p.now.v > 0 {
		p.moved, p.stillAt, p.rolled = p.time(), p.now.s, math.NaN()
	}
	for start := p.time(); p.ok() && p.now.v*p.ratio() < r.LaunchRPM; {
		u := (p.time() - start) / bite
		grip := r.TakeUp.grip(u)
		p.cmd = command{mode: slipping, force: grip * full, revs: r.LaunchRPM, throttle: grip}
		p.cmd.rise = full * (r.TakeUp.grip(u+dt/bite) - grip) / dt
		p.step()
		if p.late(start, bite+giveUp/4) {
			p.fail(finding.Fail("sim.clutch_slips"))
		}
	}
	d := Event{Kind: KindLaunch, Start: p.moved, X: x, Out: p.now.cos > 0, Gear: 1, Setup: p.setup}
	from := p.stillAt
	p.openUntil(len(p.bike.Gears), p.time()-1, 1, func() bool {
		return p.now.v >= a.ToSpeed && p.now.s-from >= a.ToDist
	})
	d.End, d.To, d.Dist = p.time(), p.now.v, p.now.s-from
	d.Rollout = p.rolled
	for _, odd := range a.Antics {
		d.Spoilt = append(d.Spoilt, string(odd.Kind))
	}
	p.antics = nil
	p.closeThrottle()
	p.keep(d)
}

func (a RollOn) play(p *player) {
	p.inGear(KindRollOn, orGear(a.Gear, len(p.bike.Gears)), a.From, func() bool { return p.now.v >= a.To+1 })
}

func (a Pull) play(p *player) {
	gear := orGear(a.Gear, len(p.bike.Gears)-1)
	from, to := a.From, a.To
	limit := p.engine.ShiftRPM / p.bike.Gears[min(gear, len(p.bike.Gears))-1]
	if from == 0 {
		from = limit / 4
	}
	done := func() bool { return p.now.v >= to }
	if to == 0 {
		done = func() bool { return p.now.v >= limit || p.now.v > 2*from && p.now.a < pullEnd }
	}
	p.inGear(KindPull, gear, from, done)
}

// pullEnd is the acceleration at which a pull without a final speed ends, m/s².
const pullEnd = 0.6

// orGear is the requested gear, or a default if none was requested.
func orGear(asked, otherwise int) int {
	if asked > 0 {
		return asked
	}
	return max(otherwise, 1)
}

// inGear is full throttle in one gear from a little below a speed until done.
func (p *player) inGear(k Kind, gear int, from float64, done func() bool) {
	const under = 3 * units.KMH
	if gear > len(p.bike.Gears) {
		p.fail(finding.Fail("sim.no_such_gear", finding.Count("gear", gear), finding.Count("has", len(p.bike.Gears))))
		return
	}
	p.reach(from - under)
	p.settle(gear, from-under, 3)
	d := p.begin(k)
	p.fullThrottle(gear, done)
	p.end(d)
	p.closeThrottle()
}

// settle holds a speed for a time in a certain gear.
func (p *player) settle(gear int, speed, seconds float64) {
	if p.gear != gear {
		p.shift(gear, p.sc.Rider.ShiftTime)
	}
	for end := p.time() + seconds; p.time() < end && p.ok(); {
		if p.steps%stepsPerTick == 0 {
			p.wanted += ((speed-p.now.v)/1.2 - p.wanted) * tick / handTau
			p.meter(p.wanted)
		}
		p.step()
	}
}

// longestPush is the time after which a push is aborted, s.
const longestPush = 600

func (a Push) play(p *player) {
	p.halt(p.sc.Rider.BrakeDecel)
	p.cmd = command{mode: pushed, force: a.Force, power: a.Power}
	from := p.now.s
	p.moved = math.NaN()
	d := p.begin(KindPush)
	for start := p.time(); p.ok() && (p.now.v < a.ToSpeed || p.now.s-from < a.ToDist); {
		p.step()
		if p.late(start, longestPush) {
			p.fail(finding.Fail("sim.weak_push", finding.Time("after", longestPush), finding.Speed("at", p.now.v)))
		}
	}
	d.Start, d.Rollout = p.moved, p.rolled
	p.end(d)
}

func (a Jolt) play(p *player) {
	p.jolt = jolt{Jolt: a, start: p.time()}
}
