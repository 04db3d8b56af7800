package sim

import (
	"math"

	"stillair/sensors/finding"
)

// How a calm rider handles the bike (common practice).
const (
	handTau   = 0.35 // lag between wanting an acceleration and having it, s
	closeTime = 0.3  // closing the throttle after full opening, s
	softShift = 0.5  // part-throttle upshift, as a fraction of ShiftRPM
	lowShift  = 0.27 // downshift, same
	mostOpen  = 0.8  // highest share of the full-throttle force used between acts
	stuck     = 0.15 // acceleration below which the rider opens the throttle further, m/s²
	giveUp    = 120  // time without getting nearer to a speed or a place after which the ride fails, s
)

// aim rides one step towards a speed at part throttle or on the brake. The
// rider allows for the mean wind but not for gusts.
func (p *player) aim(target, pace float64) {
	if p.steps%stepsPerTick == 0 {
		p.handle(target, pace)
	}
	p.step()
}

func (p *player) handle(target, pace float64) {
	if target > 1 {
		target += p.wander.x * min(1, target/10)
	}
	want := max(min((target-p.now.v)/1.2, pace), -p.sc.Rider.BrakeDecel)
	p.wanted += (want - p.wanted) * tick / handTau
	p.pickGear()
	p.meter(p.wanted)
}

// meter sets throttle and brake for an acceleration, within the limits of the engine.
func (p *player) meter(accel float64) {
	curve := p.cmd.curve
	p.cmd = command{mode: metered, curve: curve}
	n := &p.now
	u := n.v + p.wind.mean[0]*n.cos + p.wind.mean[1]*n.sin
	air := 0.5 * p.sc.Air.Density * p.bike.CdA * u * math.Abs(u)
	weight := p.bike.Mass * p.sc.Road.Gravity
	need := p.inertia()*accel + air + weight*(p.bike.Crr*(1+p.bike.CrrSlope*n.v)+n.slope)
	rpm, turn := max(n.v*p.ratio(), 1.3*p.engine.IdleRPM), turnOf(p.ratio())
	full := min(p.engine.force(1, rpm, turn), p.lift())
	drag := p.engine.force(0, rpm, turn)
	if !p.closed() {
		drag = 0
	}
	p.cmd.force = min(max(need, drag), p.most*full)
	p.cmd.brake = max(drag-need, 0)
	p.cmd.throttle = (p.cmd.force - drag) / (full - drag)
}

// pickGear changes gear when part throttle needs another one.
func (p *player) pickGear() {
	rpm := p.now.v * p.ratio()
	switch top := len(p.bike.Gears); {
	case rpm > softShift*p.engine.ShiftRPM && p.gear < top:
		p.shift(p.gear+1, 2*p.sc.Rider.ShiftTime)
	case rpm < lowShift*p.engine.ShiftRPM && p.gear > 1 && p.now.v > 0:
		p.gear-- // clutch in, brake or throttle as before: no effect on the motion
	}
}

// shift changes gear with the clutch open for a time.
func (p *player) shift(gear int, seconds float64) {
	p.gear = gear
	p.cmd = command{mode: rolling, curve: p.cmd.curve, revs: p.now.v * p.ratio()}
	p.wait(seconds)
}

// reach rides to a speed and returns when it is there.
func (p *player) reach(speed float64) {
	pace := p.pace()
	up := speed > p.now.v
	if speed == 0 {
		p.halt(p.sc.Rider.BrakeDecel)
		return
	}
	for start := p.time(); p.ok() && (p.now.v < speed-0.3) == up && math.Abs(p.now.v-speed) > 0.3; {
		p.aim(speed, pace)
		p.press()
		if p.late(start, giveUp) {
			p.fail(finding.Fail("sim.not_reached", finding.Speed("speed", speed)))
		}
	}
}

// pace is the acceleration that the rider chooses this time at part throttle.
func (p *player) pace() float64 {
	r := &p.sc.Rider
	p.most = mostOpen
	if r.PaceVaries == 0 {
		return r.Pace
	}
	p.most = mostOpen * max(1-r.PaceVaries*math.Abs(p.rng.NormFloat64()), 0.4)
	return r.Pace * math.Exp(r.PaceVaries*p.rng.NormFloat64())
}

