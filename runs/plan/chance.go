package plan

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
)

// chance is the power of a two-sided t test at the given level: the
// probability that a non-central t variable with dof degrees of freedom and
// the given shift leaves the limits.
func chance(shift, dof, level float64) float64 {
	limit := measure.Quantile(1-level, dof)
	w := distuv.ChiSquared{K: dof}
	// Given the estimated spread s = √(W/dof), the statistic is normal.
	f := func(s float64) float64 {
		density := 2 * s * dof * w.Prob(s*s*dof)
		return density * (distuv.UnitNormal.CDF(shift-limit*s) + distuv.UnitNormal.CDF(-shift-limit*s))
	}
	reach := 8 / math.Sqrt(2*dof)
	return quad.Fixed(f, math.Max(0, 1-reach), 1+reach, 200, nil, 0)
}

// needed is the shift that the test sees with the chance asked for.
func needed(ask, dof, level float64) float64 {
	lo, hi := 0.0, 1.0
	for chance(hi, dof, level) < ask {
		hi *= 2
	}
	for hi-lo > 1e-6 {
		mid := (lo + hi) / 2
		if chance(mid, dof, level) < ask {
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
