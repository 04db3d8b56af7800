package season

import (
	"math"

	"stillair/runs/compare"
)

// Verdicts says about every effect whether it is one, all judged together as the
// differences of one ride are (compare.Judge); matters is the share of the
// base's drag area that the rider wants to know about. MorePairs counts rides.
func (b *Budget) Verdicts(matters float64) []compare.Verdict {
	ds := make([]compare.Difference, len(b.Effects))
	for i, e := range b.Effects {
		ds[i] = compare.Difference{Delta: e.CdA, Base: b.BaseCdA.X, DoF: math.Inf(1), Pairs: e.Rides}
	}
	return compare.Judge(ds, matters)
}
