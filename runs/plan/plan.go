package plan

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/effect"
	"stillair/runs/roadload"
	"stillair/sensors/finding"
)

// Conditions are the expected conditions of the test.
type Conditions struct {
	Load         effect.Load // rough road load, mass and air of the bike
	RotatingMass float64     // kg
	FromMPS      float64     // where a coast-down begins, m/s
	ToMPS        float64     // where it ends, m/s
	FixRate      float64     // fixes a second
	BreakSeconds float64     // between runs: turning round and getting up to speed, s
	ChangeTime   float64     // for changing the setup, s
	Noise        roadload.Options
	GustsUnsure  float64 // standard deviation of the logarithm of the day's gusts relative to those in Noise
}

// Conditions assumed when only the wind from pair to pair is known.
const (
	// At a rider's height over open country gusts are 1/ln(z/z₀) of the mean
	// wind (Counihan, Atmospheric Environment 9 (1975) 871): 0.29 to 0.43 for 1
	// m over z₀ of 3 to 10 cm. From a direction not known, a mean wind U blows
	// along the road with a spread of U/√2, so gusts are about half the spread
	// of the wind from pair to pair, which contains all changes slower than a
	// coast-down.
	usualGusts = 0.45
	// The same formula between short grass and hedges, and days of more or less
	// sun, differ by half either way.
	gustsUnsure = 0.5
	// Half of that variance is the place's and returns on another day, half is
	// the day's (an assumption, judged by TestPlansKeepTheirWord).
	dayUnsure = gustsUnsure / math.Sqrt2
	// Where nothing is known about the road its slope wanders by 0.1 % (common
	// practice for an asphalt road that looks level and even).
	usualRoad  = 0.001
	roadUnsure = 0.7 // of its logarithm: from half to twice as rough
	// The smallest wind over a road, m/s (common practice: calm is below 0.3
	// m/s, Beaufort 0).
	stillest = 0.2
)

// leastRange is the smallest difference between the speeds of a run, m/s, as
// stated to the rider; slightly less is accepted.
const leastRange = 20 / 3.6

// DefaultConditions is an everyday test of a bike: 110 to 30 km/h, a phone
// that gives one fix a second, a minute between runs. windSD is the
// standard deviation of a pair's mean wind along the road, m/s.
func DefaultConditions(l effect.Load, windSD float64) Conditions {
	windSD = math.Max(windSD, stillest)
	noise := roadload.DefaultOptions(windSD)
	noise.Noise.GustSD, noise.Noise.RoadSD = usualGusts*windSD, usualRoad
	return Conditions{
		Load: l, RotatingMass: 0.04 * l.Mass,
		FromMPS: 110 / 3.6, ToMPS: 30 / 3.6, FixRate: 1,
		BreakSeconds: 60, ChangeTime: 300,
		Noise: noise, GustsUnsure: gustsUnsure,
	}
}

// As takes gusts, road and receiver from an earlier test of the rider's own,
// for another day on such a road. A few pairs determine gusts and road only
// roughly, so they are combined with the usual values by precision weighting;
// and another day has gusts of its own.
func (c Conditions) As(e *roadload.Estimate) Conditions {
	usual := c.Noise.Noise
	c.Noise.Noise = e.Noise
	c.Noise.Noise.GustSD, c.GustsUnsure = weighed(e, func(n *roadload.Noise) *float64 { return &n.GustSD }, usual.GustSD, c.GustsUnsure, dayUnsure)
	c.Noise.Noise.RoadSD, _ = weighed(e, func(n *roadload.Noise) *float64 { return &n.RoadSD }, usual.RoadSD, roadUnsure, 0)
	var sum, n float64
	for _, p := range e.Pairs {
		sum, n = sum+p.Wind.X*p.Wind.X+p.Wind.SE*p.Wind.SE, n+1
	}
	if n > 0 {
		c.Noise.WindSD = math.Max(math.Sqrt(sum/n), stillest)
	}
	return c
}

