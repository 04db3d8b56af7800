package plan

import (
	"math"

	"stillair/runs/marks"
	"stillair/sensors/finding"
)

// Parameters of the motion in a push (common practice).
const (
	opens     = 0.25 // throttle from closed to full, s
	clutches  = 0.35 // clutch from first bite to full force, s
	changes   = 0.2  // a gear change on full throttle, s
	firstGear = 22.0 // speed up to which first gear reaches, m/s
	nextGear  = 1.35 // factor of the top speed from gear to gear
	under     = 1.0  // how far below its first speed a roll-on or a pull begins, m/s
	past      = 3.0  // how far above its last speed a launch or a roll-on continues, m/s
	pushStep  = 0.01 // of the integration, s
	pushGives = 90.0 // after which a push is aborted, s
)

// push is the planned run: the driving force, and where the run ends.
type push struct {
	kind     Push
	c        PushConditions
	speed    float64 // of the mark, m/s; 0: a distance
	distance float64 // of the mark, m
}

func (q PushQuestion) push(c PushConditions) (push, error) {
	p := push{kind: q.Push, c: c, speed: c.ToMPS}
	if q.Push == Launches {
		p.speed, p.distance, _ = marks.GoalOf(q.Mark)
	}
	if c.Takes > 0 && q.Push != Pulls {
		return p.lasting(c.Takes)
	}
	_, err := p.ride(nil)
	return p, err
}

// drive is the force of the engine at the road at time t after the throttle or
// clutch began to move, in the gear that reaches up to a speed, N. Within a
// gear an engine's torque changes little, so the force is constant and the
// power is greatest at the gear's end.
func (p push) drive(t, upTo float64) float64 {
	switch p.kind {
	case Launches:
		return math.Min(t/clutches, 1) * math.Min(p.c.Grip*p.c.Load.Mass, p.c.Power/upTo)
	case RollOns:
		return math.Min(t/opens, 1) * topShare * p.c.Power / upTo
	}
	return math.Min(t/opens, 1) * p.c.Power / upTo
}

// ridden is a simulated push in equal time steps.
type ridden struct {
	v, s    []float64 // m/s, m
	changes []float64 // when gears were changed, s
	closed  float64   // remaining time with a closed throttle, s
}

// gearEnd is the highest speed in the current gear of a launch, m/s.
func (r *ridden) gearEnd() float64 { return firstGear * math.Pow(nextGear, float64(len(r.changes))) }

// open is the fraction of the next step in which the throttle is open, given
// the speed that the step would gain. A launch that reaches the end of its gear
// within the step changes there, so that the time taken is a smooth function of
// the resistance.
func (r *ridden) open(t, v, gain float64) float64 {
	if r.closed > 0 {
		shut := math.Min(r.closed, pushStep)
		r.closed -= shut
		return 1 - shut/pushStep
	}
	end := r.gearEnd()
	if v+gain <= end {
		return 1
	}
	share := math.Max(end-v, 0) / gain
	r.changes = append(r.changes, t+share*pushStep)
	r.closed = changes - (1-share)*pushStep
	return share
}

// ride simulates the push against the road load and a further resisting force,
// nil for none.
func (p push) ride(further func(t, v float64) float64) (ridden, error) {
	l, inertia := p.c.Load, p.c.Load.Mass+p.c.RotatingMass
	upTo, open := p.c.ToMPS, 1.0
	accel := func(t, v float64) float64 {
		f := open*p.drive(t, upTo) - l.Force(v).X
		if further != nil {
			f -= further(t, v)
		}
		return f / inertia
	}
	var r ridden
	v, s := 0.0, 0.0
	if p.kind != Launches {
		v = p.c.FromMPS - under
	}
	for t := 0.0; t < pushGives; t += pushStep {
		r.v, r.s = append(r.v, v), append(r.s, s)
		if p.over(v, s) {
			return r, nil
		}
		if p.kind == Launches {
			upTo, open = r.gearEnd(), 1
			open = r.open(t, v, accel(t, v)*pushStep)
		}
		mid := math.Max(v+accel(t, v)*pushStep/2, 0)
		v = math.Max(v+accel(t+pushStep/2, mid)*pushStep, 0)
		s += mid * pushStep
	}
	return r, finding.Fail(codeTooWeak, finding.Power("power", p.c.Power), finding.Time("within", pushGives))
}

// over reports whether the run is over: a pull at its last speed, the others a
// little past their mark, as in practice.
func (p push) over(v, s float64) bool {
	switch {
	case p.kind == Pulls:
		return v > p.speed
	case p.distance > 0:
		return s > p.distance+v
	}
	return v > p.speed+past
}

// took is the time of the mark, s: for a launch from the one-foot rollout, as
// in comparisons.
func (p push) took(r ridden) float64 {
	if p.kind == Launches {
		begin := passes(r.s, marks.Rollout)
		if p.distance > 0 {
			return passes(r.s, p.distance) - begin
		}
		return passes(r.v, p.speed) - begin
	}
	return passes(r.v, p.c.ToMPS) - passes(r.v, p.c.FromMPS)
}

// passes is the time at which a rising series passes a value, s.
func passes(x []float64, at float64) float64 {
	for i := 1; i < len(x); i++ {
		if x[i] >= at && x[i-1] < at {
			return pushStep * (float64(i-1) + (at-x[i-1])/(x[i]-x[i-1]))
		}
	}
	return math.NaN()
}

// lasting adjusts the push so that it takes the given time. If that is quicker
// than the assumed grip allows, the grip is raised as well.
func (p push) lasting(takes float64) (push, error) {
	const plenty = 150e3 // W
	grip := p.c.Grip
	weak, strong := math.Log(1e3), math.Log(1e6)
	for range 40 {
		mid := (weak + strong) / 2
		p.c.Power = math.Exp(mid)
		p.c.Grip = grip * math.Max(1, p.c.Power/plenty)
		if r, err := p.ride(nil); err != nil || p.took(r) > takes {
			weak = mid
		} else {
			strong = mid
		}
	}
	r, err := p.ride(nil)
	if err != nil || math.Abs(p.took(r)-takes) > 0.02*takes {
		return p, finding.Fail(codeNoBikeTakes, finding.Time("takes", takes))
	}
	return p, nil
}
