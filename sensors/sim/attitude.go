package sim

import "math"

// revTau is the time constant with which a disengaged engine reaches another speed, s.
const revTau = 0.12

// wanderFrom is the speed from which the rider's wobble has its full size, m/s;
// at rest the feet are down.
const wanderFrom = 3.0

// attitude turns, leans and pitches the bike by one step.
func (p *player) attitude() {
	n := &p.now
	n.yaw = n.v * p.curvature()
	if n.yaw != 0 {
		n.heading += n.yaw * dt
		n.sin, n.cos = math.Sincos(n.heading)
	}
	u := float64(p.steps%stepsPerTick+1) / stepsPerTick
	lean := (p.lean[0] + u*(p.lean[1]-p.lean[0])) * min(n.v/wanderFrom, 1)
	if n.yaw != 0 {
		lean += math.Atan(n.v * n.yaw / p.sc.Road.Gravity)
	}
	n.leanRate = (lean - n.lean) / dt
	n.lean = lean

	c := p.bike.Pitch
	w := 2 * math.Pi * c.Hz
	p.spring[1] += dt * (w*w*(c.PerAccel*n.a-p.spring[0]) - 2*c.Damping*w*p.spring[1])
	p.spring[0] += dt * p.spring[1]
	before := n.pitch
	n.pitch = p.spring[0] + p.cmd.up
	n.pitchRate = (n.pitch - before) / dt
}

// curvature is the curvature of the path, 1/m: as steered by the rider, or else of the
// road.
func (p *player) curvature() float64 {
	if p.cmd.curve != 0 {
		return p.cmd.curve
	}
	for _, b := range p.sc.Road.Bends {
		if u := (p.now.x - b.X) / b.Length; u > 0 && u < 1 {
			return b.Angle / b.Length * (1 - math.Cos(2*math.Pi*u)) * p.now.cos
		}
	}
	return 0
}

// crank turns the engine by one step.
func (p *player) crank() {
	n := &p.now
	before := n.rpm
	switch {
	case p.closed():
		n.rpm = n.v * p.ratio()
	case p.cmd.mode == pushed:
		n.rpm = 0
	default:
		want := p.cmd.revs
		if want == 0 {
			want = p.engine.IdleRPM
		}
		n.rpm += (want - n.rpm) * dt / revTau
	}
	n.turns += (before + n.rpm) / 2 / 60 * dt
}

// surroundings records slope and wind at the end of a step.
func (p *player) surroundings(fraction float64) {
	n := &p.now
	n.slope = p.road.slope(n.x) * n.cos
	head, cross := p.wind.at(fraction, n.cos, n.sin)
	n.head, n.cross = head+p.cmd.gust, cross
}
