package sim

import (
	"math"

	"stillair/sensors/finding"
)

const (
	turnSpeed = 3.5 // of a U-turn, m/s
	turnIn    = 0.5 // angle over which a bend tightens and opens, rad
)

func (a TurnRound) play(p *player) {
	p.reach(turnSpeed)
	d := p.begin(KindTurn)
	p.arc(math.Pi, p.sc.Rider.TurnRadius, turnSpeed)
	p.end(d)
}

func (a Bend) play(p *player) { p.arc(a.Angle, a.Radius, p.now.v) }

// arc turns by an angle, left positive, at a speed. The bend tightens and
// opens over its first and last half radian.
func (p *player) arc(angle, radius, speed float64) {
	start := p.now.heading
	began, limit := p.time(), 30+4*math.Abs(angle)*radius/max(speed, 0.5)
	goal, sign := math.Abs(angle), math.Copysign(1, angle)
	for p.ok() {
		turned := math.Abs(p.now.heading - start)
		left := goal - turned
		if left <= 0 {
			break
		}
		p.cmd.curve = sign / radius * min(1, (min(turned, left)+0.04)/turnIn)
		p.aim(speed, p.sc.Rider.Pace)
		if p.late(began, limit) {
			p.fail(finding.Fail("sim.bend_not_done"))
		}
	}
	p.cmd.curve = 0
	p.head(start + angle)
}

// head sets the heading exactly, so that the way back is the way out.
func (p *player) head(angle float64) {
	p.now.heading = angle
	p.now.sin, p.now.cos = math.Sincos(angle)
	if math.Abs(p.now.sin) < 1e-6 {
		p.now.sin, p.now.cos = 0, math.Copysign(1, p.now.cos)
	}
}
