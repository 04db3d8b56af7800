package engine

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// within is how far a gear's true ratio may be from the one that was told:
// tyre wear, pressure and the bias of the speed.
const within = 0.03

// Pick finds which of the given ratios, in 1/min for each m/s, the orders in
// sig of an engine of so many cylinders belong to. Where their number is 0, not
// known, the ratio must stand out whatever it is. It returns the index, or
// ErrNoLock where none stands out or two do.
func Pick(sig Signal, ratios []float64, cylinders int) (int, error) {
	if err := sig.check(); err != nil {
		return 0, err
	}
	low, high := math.Inf(1), 0.0
	for _, r := range ratios {
		low, high = math.Min(low, r), math.Max(high, r)
	}
	if !(low > 0) || math.IsInf(high, 1) {
		return 0, finding.Fail(codeBadRatio)
	}
	frames := sig.frames()
	if len(frames) < 4 {
		return 0, refuse(codeShort, finding.Time("needed", 4*frameSeconds))
	}
	kinds := families(cylinders)
	var orders []float64
	for _, f := range kinds {
		orders = append(orders, f...)
	}
	slices.Sort(orders)
	g := evenGrid(sig, frames, low/60*(1-2*within), high/60*(1+2*within), slices.Compact(orders))
	return g.pick(g.scores(sig, frames), ratios, kinds)
}

// pick compares the strongest ratio near each of the given ones.
func (g grid) pick(sc scores, ratios []float64, kinds [][]float64) (int, error) {
	first, best, second := -1, 0.0, 0.0
	for k, r := range ratios {
		z := 0.0
		for _, f := range kinds {
			z = math.Max(z, g.near(sc, r/60, f))
		}
		if z > best {
			first, best, second = k, z, best
		} else {
			second = math.Max(second, z)
		}
	}
	switch {
	case best < leastStrength:
		return 0, refuse(codeNoise)
	case second > mostRival*best:
		return 0, refuse(codeTwoGears)
	}
	return first, nil
}

// near is the strength of the best ratio near q for one family of orders, 0
// where one of its orders is not to be seen there.
func (g grid) near(sc scores, q float64, family []float64) float64 {
	low, high := sc.byOrder[slices.Index(g.orders, family[0])], sc.byOrder[slices.Index(g.orders, family[1])]
	frames := len(sc.byFrame)
	top, best := -1, 0.0
	for i := max(0, int((q*(1-within)-g.low)/g.step)); i < min(g.n, int((q*(1+within)-g.low)/g.step)+2); i++ {
		if sum := low[i] + high[i]; sum > best {
			top, best = i, sum
		}
	}
	if top < 0 {
		return 0
	}
	z := strength(best, 2*frames)
	if math.Min(strength(low[top], frames), strength(high[top], frames)) < leastOrder*z/math.Sqrt2 {
		return 0
	}
	return z
}
