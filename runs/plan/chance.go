package plan

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
)

// student is a two-sided t test as it will be made of a difference. The error
// of the difference has a true size; what it is divided by comes from the
// scatter of the repeats, and may be more than that.
type student struct {
	dof   float64 // degrees of freedom of the scatter
	level float64 // 0.05: the test calls a difference of nothing in 5 %
	// beyond is the variance that repeats have and the difference has not, such
	// as a wind that helps on the way out and hinders on the way back: a
	// multiple of the variance of one repeat's error.
	beyond float64
	// least is below what the scatter is never taken to be: a multiple of the
	// standard deviation of one repeat's error.
	least float64
}

// chance is the power of the test: the probability that the difference leaves
// the limits, for a true difference of shift standard deviations of its error.
// Without beyond and least it is that a non-central t variable does.
func (t student) chance(shift float64) float64 {
	limit := measure.Quantile(1-t.level, t.dof)
	w := distuv.ChiSquared{K: t.dof}
	// Given the estimated spread s = √(W/dof), the statistic is normal.
	f := func(s float64) float64 {
		density := 2 * s * t.dof * w.Prob(s*s*t.dof)
		far := limit * math.Max(math.Sqrt(s*s+t.beyond), t.least)
		return density * (distuv.UnitNormal.CDF(shift-far) + distuv.UnitNormal.CDF(-shift-far))
	}
	reach := 8 / math.Sqrt(2*t.dof)
	return quad.Fixed(f, math.Max(0, 1-reach), 1+reach, 200, nil, 0)
}

// needed is the shift that the test sees with the chance asked for.
func (t student) needed(ask float64) float64 {
	lo, hi := 0.0, 1.0
	for t.chance(hi) < ask {
		hi *= 2
	}
	for hi-lo > 1e-6*hi {
		mid := (lo + hi) / 2
		if t.chance(mid) < ask {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// freedom is how many degrees of freedom the spread of the difference has. The
// noise is learned within the runs, where gusts come and go several times, so a
// pair tells about as much of it as two independent draws do: what
// Satterthwaite's formula gives for simulated tests of two to eight pairs.
func freedom(setups, pairs int) float64 { return 2 * float64(setups*pairs) }

// learning is by how much the standard error of a test with so many pairs a
// setup exceeds the bound, which takes the noise as known: simulated tests
// give 1.18 for two pairs and 1.10 for four.
func learning(pairs int) float64 { return math.Sqrt(1 + 0.8/float64(pairs)) }

// levelOf is the level of each comparison, so that all between so many setups
// together call a difference of nothing in 5 % (Bonferroni).
func levelOf(setups int) float64 { return 0.05 / float64(setups*(setups-1)/2) }
