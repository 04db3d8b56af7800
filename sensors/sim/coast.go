package sim

import (
	"math"

	"stillair/sensors/units"
)

const (
	coastOver     = 1.0 // how much faster than its first speed the rider approaches a coast-down, m/s
	longestCoast  = 300 // after which a coast-down is aborted, s
	transferSpeed = 60 * units.KMH
)

func (a CoastDown) play(p *player) {
	p.reach(a.From + coastOver)
	p.hold(a.From+coastOver, 2)
	p.coast(a.To, a.Spoils, 0)
}

func (a CoastPair) play(p *player) {
	p.pairs++
	NewWind{}.play(p)
	length := p.coastLength(a.From, a.To)
	for way, start := range [2]float64{a.X + a.Farther, a.X + length - a.Farther} {
		p.approach(start, way == 0, a.From+coastOver)
		p.coast(a.To, a.Spoils[way], p.pairs)
	}
}

// coast rolls with the clutch open until the speed has fallen to a given one.
func (p *player) coast(to float64, spoils []Spoil, pair int) {
	d := p.begin(KindCoastDown)
	d.Pair = pair
	since := make([]float64, len(spoils))
	for p.ok() && p.now.v > to && p.time()-d.Start < longestCoast {
		p.cmd = p.rollFree()
		for i, s := range spoils {
			if p.now.v > s.AtSpeed && since[i] == 0 {
				continue
			}
			p.spoil(s, since[i])
			since[i] += dt
		}
		p.step()
	}
	for _, s := range spoils {
		d.Spoilt = append(d.Spoilt, string(s.Kind))
	}
	p.end(d)
	p.wanted = p.now.a
	p.easeGear()
}

// rollFree pulls the clutch, or, without a clutch, closes the throttle.
func (p *player) rollFree() command {
	if p.bike.NoClutch && p.now.v*p.ratio() > 1.1*p.engine.IdleRPM {
		return command{mode: geared}
	}
	return command{mode: rolling}
}

// spoil changes the command according to a Spoil, at a time after its beginning.
func (p *player) spoil(s Spoil, since float64) {
	if since > s.Seconds {
		return
	}
	switch s.Kind {
	case Brush:
		p.cmd.brake = s.Size
	case Posture:
		p.cmd.body = s.Size
	case Truck:
		p.cmd.gust = s.Size * math.Sin(2*math.Pi*since/s.Seconds)
	case GearIn:
		if p.now.v*p.ratio() > 1.1*p.engine.IdleRPM {
			p.cmd.mode = geared
		}
	}
}

// coastLength is the length of a coast-down on a level road in still air, m.
func (p *player) coastLength(from, to float64) float64 {
	const dv = 0.1
	mass := p.bike.Mass + p.bike.RotatingMass
	length := 0.0
	for v := to + dv/2; v < from; v += dv {
		force := 0.5*p.sc.Air.Density*p.bike.CdA*v*v +
			p.bike.Mass*p.sc.Road.Gravity*p.bike.Crr*(1+p.bike.CrrSlope*v)
		length += mass * v * dv / force
	}
	return min(length, 5000)
}

// approach brings the bike to the road position x at a speed, heading out or
// back, from any state.
func (p *player) approach(x float64, out bool, speed float64) {
	pace := min(p.sc.Rider.Pace/(1+2*p.sc.Rider.PaceVaries), 0.6*p.watts()/(p.bike.Mass*speed))
	runway := 1.7*speed*speed/(2*pace) + 6*speed
	if (p.now.cos > 0) == out && p.ahead(x) < runway {
		TurnRound{}.play(p)
	}
	if (p.now.cos > 0) != out {
		p.holdTo(transferSpeed, x+p.now.cos*runway)
		TurnRound{}.play(p)
	}
	p.reach(speed)
	p.holdTo(speed, x)
}
