package plan

import (
	"math"

	"stillair/runs/measure"
	"stillair/runs/roadload"
)

// day is one possible day of a test with the resulting standard errors,
// relative to CdA.
type day struct {
	weight         float64
	noise, assumed float64 // parts of the standard error
	dof            float64 // of the scatter that determines noise
	level          float64 // 0.05: one of 20 such intervals misses
}

func (x day) se() float64 { return math.Hypot(x.noise, x.assumed) }

// test is the t test that will be made. The uncertainty from assumptions is not
// estimated from data, so it raises the degrees of freedom, as in the
// comparison.
func (x day) test() student {
	const plenty = 1e4 // practically known
	return student{dof: math.Min(plenty, x.dof*math.Pow(x.se()/x.noise, 4)), level: x.level}
}

func (x day) half() float64 { return measure.Quantile(1-x.level, x.test().dof) * x.se() }

func (x day) noiseHalf() float64 { return measure.Quantile(1-x.level, x.dof) * x.noise }

type days []day

func (d days) mean(of func(day) float64) float64 {
	var sum float64
	for _, x := range d {
		sum += x.weight * of(x)
	}
	return sum
}

// oneInTen is the quantile of the standard normal distribution that one in ten exceeds.
const oneInTen = 1.2816

// at is a day so many standard deviations gustier than expected, interpolated between
// the three days: the parts of the standard error grow smoothly with the logarithm of
// the gusts.
func (d days) at(sd float64) day {
	x := sd / math.Sqrt(3)
	between := func(of func(day) float64) float64 {
		return math.Exp(math.Log(of(d[0]))*x*(x-1)/2 + math.Log(of(d[1]))*(1-x*x) + math.Log(of(d[2]))*x*(x+1)/2)
	}
	out := d[1]
	out.noise = between(func(y day) float64 { return y.noise })
	out.assumed = between(func(y day) float64 { return y.assumed })
	return out
}

// days are three representative days: as gusty as expected, and √3 standard
// deviations more and less, with the weights of Gauss-Hermite quadrature.
func (d *design) days(setups, pairs int) (days, error) {
	reach := math.Sqrt(3) * d.c.GustsUnsure
	var out days
	for _, g := range []struct{ by, weight float64 }{{-reach, 1.0 / 6}, {0, 2.0 / 3}, {reach, 1.0 / 6}} {
		opts := d.c.Noise
		opts.Noise.GustSD *= math.Exp(g.by)
		noise, assumed, err := d.expect(setups, opts)
		if err != nil {
			return nil, err
		}
		level := 0.05
		if setups > 1 {
			level = levelOf(setups)
		}
		out = append(out, day{g.weight, noise * learning(pairs), assumed, freedom(setups, pairs), level})
	}
	return out, nil
}

// expect is the standard error of the difference in CdA between two setups as a
// fraction of CdA, the largest of all differences: the parts from noise and
// from assumptions. For one setup it is that of its CdA.
func (d *design) expect(setups int, opts roadload.Options) (noise, assumed float64, err error) {
	l := d.c.Load
	loads := make([]roadload.Design, setups)
	for i := range loads {
		loads[i] = roadload.Design{CdA: l.CdA.X, Crr: l.Crr.X}
	}
	e, err := roadload.Expect(d.runs, loads, opts)
	if err != nil {
		return 0, 0, err
	}
	if setups == 1 {
		noise, assumed = e.Alone(0)
		return noise / l.CdA.X, assumed / l.CdA.X, nil
	}
	for a := range setups {
		for b := a + 1; b < setups; b++ {
			if n, s := e.Alike(a, b); math.Hypot(n, s) > math.Hypot(noise, assumed) {
				noise, assumed = n, s
			}
		}
	}
	return noise / l.CdA.X, assumed / l.CdA.X, nil
}
