package plan

import (
	"math"

	"stillair/fusion"
	"stillair/runs/marks"
	"stillair/runs/power"
	"stillair/sensors/finding"
)

// repeat is one repeat of a push: a launch, a roll-on, or a pair of opposite
// pulls. Standard deviations are in the unit of the question.
type repeat struct {
	phone   float64 // from phone and receiver; in pulls also from gusts
	rider   float64 // from rider and bike
	gusts   float64
	wind    float64 // from the pair's wind, with opposite signs out and back
	slope   float64 // from the slope, likewise
	road    float64 // m, with the way to get up to speed and to stop
	up      float64 // m, of it
	stop    float64 // m, of it
	seconds float64 // of one run with the way back
	change  float64 // s, for changing the setup
}

// sd is the standard deviation between repeats without wind and slope.
func (r repeat) sd() float64 { return math.Hypot(math.Hypot(r.phone, r.rider), r.gusts) }

// above is the ratio of the standard errors of times to the bound, which
// assumes known noise and engine orders: the accuracy report has 0.9 to 1.5 for
// times on most bikes, and 0.9 to 1.1 for power.
const above = 1.1

// repeat computes the standard deviations of one repeat.
func (q PushQuestion) repeat(c PushConditions) (repeat, error) {
	p, err := q.push(c)
	if err != nil {
		return repeat{}, err
	}
	run, err := p.ride(nil)
	if err != nil {
		return repeat{}, err
	}
	r := repeat{change: c.ChangeTime, seconds: float64(len(run.v))*pushStep + c.BreakSeconds}
	top := run.v[len(run.v)-1]
	r.up, r.stop = gettingUp(run.v[0]), stopping(top)
	r.road = run.s[len(run.s)-1] + r.up + math.Max(r.up, r.stop)
	if q.Push == Pulls {
		r.rider = c.Spread / math.Sqrt2
		r.phone, err = p.powerBound(run)
		return r, err
	}
	r.rider = c.Spread
	if r.phone = above * p.timeBound(run, q.Mark); math.IsNaN(r.phone) {
		return r, finding.Fail(codeNoTime)
	}
	return r, p.weather(&r)
}

// weather computes the effect of gusts, wind and slope on the time.
func (p push) weather(r *repeat) error {
	const slot = 0.5 // s; gusts last longer
	calm, err := p.ride(nil)
	if err != nil {
		return err
	}
	base := p.took(calm)
	with := func(further func(t, v float64) float64) float64 {
		hard, rideErr := p.ride(further)
		if rideErr != nil {
			err = rideErr
		}
		return p.took(hard) - base
	}
	l := p.c.Load
	const breath = 1.0 // m/s of wind to calculate the response
	var response []float64
	var wind float64
	for at := 0.0; at < float64(len(calm.v))*pushStep; at += slot {
		x := with(func(t, v float64) float64 {
			if t < at || t >= at+slot {
				return 0
			}
			return l.Density * l.CdA.X * v * breath
		}) / breath
		response = append(response, x)
		wind += x
	}
	r.slope = with(func(float64, float64) float64 { return l.Mass * l.Gravity * p.c.GradeSD / 10 }) * 10
	r.wind = wind * p.c.Noise.WindSD
	var sum float64
	n := p.c.Noise.Noise
	for i, a := range response {
		for j, b := range response {
			sum += a * b * math.Exp(-slot*math.Abs(float64(i-j))/n.GustTime)
		}
	}
	r.gusts = n.GustSD * math.Sqrt(math.Max(sum, 0))
	return err
}

// repeats is the number of pushes in the ride for which the bound is computed:
// enough for the lag and the accelerometer's scale to be learned.
const repeats = 4

// layout is a ride of several pushes, for the bound.
type layout struct {
	known  fusion.Known
	starts []float64 // of the pushes, s
	length float64   // of a push, s
}

