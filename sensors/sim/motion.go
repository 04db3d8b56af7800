package sim

import (
	"math"

	"stillair/sensors/units"
)

// The integration's step and the tick at which winds, wanderings and the
// rider's hand change, s.
const (
	dt           = 0.002
	stepsPerTick = 5
	tick         = dt * stepsPerTick
)

// motion is the state of the bike at the end of a step.
type motion struct {
	v, a              float64 // m/s; m/s², mean over the step
	s, x, y           float64 // distance ridden, position along and left of the road, m
	heading, cos, sin float64 // against the way out, rad
	slope             float64 // sine, in the direction of travel
	head, cross       float64 // wind, m/s
	rpm, turns        float64 // engine speed; crank revolutions so far
	yaw               float64 // rad/s
	lean, leanRate    float64
	pitch, pitchRate  float64
}

// mode is what moves the bike.
type mode int

const (
	atRest   mode = iota // brakes hold it
	rolling              // clutch open
	slipping             // clutch transmits cmd.force
	geared               // clutch closed, throttle as in cmd
	metered              // clutch closed, rider sets the throttle so that the engine gives cmd.force
	pushed               // ideal force and power, no engine
)

// command is what the rider does during a step.
type command struct {
	mode     mode
	throttle float64 // 0 to 1; calculated in metered
	force    float64 // N, at the start of the step
	rise     float64 // of force while slipping, N/s
	power    float64 // W; 0: no limit
	brake    float64 // N
	curve    float64 // 1/m, left positive
	gust     float64 // extra head wind, m/s
	lost     float64 // share of the drive that does not reach the road
	up       float64 // how far the front wheel is lifted, rad
	body     float64 // share of CdA that is added by sitting up
	revs     float64 // engine speed that the rider holds while the clutch is open, 1/min; 0: idle
}

// closed reports whether crank and road turn together.
func (p *player) closed() bool {
	switch p.cmd.mode {
	case geared:
		return true
	case metered:
		return p.now.v*p.ratio() > 1.1*p.engine.IdleRPM
	}
	return false
}

// ratio is the engine speed per m/s in the current gear.
func (p *player) ratio() float64 {
	if p.gear < 1 || p.gear > len(p.bike.Gears) {
		return 0
	}
	return p.bike.Gears[p.gear-1]
}

// inertia is the equivalent mass that is accelerated, kg.
func (p *player) inertia() float64 {
	m := p.bike.Mass + p.bike.RotatingMass
	if p.closed() {
		m += p.engineMass()
	}
	return m
}

// engineMass is the crank's inertia referred to the road in the current gear, kg.
func (p *player) engineMass() float64 {
	turn := turnOf(p.ratio())
	return p.engine.Inertia * turn * turn
}

// drive is the force of the engine at the road at a speed and a time after the
// start of the step, without the part that accelerates the engine itself
// subtracted, N.
func (p *player) drive(v, since float64) float64 {
	switch p.cmd.mode {
	case geared:
		rpm := max(v*p.ratio(), p.engine.IdleRPM)
		return min(p.engine.force(p.cmd.throttle, rpm, turnOf(p.ratio())), p.lift()) * (1 - p.cmd.lost)
	case slipping, metered:
		return (p.cmd.force + p.cmd.rise*since) * (1 - p.cmd.lost)
	case pushed:
		return p.push(v)
	}
	return 0
}

// push is the smaller of an ideal force and the force of an ideal power, N.
// From rest the force of a given power is unbounded; the mean over the first
// step is √(2·P·m/dt), since the step must end with the energy P·dt.
func (p *player) push(v float64) float64 {
	force := math.Inf(1)
	if p.cmd.force > 0 {
		force = p.cmd.force
	}
	if p.cmd.power > 0 {
		first := math.Sqrt(2 * p.cmd.power * p.inertia() / dt)
		force = min(force, min(p.cmd.power/max(v, 1e-9), first))
	}
	return force
}

// lift is the force that lifts the front wheel or spins the rear, N.
func (p *player) lift() float64 { return p.bike.Mass * p.bike.LiftAccel }

// resistance is the total resistance at a speed, a place and a fraction of the
// tick, including the brake, N.
func (p *player) resistance(v, x, fraction float64) float64 {
	n := &p.now
	head, cross := p.wind.at(fraction, n.cos, n.sin)
	u := v + head + p.cmd.gust
	flow := math.Abs(u)
	if cross != 0 {
		flow = math.Sqrt(u*u + cross*cross)
	}
	weight := p.bike.Mass * p.sc.Road.Gravity
	return 0.5*p.sc.Air.Density*p.bike.CdA*(1+p.cmd.body)*u*flow + p.drags() +
		weight*p.bike.Crr*(1+p.bike.CrrSlope*v) +
		weight*p.road.slope(x)*n.cos + p.cmd.brake
}

// drags is the drag of clutch, gearbox and bends, N: tyres at the slip angle F/C lose
// F²/C, with their sideways force F (Pacejka, Tyre and Vehicle Dynamics).
func (p *player) drags() float64 {
	force := 0.0
	if p.cmd.mode == rolling {
		force = p.bike.OilDrag
	}
	if p.bike.Cornering > 0 {
		side := p.bike.Mass * p.now.v * p.now.yaw
		force += side * side / p.bike.Cornering
	}
	return force
}

// advance moves the bike by one step of the midpoint rule and returns the
// acceleration at its start. A bike at rest stays there until something
// overcomes what holds it: friction never pushes backwards.
func (p *player) advance(fraction float64) float64 {
	n := &p.now
	if p.cmd.mode == atRest {
		n.v, n.a, p.lastNet = 0, 0, math.NaN()
		return 0
	}
	mass := p.inertia()
	net := p.drive(n.v, 0) - p.resistance(n.v, n.x, fraction)
	if n.v == 0 {
		if net <= 0 {
			n.a, p.lastNet = 0, net
			return 0
		}
		p.setOff(net, mass)
	}
	half := dt / 2
	vm, xm := max(n.v+net/mass*half, 0), n.x+n.cos*n.v*half
	a := (p.drive(vm, half) - p.resistance(vm, xm, fraction+half/tick)) / mass
	went := n.v * dt
	if v := n.v + a*dt; v > 0 {
		went += a * dt * dt / 2
		n.v, n.a = v, a
	} else {
		p.stopped = p.time() - n.v/a
		went = -n.v * n.v / (2 * a)
		n.v, n.a = 0, a
	}
	if gone := n.s - p.stillAt; gone < units.Foot && gone+went >= units.Foot {
		p.rolled = p.time() + dt*(units.Foot-gone)/went
	}
	n.s += went
	n.x += went * n.cos
	n.y += went * n.sin
	return net / mass
}

// setOff records the first movement. If the net force rose through zero since the
// last step, it finds that instant and returns the speed gained since then.
func (p *player) setOff(net, mass float64) {
	p.moved, p.stillAt, p.rolled = p.time(), p.now.s, math.NaN()
	if p.lastNet < 0 {
		since := dt * net / (net - p.lastNet)
		p.moved -= since
		p.now.v = net / mass * since / 2
		p.now.s += p.now.v * since / 3
	}
	p.lastNet = math.NaN()
}
