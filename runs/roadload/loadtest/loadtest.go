// Package loadtest simulates coast-downs for measuring the accuracy of package
// roadload: the equation of motion is integrated in small steps with nonlinear
// gusts, and a receiver's errors are added.
package loadtest

import (
	"math"
	"math/rand/v2"

	"stillair/runs/roadload"
	"stillair/sensors/units"
)

// Bike is a simulated bike.
type Bike struct {
	Name     string
	CdA, Crr float64 // m², 1
	Slope    float64 // k, s/m
	Mass     float64 // kg
	Rotating float64 // kg
}

// growth is how rolling resistance grows with speed on all of them, s/m.
const growth = 0.004

// Bikes are three simulated bikes.
var Bikes = [...]Bike{
	{"naked", 0.55, 0.018, growth, 290, 11.6},
	{"tourer", 0.75, 0.018, growth, 460, 18.4},
	{"sport", 0.36, 0.018, growth, 280, 11.2},
}

// Test is a simulated test: pairs of opposite runs on one road.
type Test struct {
	Bike     Bike
	Setup    int
	Pairs    int
	From, To float64 // m/s
	Rate     float64 // fixes in a second
	WindSD   float64 // of a pair's mean wind, m/s
	GradeSD  float64 // of a pair's mean slope
	Noise    roadload.Noise
	Density  float64
	Road     func(x float64) float64 // slope about the mean in direction +1; nil: none
	Length   float64                 // of the stretch, m: runs back start at its end
	Scatter  float64                 // standard deviation of the start of runs, m
	Farther  float64                 // how much farther along each run starts than that of the pair before, m; the middle pair is not shifted
	Press    float64                 // share of dynamic pressure measured by the barometer
	Baro     bool                    // runs have heights
	Altitude Altitude                // of the receiver; zero: none
	Shift    func(pair int) float64  // change of the mean wind before the second run of a pair, m/s; nil: none
	Spoil    func(run int, t, v float64) (force, air float64)
}

// Altitude is how the receiver's altitude errs.
type Altitude struct {
	SD, Time float64 // wandering error, m, and its correlation time, s
	WhiteSD  float64 // m
	Step     float64 // resolution, m; 0: not rounded
}

// UsualAltitude is that of a single-frequency receiver: the wandering part is
// Beard and McLain's (Small Unmanned Aircraft, 2012, section 7.5, from memory),
// 0.40 m of new error every second and a time constant of 1100 s; the white part
// is common practice.
func UsualAltitude() Altitude { return Altitude{SD: 9.4, Time: 1100, WhiteSD: 0.3, Step: 0.1} }

// given returns the receiver's altitudes for heights that are every seconds
// apart.
func (a Altitude) given(r *rand.Rand, heights []float64, every float64) []float64 {
	if a.SD == 0 {
		return nil
	}
	wander := newOU(r, a.SD, a.Time)
	out := make([]float64, len(heights))
	for i, h := range heights {
		out[i] = 120 + h + wander.step(r, every) + a.WhiteSD*r.NormFloat64()
		if a.Step > 0 {
			out[i] = math.Round(out[i]/a.Step) * a.Step
		}
	}
	return out
}

// Default is five pairs from 110 to 30 km/h.
func Default(b Bike, windSD float64) Test {
	n := roadload.DefaultOptions(windSD).Noise
	n.RoadSD = 0
	return Test{Bike: b, Pairs: 5, From: 110 / 3.6, To: 30 / 3.6, Rate: 1, WindSD: windSD, GradeSD: 0.003,
		Noise: n, Density: 1.2, Length: 1000, Scatter: 30}
}

// ou is an Ornstein-Uhlenbeck process, sampled exactly.
type ou struct{ sd, tau, x float64 }

func newOU(r *rand.Rand, sd, tau float64) ou { return ou{sd, tau, sd * r.NormFloat64()} }

func (o *ou) step(r *rand.Rand, h float64) float64 {
	f := math.Exp(-h / o.tau)
	o.x = f*o.x + o.sd*math.Sqrt(1-f*f)*r.NormFloat64()
	return o.x
}

