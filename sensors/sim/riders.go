package sim

import (
	"math"

	"stillair/sensors/finding"
	"stillair/sensors/units"
)

// PartOpen is an acceleration in one gear with the throttle part open: it gives
// Share of the full force, somewhat more at low engine speeds and less at high
// ones, like a throttle valve, and the hand is not quite steady. Gear 0 is the
// highest.
type PartOpen struct {
	Gear     int
	From, To float64
	Share    float64
}

// Country is everyday riding out of town at 50 to 100 km/h, or as fast as the machine
// can: bends, villages, overtaking at part throttle, and slowing down with the throttle
// closed in gear or with the brake. Nothing in it counts as a run.
type Country struct{ Minutes float64 }

func (a PartOpen) play(p *player) {
	gear := orGear(a.Gear, len(p.bike.Gears))
	p.reach(a.From - 1)
	p.settle(gear, a.From-1, 2)
	d := p.begin(KindPart)
	limit := p.engine.ShiftRPM / p.ratio()
	p.partOpen(a.Share, func() bool { return p.now.v >= min(a.To, limit) || p.time()-d.Start > 60 })
	p.end(d)
	p.closeThrottle()
}

// partOpen opens the throttle to a share of the full force until done.
func (p *player) partOpen(share float64, done func() bool) {
	hand := newGaussMarkov(p.rng, 0.03, 1.5, dt)
	for start := p.time(); p.ok() && !done(); {
		revs := p.now.v * p.ratio() / p.engine.ShiftRPM
		opened := min((p.time()-start)/p.sc.Rider.OpenTime, 1)
		throttle := share*(1.25-0.5*revs) + hand.advance(p.rng)
		p.cmd = command{mode: geared, throttle: opened * min(max(throttle, 0), 1), curve: p.cmd.curve}
		p.step()
		if p.late(start, giveUp) {
			p.fail(finding.Fail("sim.top_speed", finding.Speed("at", p.now.v)))
		}
	}
}

func (a Country) play(p *player) {
	fastest := p.reachable()
	p.reach(min(50*units.KMH, 0.6*fastest))
	d := p.begin(KindCountry)
	for end := p.time() + 60*a.Minutes; p.time() < end && p.ok(); {
		p.hold(min(p.between(50, 100)*units.KMH, 0.8*fastest), p.between(8, 30))
		switch x := p.rng.Float64(); {
		case x < 0.3:
			p.overtake(fastest)
		case x < 0.55:
			p.shut()
		case x < 0.8:
			p.country(p.between(0.2, 0.9), p.between(80, 300))
		default:
			p.village()
		}
	}
	p.straighten()
	p.halt(1.5)
	p.end(d)
}

// watts is the highest power at the road, W.
func (p *player) watts() float64 {
	most := 0.0
	for _, t := range p.engine.Torque {
		most = max(most, t.Nm*t.RPM*math.Pi/30*p.engine.Efficiency)
	}
	return most
}

// reachable is the approximate top speed of the machine, m/s.
func (p *player) reachable() float64 {
	geared := p.engine.ShiftRPM / p.bike.Gears[len(p.bike.Gears)-1]
	return min(0.85*math.Cbrt(p.watts()/(0.5*p.sc.Air.Density*p.bike.CdA)), geared)
}

// overtake accelerates at part throttle and settles again.
func (p *player) overtake(fastest float64) {
	from, share := p.now.v, p.between(0.3, 0.65)
	top := min(from+p.between(15, 40)*units.KMH, 0.9*fastest, p.engine.ShiftRPM/p.ratio())
	start := p.time()
	p.partOpen(share, func() bool { return p.now.v >= top || p.time()-start > 12 })
	p.closeThrottle()
}

// shut rolls with the throttle closed in gear.
func (p *player) shut() {
	to := p.now.v - p.between(10, 40)*units.KMH
	for p.ok() && p.now.v > max(to, 6) && p.now.v*p.ratio() > 1.3*p.engine.IdleRPM {
		p.cmd = command{mode: geared, curve: p.cmd.curve}
		p.step()
	}
	p.wanted = p.now.a
}

// country rides a bend of the road.
func (p *player) country(angle, radius float64) {
	if p.chance(0.5) {
		angle = -angle
	}
	p.reach(min(p.now.v, math.Sqrt(3*radius)))
	p.arc(angle, radius, p.now.v)
}

// village slows down with the brake, rides through and continues.
func (p *player) village() {
	p.brakeTo(max(50*units.KMH, p.now.v-12), p.between(1, 2.5))
	p.wanted = p.now.a
	p.hold(45*units.KMH, p.between(5, 25))
}

// crawl creeps forward for a time and then stands for another; if that is 0 it
// continues at once.
func (p *player) crawl(speed, seconds, rest float64) {
	if speed == 0 {
		return
	}
	p.hold(speed, seconds)
	if rest > 0 {
		p.brakeTo(0, 1)
		p.rest(rest)
	}
}