// press opens the throttle further if the speed hardly grows.
func (p *player) press() {
	const perSecond = 0.1
	if p.now.a < stuck {
		p.most = min(p.most+dt*perSecond, max(p.most, mostOpen))
	}
}

// late reports whether something that began at start has taken longer than
// the limit.
func (p *player) late(start, limit float64) bool { return p.time()-start > limit }

// hold keeps a speed for a time.
func (p *player) hold(speed, seconds float64) {
	pace := p.pace()
	for end := p.time() + seconds; p.time() < end && p.ok(); {
		p.aim(speed, pace)
	}
}

// ahead is the distance to the road position x ahead, m.
func (p *player) ahead(x float64) float64 { return (x - p.now.x) * p.now.cos }

// holdTo keeps a speed up to the road position x.
func (p *player) holdTo(speed, x float64) {
	limit := giveUp + 2*math.Abs(p.ahead(x))/max(speed, 1)
	pace := p.pace()
	for start := p.time(); p.ok() && p.ahead(x) > 0; {
		p.aim(speed, pace)
		p.press()
		if p.late(start, limit) {
			p.fail(finding.Fail("sim.place_not_reached", finding.Distance("place", x), finding.Speed("speed", speed)))
		}
	}
}

// brakeTo slows with a steady deceleration, which builds up within 0.3 s, and
// releases the brake shortly before the end. The clutch is pulled below walking
// speed.
func (p *player) brakeTo(speed, decel float64) {
	const build = 0.3
	p.wanted = 0
	for start := p.time(); p.ok() && p.now.v > speed; {
		grip := min((p.time()-start)/build, 1)
		p.cmd = command{mode: rolling, curve: p.cmd.curve, brake: grip * decel * (p.bike.Mass + p.bike.RotatingMass)}
		p.step()
		if p.late(start, giveUp) {
			p.fail(finding.Fail("sim.weak_braking", finding.Acceleration("decel", decel), finding.Speed("speed", speed)))
		}
	}
	p.cmd.brake = 0
	p.easeGear()
}

// easeGear selects the gear that suits the speed while the clutch is open.
func (p *player) easeGear() {
	for p.gear > 1 && p.now.v*p.ratio() < lowShift*p.engine.ShiftRPM {
		p.gear--
	}
}

// halt brakes to a standstill and stays there for a moment.
func (p *player) halt(decel float64) {
	if p.now.v > 0 {
		p.brakeTo(0, decel)
	}
	p.rest(0.5)
}

// rest stands for a time with the engine idling.
func (p *player) rest(seconds float64) {
	p.gear, p.wanted = 1, 0
	p.cmd = command{mode: atRest}
	p.wait(seconds)
}

// fullThrottle opens the throttle and continues until done, changing gear at
// ShiftRPM up to the gear shifts.
func (p *player) fullThrottle(topGear int, done func() bool) {
	p.cmd = command{mode: geared, curve: 0}
	open := p.sc.Rider.OpenTime
	p.openUntil(topGear, p.time(), open, done)
}

func (p *player) openUntil(topGear int, since, open float64, done func() bool) {
	start := p.time()
	for p.ok() && !done() {
		p.cmd.mode, p.cmd.throttle = geared, min((p.time()-since)/open, 1)
		if p.now.v*p.ratio() > p.engine.ShiftRPM && p.gear < topGear {
			p.cmd.throttle = 0
			p.shift(p.gear+1, p.sc.Rider.ShiftTime)
			since, open = p.time(), 0.08
			continue
		}
		p.step()
		if p.late(start, giveUp) {
			p.fail(finding.Fail("sim.top_speed", finding.Speed("at", p.now.v)))
		}
	}
}

// closeThrottle closes the throttle gradually in gear.
func (p *player) closeThrottle() {
	from := p.cmd.throttle
	for start := p.time(); p.ok() && p.time() < start+closeTime; {
		p.cmd = command{mode: geared, throttle: from * (1 - (p.time()-start)/closeTime)}
		p.step()
	}
	p.wanted = p.now.a
}