// layOut puts pushes in sequence, with the intervals between them.
func (p push) layOut(run ridden) layout {
	const waits, holds, brakes = 6.3, 3.1, 2.5 // s, s, m/s²; odd, so that fixes fall on all phases of a push
	n := p.c.Noise.Noise
	l := layout{length: float64(len(run.v)) * pushStep}
	l.known = fusion.Known{WhiteSD: n.WhiteSD, DriftSD: n.DriftSD, DriftTime: n.DriftTime, BiasWalk: biasWalk}
	add := func(v float64) {
		k := &l.known
		k.T, k.V = append(k.T, pushStep*float64(len(k.T))), append(k.V, v)
		k.Vibration = append(k.Vibration, p.c.Shake*square(v/shakeSpeed)+sensorNoise)
	}
	last, first := run.v[len(run.v)-1], run.v[0]
	for range repeats {
		from := pushStep * float64(len(l.known.T))
		for range int(waits / pushStep) {
			add(first)
		}
		l.starts = append(l.starts, pushStep*float64(len(l.known.T)))
		if first == 0 {
			l.known.Still = append(l.known.Still, fusion.Span{From: from, To: l.starts[len(l.starts)-1]})
		}
		for _, v := range run.v {
			add(v)
		}
		for range int(holds / pushStep) {
			add(last)
		}
		for v := last; v > first; v -= brakes * pushStep {
			add(v)
		}
	}
	end := l.known.T[len(l.known.T)-1]
	for t := 0.4; t < end; t += 1 / p.c.FixRate {
		l.known.Fixes = append(l.known.Fixes, t)
	}
	return l
}

// Errors of a phone's accelerometer (data sheets, common practice).
const (
	sensorNoise = 0.02 * 0.02 / 100       // m²/s³, two-sided, at 100 readings a second
	biasWalk    = 2 * 0.02 * 0.02 / 600.0 // (m/s²)²/s
)

// timeBound is the bound of the time of the mark, s: the root mean square over
// the pushes of a ride.
func (p push) timeBound(run ridden, mark string) float64 {
	l := p.layOut(run)
	track := fusion.Bound(l.known)
	pair := []marks.SpeedPair{{Name: mark, From: p.c.FromMPS, To: p.c.ToMPS}}
	var sum, n float64
	for _, a := range l.starts {
		b := a + l.length
		moved := []fusion.Span{{From: b - 0.3, To: b + 0.3}}
		for _, t := range run.changes {
			moved = append(moved, fusion.Span{From: a + t - 0.3, To: a + t + changes + 0.3})
		}
		var all []marks.Mark
		if p.kind == Launches {
			all, _ = marks.OfLaunch(track, track, a, b, moved, nil)
		} else {
			moved = append(moved, fusion.Span{From: a - 0.3, To: a + opens + 0.3})
			all = marks.OfRollOn(track, track, a, b, moved, pair)
		}
		for _, m := range all {
			se := m.Time.SE
			if p.kind == Launches {
				se = m.Rollout.SE
			}
			if m.Name == mark && !math.IsNaN(se) {
				sum, n = sum+se*se, n+1
			}
		}
	}
	return math.Sqrt(sum / n)
}

// powerBound is the bound of the mean power of a pair of opposite pulls,
// relative, mass and road load left out.
func (p push) powerBound(run ridden) (float64, error) {
	l := p.layOut(run)
	bike := power.Bike{Load: p.c.Load, RotatingMass: p.c.RotatingMass}
	n := p.c.Noise
	day := power.Day{WindSD: n.WindSD, GustSD: n.Noise.GustSD, GustTime: n.Noise.GustTime, GradeSD: p.c.GradeSD}
	var pulls []power.Stretch
	for i, a := range l.starts[1:3] {
		pulls = append(pulls, power.Stretch{From: a + opens, To: a + l.length - pushStep, Dir: float64(1 - 2*i), Pair: 1})
	}
	c, err := power.Bound(fusion.Bound(l.known), pulls, bike, day)
	if err != nil {
		return 0, err
	}
	m := c.Mean()
	return m.SE / m.X, nil
}
