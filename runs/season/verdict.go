package season

import (
	"math"

	"stillair/runs/compare"
)

// Verdicts tests every effect, all together as for the differences of one ride
// (compare.Judge); matters is the smallest effect that matters to the rider, as
// a fraction of the base's drag area. MorePairs counts rides.
func (b *Budget) Verdicts(matters float64) []compare.Verdict {
	ds := make([]compare.Difference, len(b.Effects))
	for i, e := range b.Effects {
		ds[i] = compare.Difference{Delta: e.CdA, Base: b.BaseCdA.X, DoF: math.Inf(1), Pairs: e.Rides}
	}
	return compare.Judge(ds, matters)
}