// weighed is the precision-weighted mean of the logarithms of a learned and a
// usual noise parameter, with the standard deviation of another day about it. Of
// the usual value's standard deviation unsure, the part day changes from day to day.
func weighed(e *roadload.Estimate, of func(*roadload.Noise) *float64, usual, unsure, day float64) (x, sd float64) {
	learned, by := e.Noise, e.Unsure(of)
	if !(by > 0) || math.IsInf(by, 1) || !(*of(&learned) > 0) {
		return usual, unsure
	}
	a, b := 1/(by*by+day*day), 1/(unsure*unsure-day*day)
	return math.Exp((a*math.Log(*of(&learned)) + b*math.Log(usual)) / (a + b)), math.Sqrt(1/(a+b) + day*day)
}

func calmer(o roadload.Options) roadload.Options {
	o.WindSD, o.Noise.GustSD, o.Noise.ShiftSD = o.WindSD/2, o.Noise.GustSD/2, o.Noise.ShiftSD/2
	return o
}

// Question is what the rider wants to know about the setups.
type Question struct {
	Setups  int     // how many
	CdA     float64 // the relative change of drag area that matters: 0.02 is 2 %; for one setup the desired ± from noise alone
	Chance  float64 // desired probability of seeing it; 0: 0.8
	MaxPair int     // maximum number of pairs per setup; 0: 8
}

// FromTopSpeed turns a change of top speed dv that matters, at a top speed of
// v (both m/s), into a relative change of drag area: on the same power, to
// first order.
func FromTopSpeed(l effect.Load, v, dv float64) float64 {
	one := effect.Change{}
	one.CdA.X = l.CdA.X
	return math.Abs(dv / one.Speed(l, v).X)
}

// Plan is a test with its chance of success. Differences are in the unit of the
// question: relative for drag and power, in s for times.
type Plan struct {
	Pairs      int     // opposite pairs for each setup
	Blocks     []Block // in the order of riding
	RoadLength float64 // m, with the way to get up to speed and to stop
	Up, Stop   float64 // of it at one end: to get up to speed, or to stop from that; to stop after a run, m
	Seconds    float64 // the whole test, s
	SE         float64 // standard error of the difference as the comparison will report it
	Half       float64 // half width of its 95 % interval; for one setup that from noise alone
	Whole      float64 // for one setup: half width including assumptions; else as Half
	Chance     float64 // of seeing the change that matters
	Gusty      float64 // the same on a day gustier than nine of ten such days; 0: gusts are not looked at apart
	Calm       float64 // and on one calmer than nine of ten
	Smallest   float64 // change that is seen with the desired chance
	Enough     bool    // Chance is at least as desired
	Advice     []Advice
}

// Block is some pairs with one setup, before it is changed.
type Block struct {
	Setup int // from 0
	Pairs int
}

// Advice is one thing that would help a plan that is not enough.
type Advice struct {
	Change   finding.Finding
	Chance   float64 // of seeing the change that matters, with it
	Smallest float64 // change seen with the desired chance, with it
}

// Make finds the smallest test that answers the question.
func Make(q Question, c Conditions) (*Plan, error) {
	if err := check(&q, c); err != nil {
		return nil, err
	}
	p, err := fewest(q.MaxPair, func(n int) (*Plan, error) { return lay(q, c, n) })
	if err == nil && !p.Enough {
		p.Advice = advise(q, c)
	}
	return p, err
}

// fewest is the test with the fewest pairs that are enough, or that with the
// most.
func fewest(most int, lay func(pairs int) (*Plan, error)) (p *Plan, err error) {
	for n := 2; n <= most; n += 2 {
		if p, err = lay(n); err != nil || p.Enough {
			return p, err
		}
	}
	return p, nil
}

func check(q *Question, c Conditions) error {
	if q.Chance == 0 {
		q.Chance = 0.8
	}
	if q.MaxPair == 0 {
		q.MaxPair = 8
	}
	switch {
	case q.Setups < 1:
		return finding.Fail(codeSetups, finding.Count("least", 1))
	case !(q.CdA > 0 && q.CdA < 1):
		return finding.Fail(codeShare, finding.Share("change", q.CdA))
	case !(q.Chance > 0.05 && q.Chance < 1):
		return finding.Fail(codeChance, finding.Share("chance", q.Chance))
	case q.MaxPair < 2:
		return finding.Fail(codeFewPairs)
	case !(c.ToMPS > 0) || c.FromMPS < c.ToMPS+5:
		return finding.Fail(codeSpeeds, finding.Speed("from", c.FromMPS), finding.Speed("to", c.ToMPS), finding.Speed("least", leastRange))
	case !(c.FixRate > 0):
		return finding.Fail(codeRate)
	}
	return c.Load.Check()
}