// Rough returns a road whose slope is an Ornstein-Uhlenbeck process in place,
// with the given standard deviation and length, from −2 to 5 km.
func Rough(r *rand.Rand, sd, length float64) func(x float64) float64 {
	const from, to, h = -2000.0, 5000.0, 5.0
	p := newOU(r, sd, length)
	s := make([]float64, int((to-from)/h)+2)
	for i := range s {
		s[i] = p.step(r, h)
	}
	return func(x float64) float64 {
		f := math.Min(math.Max((x-from)/h, 0), float64(len(s)-2))
		i := int(f)
		return s[i] + (f-float64(i))*(s[i+1]-s[i])
	}
}

// Ride returns the coast-downs of a test.
func (c Test) Ride(r *rand.Rand) []roadload.Run {
	var out []roadload.Run
	start := 0.0
	for p := range c.Pairs {
		wind, grade := c.WindSD*r.NormFloat64(), c.GradeSD*r.NormFloat64()
		for _, dir := range []float64{1, -1} {
			own := rand.New(rand.NewPCG(r.Uint64(), r.Uint64())) // so that spoiling one run does not change the others
			run := c.roll(own, len(out), dir, wind, grade, start)
			run.Pair = p + 1
			out = append(out, run)
			start = run.T[len(run.T)-1] + 60
			if c.Shift != nil && dir > 0 {
				wind += c.Shift(p)
			}
		}
	}
	return out
}

// After appends runs to those ridden before, with the numbers of runs and pairs that
// follow, and a pause in s between the last and the first.
func After(before, runs []roadload.Run, pause float64) []roadload.Run {
	pair, start := 0, 0.0
	if n := len(before); n > 0 {
		last := before[n-1]
		pair, start = last.Pair, last.T[len(last.T)-1]+pause
	}
	for _, r := range runs {
		r.ID, r.Pair = len(before)+1, r.Pair+pair
		for i := range r.T {
			r.T[i] += start
		}
		before = append(before, r)
	}
	return before
}

const (
	tick    = 0.02 // s
	longest = 150  // of a run, if the road is too steep for the bike to slow down, s
)

func (c Test) roll(r *rand.Rand, index int, dir, wind, grade, start float64) roadload.Run {
	b := c.Bike
	out := roadload.Run{ID: index + 1, Setup: c.Setup, Dir: dir, Mass: b.Mass, Inertia: b.Mass + b.Rotating, Density: c.Density}
	gust := newOU(r, c.Noise.GustSD, c.Noise.GustTime)
	drift := newOU(r, c.Noise.DriftSD, c.Noise.DriftTime)
	x := c.Scatter*r.NormFloat64() + c.Farther*(float64(index/2)-float64(c.Pairs-1)/2)
	if dir < 0 {
		x = c.Length - x
	}
	v := c.From
	var height, walk float64
	var heights []float64
	every := int(math.Round(1 / (c.Rate * tick)))
	for i := 0; v > c.To && float64(i)*tick < longest; i++ {
		t := float64(i) * tick
		if i%every == 0 {
			out.T = append(out.T, start+t)
			out.V = append(out.V, v+drift.step(r, 1/c.Rate)+c.Noise.WhiteSD*r.NormFloat64())
			out.Pos = append(out.Pos, x)
			heights = append(heights, height)
			if c.Baro {
				u := v + dir*wind + gust.x
				walk += c.Noise.HeightWalk * r.NormFloat64() / math.Sqrt(c.Rate)
				out.Height = append(out.Height, height+walk-c.Press*u*u/(2*gravity)+c.Noise.HeightSD*r.NormFloat64())
			}
		}
		slope := grade
		if c.Road != nil {
			slope += c.Road(x)
		}
		var force, airmore float64
		if c.Spoil != nil {
			force, airmore = c.Spoil(index, t, v)
		}
		air := dir*wind + gust.x + airmore
		acc := func(v float64) float64 {
			u := v + air
			return -(0.5*c.Density*b.CdA*u*math.Abs(u) + b.Mass*gravity*(b.Crr*(1+b.Slope*v)+dir*slope) + force) / out.Inertia
		}
		mid := v + tick/2*acc(v)
		x += dir * mid * tick
		height += slope * dir * mid * tick
		v += tick * acc(mid)
		gust.step(r, tick)
	}
	out.Alt = c.Altitude.given(r, heights, 1/c.Rate)
	return out
}

const gravity = units.StandardGravity
