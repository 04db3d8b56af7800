package sim

import (
	"math"

	"stillair/sensors/units"
)

// play of a town: blocks of streets with something at the end of each.
func (a Town) play(p *player) {
	p.halt(p.sc.Rider.BrakeDecel)
	d := p.begin(KindTown)
	for end := p.time() + 60*a.Minutes; p.time() < end && p.ok(); {
		p.street()
		switch x := p.rng.Float64(); {
		case x < 0.30:
			p.corner()
		case x < 0.45:
			p.speedBump()
		case x < 0.55:
			p.roundabout()
		case x < 0.65:
			p.queue()
		default:
			p.lights()
		}
	}
	p.straighten()
	p.halt(1.5)
	p.end(d)
}

// between draws from a uniform distribution.
func (p *player) between(lo, hi float64) float64 { return lo + (hi-lo)*p.rng.Float64() }

// chance is true with a probability.
func (p *player) chance(probability float64) bool { return p.rng.Float64() < probability }

// street accelerates at part throttle and rides along, sometimes over a pothole.
func (p *player) street() {
	speed, pace := p.between(28, 62)*units.KMH, p.between(0.8, 2.4)
	for end := p.time() + p.between(12, 40); p.time() < end && p.ok(); {
		p.aim(speed, pace)
	}
	if p.chance(0.3) {
		p.pothole()
		p.hold(speed, p.between(1, 5))
	}
}

func (p *player) pothole() {
	Jolt{Up: p.between(-12, -4), Along: p.between(-3, 0), Seconds: p.between(0.05, 0.12)}.play(p)
	p.wait(0.15)
	Jolt{Up: p.between(6, 20), Along: p.between(-3, 1), Seconds: p.between(0.04, 0.1)}.play(p)
}

// corner slows down and turns off left or right.
func (p *player) corner() {
	p.reach(p.between(4, 8))
	angle := p.between(1.2, 1.9)
	if p.chance(0.5) {
		angle = -angle
	}
	p.arc(angle, p.between(8, 16), p.now.v)
}

// speedBump rides slowly over a hump, first with one wheel, then the other.
func (p *player) speedBump() {
	p.reach(p.between(15, 25) * units.KMH)
	for range 2 {
		Jolt{Up: p.between(4, 9), Along: p.between(-1.5, 0), Seconds: 0.22}.play(p)
		p.hold(p.now.v, 0.3)
	}
}

func (p *player) roundabout() {
	p.reach(p.between(5, 7))
	p.arc(-0.9, 10, p.now.v)
	p.arc(p.between(1.8, 4.5), 12, p.now.v)
	p.arc(-0.9, 10, p.now.v)
}

// queue follows slow traffic, faster and slower in turn.
func (p *player) queue() {
	for range 2 + p.rng.IntN(4) {
		p.hold(p.between(8, 40)*units.KMH, p.between(3, 8))
	}
}

// lights are traffic lights: coasting with the throttle closed or the clutch
// in, braking, sometimes filtering past waiting cars at walking speed, and a
// wait.
func (p *player) lights() {
	p.cmd = command{mode: rolling}
	if p.chance(0.5) {
		p.cmd = command{mode: geared}
	}
	p.wait(p.between(0.3, 3))
	if p.chance(0.4) {
		p.brakeTo(p.between(1.5, 3), p.between(1.5, 3))
		p.hold(p.between(1.5, 4), p.between(5, 15))
	}
	p.halt(p.between(1.5, 3.3))
	p.rest(p.between(3, 50))
}

// straighten turns until the bike heads out again.
func (p *player) straighten() {
	p.reach(5)
	if rest := math.Remainder(p.now.heading, 2*math.Pi); math.Abs(rest) > 0.02 {
		p.arc(-rest, 10, 5)
	}
	p.head(0)
}
