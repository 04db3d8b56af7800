package plan

import (
	"math"

	"stillair/runs/roadload"
)

// design is the full layout of the planned coast-downs.
type design struct {
	c       Conditions
	runs    []roadload.Run
	length  float64 // of one coast-down, m
	seconds float64 // of the whole test, s
}

func newDesign(c Conditions, blocks []Block) *design {
	d := &design{c: c}
	t, v, x := coast(c)
	d.length = x[len(x)-1]
	clock, pair := 0.0, 0
	for i, b := range blocks {
		if i > 0 {
			clock += c.ChangeTime
		}
		for range b.Pairs {
			pair++
			for _, dir := range []float64{1, -1} {
				d.runs = append(d.runs, d.run(t, v, x, clock, b.Setup, pair, dir))
				clock += t[len(t)-1] + c.BreakSeconds
			}
		}
	}
	d.seconds = clock
	return d
}

// run places one coast-down in time and on the road.
func (d *design) run(t, v, x []float64, clock float64, setup, pair int, dir float64) roadload.Run {
	l := d.c.Load
	r := roadload.Run{
		ID: len(d.runs) + 1, Setup: setup, Pair: pair, Dir: dir, V: v,
		Mass: l.Mass, Inertia: l.Mass + d.c.RotatingMass, Density: l.Density,
	}
	for i := range t {
		r.T = append(r.T, clock+t[i])
		at := x[i]
		if dir < 0 {
			at = d.length - x[i]
		}
		r.Pos = append(r.Pos, at)
	}
	return r
}

// coast simulates a coast-down from the first to the last speed and returns
// time, speed and distance at every fix.
func coast(c Conditions) (t, v, x []float64) {
	const steps = 50 // between fixes; Euler's midpoint rule
	l := c.Load
	slow := func(v float64) float64 { return l.Force(v).X / (l.Mass + c.RotatingMass) }
	now, speed, place := 0.0, c.FromMPS, 0.0
	dt := 1 / c.FixRate / steps
	for speed > c.ToMPS && now < 600 {
		t, v, x = append(t, now), append(v, speed), append(x, place)
		for range steps {
			mid := speed - slow(speed)*dt/2
			speed -= slow(mid) * dt
			place += mid * dt
		}
		now += 1 / c.FixRate
	}
	return t, v, x
}

// Acceleration and braking assumed for the road needed (common practice). Hard
// braking on dry asphalt is twice that, which a plan should not rely on.
const (
	getsUp  = 2.0  // m/s²
	brakes  = 3.0  // m/s²
	reacts  = 2.0  // s, to react
	toSpare = 50.0 // m
)

// stopping is the stopping distance from a speed, with a margin, m.
func stopping(v float64) float64 { return v*v/(2*brakes) + reacts*v + toSpare }

// gettingUp is the road needed to reach a speed, m, or to stop from it if that
// is longer. Runs go both ways over the same stretch, so it is needed at either
// end.
func gettingUp(v float64) float64 { return math.Max(v*v/(2*getsUp), stopping(v)) }
