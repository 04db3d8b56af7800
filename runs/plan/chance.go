package plan

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
)

// student is the two-sided t test that will be made of a difference. The
// standard error in its denominator is estimated from the scatter of the
// repeats, which may be larger than the true error of the difference.
type student struct {
	dof   float64 // degrees of freedom of the scatter
	level float64 // 0.05: the test calls a difference in 5 % if there is none
	// beyond is the variance of repeats that cancels in the difference, such as
	// from a wind that helps on the way out and hinders on the way back: a
	// multiple of the variance of one repeat's error.
	beyond float64
	// least is the lower limit of the estimated scatter: a multiple of the
	// standard deviation of one repeat's error.
	least float64
}

// chance is the power of the test for a true difference of shift standard
// deviations of its error. Without beyond and least it follows from the
// non-central t distribution.
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

// needed is the shift that the test detects with the given power.
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

// freedom is the degrees of freedom of the difference. The noise is learned
// within the runs, over several correlation times of the gusts, so a pair
// contributes about as much as two independent draws: as Satterthwaite's
// formula gives for simulated tests of two to eight pairs.
func freedom(setups, pairs int) float64 { return 2 * float64(setups*pairs) }

// learning is the ratio of the standard error of a test with so many pairs a
// setup to the bound, which assumes known noise: simulated tests give 1.18 for
// two pairs and 1.10 for four.
func learning(pairs int) float64 { return math.Sqrt(1 + 0.8/float64(pairs)) }

// levelOf is the significance level of each comparison for a family-wise error
// rate of 5 % over all comparisons between so many setups (Bonferroni).
func levelOf(setups int) float64 { return 0.05 / float64(setups*(setups-1)/2) }
