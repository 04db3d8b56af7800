package power

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/effect"
	"stillair/runs/measure"
)

// The invented bike of these tests and the day it is ridden on.
func naked() Bike {
	return Bike{
		Load: effect.Load{CdA: measure.Value{X: 0.55, SE: 0.006}, Crr: measure.Value{X: 0.018, SE: 0.0003}, Cov: -1.5e-6,
			K: 0.004, Mass: 290, Density: 1.2, Gravity: 9.81},
		MassSD: 2.9, RotatingMass: 14,
	}
}

func breezy() Day { return Day{WindSD: 1.5, GustSD: 0.6, GustTime: 5, GradeSD: 0.005} }
func calm() Day   { return Day{WindSD: 0.5, GustSD: 0.2, GustTime: 5, GradeSD: 0.002} }

// truePower is the smooth power of the invented engine at the road, W.
func truePower(v float64) float64 { return 52e3 * (1 - square((v-34)/34)) }

// rig simulates pulls with known truth.
type rig struct {
	bike  Bike
	day   Day
	scale float64 // of truePower
	cov   *mat.SymDense
	t     []float64
	root  mat.TriDense
}

// newRig prepares pulls of 9 s. Speed errors have the covariance of a smoother
// with fixes once a second (white 0.05 m/s, correlated 0.06 m/s over 8 s) and
// an accelerometer with vibration of 6 m/s² rms at 100 Hz.
func newRig(bike Bike, day Day) *rig {
	const dt, length, margin = 0.12, 9.0, 3.0
	r := &rig{bike: bike, day: day, scale: 1}
	for t := 0.0; t <= length; t += dt {
		r.t = append(r.t, t)
	}
	var fixes []float64
	for t := -margin; t <= length+margin; t++ {
		fixes = append(fixes, t+0.4)
	}
	const rate = 36.0 / 100 / 4 // (m/s)²/s; orders average out better than white noise would
	walk := func(s, t float64) float64 { return 25 + rate*math.Min(s+margin+1, t+margin+1) }
	n, m := len(r.t), len(fixes)
	kk, kf, ff := mat.NewSymDense(n, nil), mat.NewDense(n, m, nil), mat.NewSymDense(m, nil)
	for i := range n {
		for j := i; j < n; j++ {
			kk.SetSym(i, j, walk(r.t[i], r.t[j]))
		}
		for j := range m {
			kf.Set(i, j, walk(r.t[i], fixes[j]))
		}
	}
	for i := range m {
		for j := i; j < m; j++ {
			e := 0.06 * 0.06 * math.Exp(-(fixes[j]-fixes[i])/8)
			if i == j {
				e += 0.05 * 0.05
			}
			ff.SetSym(i, j, walk(fixes[i], fixes[j])+e)
		}
	}
	var chol mat.Cholesky
	chol.Factorize(ff)
	var g, down mat.Dense
	if err := chol.SolveTo(&g, kf.T()); err != nil {
		panic(err)
	}
	down.Mul(kf, &g)
	for i := range n {
		for j := i; j < n; j++ {
			kk.SetSym(i, j, kk.At(i, j)-(down.At(i, j)+down.At(j, i))/2)
		}
		kk.SetSym(i, i, kk.At(i, i)+1e-8)
	}
	r.cov = kk
	var c mat.Cholesky
	c.Factorize(kk)
	c.LTo(&r.root)
	return r
}

// pair draws one pull each way with the same wind and slope.
func (r *rig) pair(id int, mass float64, rng *rand.Rand) []Pull {
	wind, grade := r.day.WindSD*rng.NormFloat64(), r.day.GradeSD*rng.NormFloat64()
	return []Pull{
		r.pull(2*id-1, id, +1, mass, wind, grade, rng),
		r.pull(2*id, id, -1, mass, wind, grade, rng),
	}
}

// pull draws one pull of a bike whose true mass is given.
func (r *rig) pull(id, pair int, dir, mass, wind, grade float64, rng *rand.Rand) Pull {
	const dt = 0.004
	l := r.bike.Load
	rise := l.Mass / mass // road load was measured with the entered mass
	gust := r.day.GustSD * rng.NormFloat64()
	keep := math.Exp(-dt / r.day.GustTime)
	p := Pull{ID: id, Pair: pair, Dir: dir, T: r.t, Cov: r.cov}
	v, next := 17.0, 0
	for k := 0; next < len(r.t); k++ {
		if float64(k)*dt >= r.t[next]-1e-9 {
			p.V = append(p.V, v)
			next++
		}
		u := v + dir*wind + gust
		f := 0.5*l.Density*l.CdA.X/rise*u*u + mass*l.Gravity*(l.Crr.X*(1+l.K*v)+dir*grade)
		v += dt * (r.scale*truePower(v)/v - f) / (mass + r.bike.RotatingMass)
		gust = keep*gust + r.day.GustSD*math.Sqrt(1-keep*keep)*rng.NormFloat64()
	}
	z := mat.NewVecDense(len(r.t), nil)
	for i := range r.t {
		z.SetVec(i, rng.NormFloat64())
	}
	z.MulVec(&r.root, z)
	for i := range p.V {
		p.V[i] += z.AtVec(i)
	}
	return p
}
