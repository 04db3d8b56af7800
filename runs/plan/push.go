package plan

import (
	"math"

	"stillair/runs/effect"
	"stillair/runs/marks"
	"stillair/runs/measure"
	"stillair/runs/roadload"
	"stillair/runs/usual"
	"stillair/sensors/finding"
)

// Push is a kind of full-throttle run.
type Push string

// The pushes.
const (
	Pulls    Push = "pulls"    // through one gear, for power
	Launches Push = "launches" // from standstill, for the time to a mark
	RollOns  Push = "roll-ons" // in one gear, for the time from one speed to another
)

// PushQuestion is a question about the power or the times of the setups.
type PushQuestion struct {
	Push    Push
	Mark    string  // launches: a name such as "0-100 km/h" or "1/4 mile"
	Setups  int     // how many, at least 2
	Change  float64 // the change that matters: for pulls of the mean power, 0.04 is 4 %; else s
	Chance  float64 // how likely the test shall be to see it; 0: 0.8
	MaxPair int     // most pairs a setup that the rider will ride; 0: 8
}

// PushConditions are the expected conditions of a test of pulls, launches or
// roll-ons. FromMPS and ToMPS are the speeds of a pull or a roll-on; launches
// go to their mark.
type PushConditions struct {
	Conditions
	Power   float64 // approximate highest power at the road, W
	Takes   float64 // launches, roll-ons: approximate present time of the mark, s; 0: calculated from Power
	Grip    float64 // launches: acceleration at which the front wheel lifts or the rear one slips, m/s²
	Spread  float64 // standard deviation between repeats due to rider and bike: for pulls of power, relative; else s
	GradeSD float64 // slope of an apparently level road, standard deviation
	Shake   float64 // vibration from the road: two-sided density at shakeSpeed, m²/s³
}

// Repeatability of one rider when nothing was changed: launches vary with the
// clutch and the gear changes, roll-ons with the opening of the throttle, and
// pulls with the engine's temperature (common practice).
const (
	LaunchesVary = 0.1  // s
	RollOnsVary  = 0.05 // s
	PullsVary    = 0.01 // of the power
)

// Other defaults where nothing is entered (common practice).
const (
	usualGrip  = 8.5   // m/s²
	topShare   = 0.5   // share of the highest power in top gear at the end of a roll-on
	usualShake = 0.036 // m²/s³: a phone in a holder on the bars, shaken by 6 m/s², a third of its power by the road
	shakeSpeed = 20    // m/s
)

// DefaultPush is an everyday test of a bike on full throttle. windSD is the
// standard deviation of a pair's mean wind along the road, m/s.
func DefaultPush(p Push, l effect.Load, windSD float64) PushConditions {
	c := PushConditions{Conditions: pushDay(l, windSD), Power: usual.Power, Grip: usualGrip, GradeSD: usual.LevelGrade, Shake: usualShake}
	switch p {
	case Pulls:
		c.FromMPS, c.ToMPS, c.Spread = 50/3.6, 130/3.6, PullsVary
	case RollOns:
		c.FromMPS, c.ToMPS, c.Spread = 80/3.6, 120/3.6, RollOnsVary
	default:
		c.Spread = LaunchesVary
	}
	return c
}

// pushDay is a day as of DefaultConditions, but with the gusts of package
// roadload, since the scatter of the repeats includes them.
func pushDay(l effect.Load, windSD float64) Conditions {
	c := DefaultConditions(l, windSD)
	c.Noise = roadload.DefaultOptions(c.Noise.WindSD)
	return c
}

// MakePush finds the smallest test on full throttle that answers the question.
func MakePush(q PushQuestion, c PushConditions) (*Plan, error) {
	if err := q.check(c); err != nil {
		return nil, err
	}
	r, err := q.repeat(c)
	if err != nil {
		return nil, err
	}
	p, err := fewest(q.MaxPair, func(n int) (*Plan, error) { return q.lay(r, n), nil })
	if err == nil && !p.Enough {
		p.Advice = q.advise(c, r, p)
	}
	return p, err
}