// lay plans n pairs a setup.
func lay(q Question, c Conditions, n int) (*Plan, error) {
	p := &Plan{Pairs: n, Blocks: order(q.Setups, n)}
	d := newDesign(c, p.Blocks)
	days, err := d.days(q.Setups, n)
	if err != nil {
		return nil, err
	}
	p.SE, p.Half, p.Whole = days.mean(day.se), days.mean(day.half), days.mean(day.half)
	if q.Setups == 1 {
		p.Half = days.mean(day.noiseHalf)
		p.Smallest = p.Half
		p.chances(days, func(x day) float64 { return narrow(x, q.CdA) })
	} else {
		p.chances(days, func(x day) float64 { return x.test().chance(q.CdA / x.se()) })
		p.Smallest = smallest(func(change float64) float64 {
			return days.mean(func(x day) float64 { return x.test().chance(change / x.se()) })
		}, q.Chance, p.SE)
	}
	p.Enough = p.Chance >= q.Chance
	p.Up, p.Stop = gettingUp(c.FromMPS), stopping(c.ToMPS)
	p.RoadLength = d.length + p.Up + math.Max(p.Up, p.Stop)
	p.Seconds = d.seconds
	return p, nil
}

// KnowsDays reports whether the plan looked at gusty and calm days apart.
func (p *Plan) KnowsDays() bool { return p.Calm > 0 }

// chances stores the chance over all days, and on a gusty and a calm one.
func (p *Plan) chances(all days, on func(day) float64) {
	p.Chance, p.Gusty, p.Calm = all.mean(on), on(all.at(oneInTen)), on(all.at(-oneInTen))
}

// narrow is the chance that the interval of one setup from noise alone is no
// wider than required: its width is estimated from the scatter, whose square
// has a relative variance of 2/dof.
func narrow(x day, ask float64) float64 {
	z := (ask/x.noiseHalf() - 1) * math.Sqrt(2*x.dof)
	return distuv.UnitNormal.CDF(z)
}

// smallest is the smallest change detected with the required power.
func smallest(chance func(float64) float64, ask, se float64) float64 {
	lo, hi := 0.0, se
	for chance(hi) < ask {
		hi *= 2
	}
	for hi-lo > 1e-4*hi {
		if mid := (lo + hi) / 2; chance(mid) < ask {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// order goes through the setups forwards and backwards (A B B A), with half the
// pairs each time.
func order(setups, pairs int) []Block {
	var b []Block
	add := func(s int) {
		if n := len(b); n > 0 && b[n-1].Setup == s {
			b[n-1].Pairs += pairs / 2
			return
		}
		b = append(b, Block{Setup: s, Pairs: pairs / 2})
	}
	for s := range setups {
		add(s)
	}
	for s := setups - 1; s >= 0; s-- {
		add(s)
	}
	return b
}

// advise tries the changes that a rider can make and keeps those that help.
func advise(q Question, c Conditions) []Advice {
	calm := c
	calm.Noise = calmer(c.Noise)
	fast := c
	fast.FromMPS += 20 / 3.6
	more := q
	more.MaxPair = 2 * q.MaxPair
	often := c
	often.FixRate = 10
	tries := []struct {
		change finding.Finding
		q      Question
		c      Conditions
	}{
		{finding.New(codeCalmer), q, calm},
		{finding.New(codeFaster, finding.Speed("from", fast.FromMPS)), q, fast},
		{morePairs(more.MaxPair, q.MaxPair), more, c},
		{finding.New(codeOften), q, often},
	}
	var out []Advice
	now, err := lay(q, c, q.MaxPair)
	if err != nil {
		return nil
	}
	for _, t := range tries {
		p, err := lay(t.q, t.c, t.q.MaxPair)
		if err == nil && p.Smallest < 0.95*now.Smallest {
			out = append(out, Advice{Change: t.change, Chance: p.Chance, Smallest: p.Smallest})
		}
	}
	return out
}
