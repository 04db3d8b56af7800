package loadtest

import (
	"math"
	"math/rand/v2"

	"stillair/runs/roadload"
)

// World is a simulated test whose physics may differ from package roadload's
// model: every force is a function of its own. Nil functions are left out.
type World struct {
	Name       string
	CdA, Crr   float64 // straight into the wind, m²; rolling at standstill, tyres warm, 1
	Mass       float64 // as ridden, kg
	Entered    float64 // mass given to the fit, kg; 0: the true one
	Air        float64 // density given to the fit relative to the true one; 0: 1
	From, To   float64 // m/s
	Pairs      int
	Rolling    func(v float64) float64     // factor on Crr; nil: 1 + 0.004·v
	Cold       float64                     // relative, of Crr, at the first run
	CoolsIn    float64                     // time constant of Cold, s
	ColdLaw    func(since float64) float64 // share of Cold left; nil: exponential
	Yaw        float64                     // relative growth of CdA per degree of yaw
	Cross      float64                     // steady, m/s
	Along      float64                     // steady, against direction +1, m/s
	Differs    float64                     // standard deviation of a pair's wind about it, m/s
	Drifts     float64                     // of the wind along the road, m/s per hour
	Sheltered  func(x float64) float64     // factor on the wind along the road
	SitsUp     float64                     // relative growth of CdA below 60 km/h
	Further    func(v float64) float64     // additional force that counts as rolling resistance, N; nil: none
	Slope      func(x float64) float64     // nil: level
	Grade      float64                     // 1
	GustSD     float64                     // m/s
	NoPosition bool
	Length     float64 // between the starts of runs out and back, m
}

// Naked is the world of the average bike: five pairs in a light wind, with
// the physics of package roadload.
func Naked() World {
	return World{Name: "naked", CdA: 0.55, Crr: 0.018, Mass: 290, From: 110 / 3.6, To: 30 / 3.6, Pairs: 5,
		Differs: 0.5, GustSD: 0.32, CoolsIn: 900, NoPosition: true, Length: 1000}
}

// Sport is a small and fast one.
func Sport() World {
	w := Naked()
	w.Name, w.CdA, w.Mass, w.From, w.To, w.Length = "sport", 0.36, 280, 200/3.6, 60/3.6, 2000
	return w
}

// TyresSquare is the growth of rolling resistance by the textbook formula
// 0.005 + (1/p)·(0.01 + 0.0095·(V/100)²), p in bar and V in km/h.
func TyresSquare(bar float64) func(v float64) float64 {
	f := func(v float64) float64 { return 0.005 + (0.01+0.0095*math.Pow(3.6*v/100, 2))/bar }
	return func(v float64) float64 { return f(v) / f(0) }
}

const worldDensity, worldGravity, worldTick = 1.2, 9.81, 0.05

// Force is the road load on the level in still air with warm tyres, N.
func (w World) Force(v float64) float64 {
	f := worldDensity / 2 * w.CdA * w.posture(v) * v * v
	return f + w.Mass*worldGravity*w.Crr*w.rolling(v) + w.further(v)
}

// Entries is the bike as entered for the fit.
func (w World) Entries(opts roadload.Options) roadload.Vehicle {
	mass := w.Mass
	if w.Entered > 0 {
		mass = w.Entered
	}
	return roadload.Vehicle{Mass: mass, Inertia: 1.04 * mass, Density: worldDensity, Gravity: opts.Gravity, Slope: opts.Slope.X}
}

// Rolls is the total coefficient of rolling resistance at standstill.
func (w World) Rolls() float64 { return w.Crr*w.rolling(0) + w.further(0)/(w.Mass*worldGravity) }

// CdAInAir is the drag area that the air of the day meets, m²: larger than CdA
// where it comes at a yaw, as the mean over the range of speeds, weighed by force.
func (w World) CdAInAir() float64 {
	const parts = 100
	force, square := 0.0, 0.0
	for i := range parts {
		v := w.To + (w.From-w.To)*(float64(i)+0.5)/parts
		yaw := math.Atan2(w.Cross, v) * 180 / math.Pi
		force += w.CdA * (1 + w.Yaw*yaw) * math.Hypot(v, w.Cross) * v
		square += v * v
	}
	return force / square
}

func (w World) rolling(v float64) float64 {
	if w.Rolling == nil {
		return 1 + growth*v
	}
	return w.Rolling(v)
}

func (w World) further(v float64) float64 {
	if w.Further == nil {
		return 0
	}
	return w.Further(v)
}

func (w World) posture(v float64) float64 {
	if v < 60/3.6 {
		return 1 + w.SitsUp
	}
	return 1
}

// holds is the retarding force on a bike at v.
func (w World) holds(v, wind, x, dir, clock float64) float64 {
	along := v + wind
	through := math.Hypot(along, w.Cross)
	yaw := math.Abs(math.Atan2(w.Cross, along)) * 180 / math.Pi
	f := worldDensity / 2 * w.CdA * w.posture(v) * (1 + w.Yaw*yaw) * through * along
	cold := math.Exp(-clock / w.CoolsIn)
	if w.ColdLaw != nil {
		cold = w.ColdLaw(clock)
	}
	f += w.Mass*worldGravity*w.Crr*w.rolling(v)*(1+w.Cold*cold) + w.further(v)
	slope := w.Grade
	if w.Slope != nil {
		slope += w.Slope(x)
	}
	return f + dir*w.Mass*worldGravity*slope
}

// Ride returns the coast-downs of a setup, starting from a pair number and a
// time.
func (w World) Ride(r *rand.Rand, setup, firstPair int, clock float64) []roadload.Run {
	var out []roadload.Run
	for p := range w.Pairs {
		wind := w.Along + w.Differs*r.NormFloat64()
		for _, dir := range []float64{1, -1} {
			run := w.roll(r, dir, wind+w.Drifts*clock/3600, clock)
			run.ID, run.Setup, run.Pair = 2*(firstPair+p)+len(out)%2+1, setup, firstPair+p+1
			clock = run.T[len(run.T)-1] + 60
			out = append(out, run)
		}
	}
	return out
}

func (w World) roll(r *rand.Rand, dir, wind, clock float64) roadload.Run {
	run := roadload.Run{Dir: dir, Mass: w.Mass, Density: worldDensity}
	if w.Entered > 0 {
		run.Mass = w.Entered
	}
	if w.Air > 0 {
		run.Density *= w.Air
	}
	run.Inertia = run.Mass * 1.04
	gust, drift := newOU(r, w.GustSD, 8), newOU(r, 0.07, 4)
	v, x := w.From, 30*r.NormFloat64()
	if dir < 0 {
		x = w.Length - x
	}
	for i := 0; v > w.To && i < 4000; i++ {
		now := clock + worldTick*float64(i)
		if i%20 == 0 {
			run.T = append(run.T, now)
			run.V = append(run.V, v+drift.step(r, 1)+0.06*r.NormFloat64())
			run.Pos = append(run.Pos, x)
		}
		air := wind
		if w.Sheltered != nil {
			air *= w.Sheltered(x)
		}
		air = dir*air + gust.step(r, worldTick)
		slows := func(v float64) float64 { return w.holds(v, air, x, dir, now) / (w.Mass * 1.04) }
		half := v - worldTick/2*slows(v)
		x += dir * half * worldTick
		v -= worldTick * slows(half)
	}
	if w.NoPosition {
		run.Pos = nil
	}
	return run
}
