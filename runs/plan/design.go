package plan

import (
	"math"

	"stillair/runs/roadload"
)

// design is the planned coast-downs in full.
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

// run places one coast-down on the clock and the road.
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

// coast rolls down from the first to the last speed and returns time, speed
// and distance at every fix.
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

// relativeSE is the standard error of the difference in CdA between two
// setups as a fraction of CdA: the largest of all differences.
func (d *design) relativeSE(setups int) (float64, error) {
	loads := make([]roadload.Design, setups)
	for i := range loads {
		loads[i] = roadload.Design{CdA: d.c.Load.CdA.X, Crr: d.c.Load.Crr.X}
	}
	cov, err := roadload.Bound(d.runs, loads, d.c.Noise)
	if err != nil {
		return 0, err
	}
	worst := 0.0
	for a := range setups {
		for b := a + 1; b < setups; b++ {
			worst = math.Max(worst, roadload.AlikeSE(cov, a, b, d.c.Load.Crr.X))
		}
	}
	return worst / d.c.Load.CdA.X, nil
}

// roadLength adds the way to get up to speed and to brake at either end, with
// 2 m/s² and 4 m/s², to the coast-down itself; runs go both ways over the same
// stretch.
func (d *design) roadLength() float64 {
	v := d.c.FromMPS
	return d.length + v*v/(2*2) + math.Max(v*v/(2*2), d.c.ToMPS*d.c.ToMPS/(2*4))
}