// check fills in defaults and returns an error for what cannot be planned.
func (q *PushQuestion) check(c PushConditions) error {
	if q.Chance == 0 {
		q.Chance = 0.8
	}
	if q.MaxPair == 0 {
		q.MaxPair = 8
	}
	_, _, known := marks.GoalOf(q.Mark)
	switch {
	case q.Setups < 2:
		return finding.Fail(codeSetups, finding.Count("least", 2))
	case q.Push == Launches && !known:
		return finding.Fail(codeMark, finding.Text("mark", q.Mark))
	case q.Push == Pulls && !(q.Change > 0 && q.Change < 1):
		return finding.Fail(codePowerShare, finding.Share("change", q.Change))
	case !(q.Change > 0 && q.Change < 60):
		return finding.Fail(codeSeconds, finding.Time("change", q.Change))
	case !(q.Chance > 0.05 && q.Chance < 1):
		return finding.Fail(codeChance, finding.Share("chance", q.Chance))
	case q.MaxPair < 2:
		return finding.Fail(codeFewPairs)
	}
	return c.check(q.Push)
}

func (c PushConditions) check(p Push) error {
	switch {
	case p != Launches && (!(c.FromMPS > 0) || c.ToMPS < c.FromMPS+5):
		return finding.Fail(codeShort, finding.Speed("from", c.FromMPS), finding.Speed("to", c.ToMPS), finding.Speed("least", leastRange))
	case !(c.FixRate > 0):
		return finding.Fail(codeRate)
	case !(c.Power > 0):
		return finding.Fail(codeNoPower)
	case !(c.Spread >= 0) || p == Pulls && c.Spread >= 0.5:
		return finding.Fail(codeSpread, finding.Num("spread", c.Spread))
	}
	return c.Load.Check()
}

// lay plans n pairs a setup.
func (q PushQuestion) lay(r repeat, n int) *Plan {
	p := &Plan{Pairs: n, Blocks: order(q.Setups, n), RoadLength: r.road, Up: r.up, Stop: r.stop}
	runs := 2 * n * q.Setups
	p.Seconds = float64(runs)*r.seconds + float64(len(p.Blocks)-1)*r.change
	count := float64(2 * n) // repeats of each setup
	test := student{level: levelOf(q.Setups), least: r.phone / r.sd()}
	if q.Push == Pulls {
		count, test.least = float64(n), 0
	}
	test.dof = 2*count - 2
	// Half the repeats are off in one direction and half in the other, by the
	// same amount.
	test.beyond = (square(r.wind) + square(r.slope)) / square(r.sd()) * count / (count - 1)
	se := r.sd() * math.Sqrt(2/count)
	p.SE = se * math.Max(math.Sqrt(1+test.beyond), test.least)
	p.Half = measure.Quantile(1-test.level, test.dof) * p.SE
	p.Whole = p.Half
	p.Chance = test.chance(q.Change / se)
	p.Smallest = se * test.needed(q.Chance)
	p.Enough = p.Chance >= q.Chance
	return p
}

// advise tries the changes that a rider can make and keeps those that help.
func (q PushQuestion) advise(c PushConditions, r repeat, now *Plan) []Advice {
	calm, alike, often, more := r, r, c, q
	calm.gusts, calm.wind = r.gusts/2, r.wind/2
	if q.Push == Pulls { // whose bound includes the wind
		day := c
		day.Noise = calmer(c.Noise)
		if tried, err := q.repeat(day); err == nil {
			calm = tried
		}
	}
	alike.rider /= 2
	more.MaxPair *= 2
	often.FixRate = 10
	quick, err := q.repeat(often)
	if err != nil {
		quick = r
	}
	var out []Advice
	for _, t := range []struct {
		change finding.Finding
		q      PushQuestion
		r      repeat
	}{
		{finding.New(codeCalmer), q, calm},
		{finding.New(codeAlike), q, alike},
		{morePairs(more.MaxPair, q.MaxPair), more, r},
		{finding.New(codeOften), q, quick},
	} {
		if p := t.q.lay(t.r, t.q.MaxPair); p.Smallest < 0.95*now.Smallest {
			out = append(out, Advice{Change: t.change, Chance: p.Chance, Smallest: p.Smallest})
		}
	}
	return out
}

func square(x float64) float64 { return x * x }
