package engine

import (
	"math"
	"slices"

	"stillair/sensors/finding"
)

// within is the largest relative difference of a gear's true ratio from the
// entered one: tyre wear, pressure and the bias of the speed.
const within = 0.03

// leastGear is the required strength of a gear's orders above the noise, in
// standard deviations: less than leastStrength, since it is searched near a few
// ratios rather than over a range. White noise reaches 4 in one of six gears.
const leastGear = 5.5

// Pick finds which of the given ratios, in 1/min for each m/s, the orders of an
// engine of so many cylinders belong to. The signals are what several axes felt
// at the same times; an engine that shakes one of them may leave the others
// alone. Where the number of cylinders is 0, not known, the ratio must stand out
// whatever it is, with both orders. It returns the index, or ErrNoLock where none
// stands out or two do.
func Pick(sigs []Signal, ratios []float64, cylinders int) (int, error) {
	for _, sig := range sigs {
		if err := sig.check(); err != nil {
			return 0, err
		}
	}
	low, high := math.Inf(1), 0.0
	for _, r := range ratios {
		low, high = math.Min(low, r), math.Max(high, r)
	}
	if !(low > 0) || math.IsInf(high, 1) {
		return 0, finding.Fail(codeBadRatio)
	}
	var frames [][2]int
	if len(sigs) > 0 {
		frames = sigs[0].frames()
	}
	if len(frames) < 4 {
		return 0, refuse(codeShort, finding.Time("needed", 4*frameSeconds))
	}
	kinds := families(cylinders)
	var orders []float64
	for _, f := range kinds {
		orders = append(orders, f...)
	}
	slices.Sort(orders)
	g := evenGrid(sigs[0], frames, low/60*(1-2*within), high/60*(1+2*within), finely, slices.Compact(orders))
	return g.pick(g.felt(sigs, frames), ratios, kinds)
}

// felt combines all signals: for each order, the strength of each ratio above
// the noise.
func (g grid) felt(sigs []Signal, frames [][2]int) [][]float64 {
	all := rows(len(g.orders), g.n)
	for _, sig := range sigs {
		sig.X = whiten(sig.X)
		for j, row := range g.scores(sig, frames).byOrder {
			for i, x := range row {
				all[j][i] += x
			}
		}
	}
	for _, row := range all {
		for i, x := range row {
			row[i] = strength(x, len(frames)*len(sigs))
		}
	}
	return all
}

// pick compares the strongest ratio near each of the given ones.
func (g grid) pick(felt [][]float64, ratios []float64, kinds [][]float64) (int, error) {
	first, best, second := -1, 0.0, 0.0
	for k, r := range ratios {
		z := 0.0
		for _, f := range kinds {
			z = math.Max(z, g.near(felt, r/60, f, len(kinds) > 1))
		}
		if z > best {
			first, best, second = k, z, best
		} else {
			second = math.Max(second, z)
		}
	}
	switch {
	case best < leastGear:
		return 0, refuse(codeNoise)
	case second > mostRival*best:
		return 0, refuse(codeTwoGears)
	}
	return first, nil
}

// near is the strength of the best ratio near q for one family of orders
// together. Where both are asked for it is 0 where one of them is not to be seen at
// that ratio.
func (g grid) near(felt [][]float64, q float64, family []float64, both bool) float64 {
	low, high := felt[slices.Index(g.orders, family[0])], felt[slices.Index(g.orders, family[1])]
	best, lesser := 0.0, 0.0
	for i := max(0, int((q*(1-within)-g.low)/g.step)); i < min(g.n, int((q*(1+within)-g.low)/g.step)+2); i++ {
		if z := (max(low[i], 0) + max(high[i], 0)) / math.Sqrt2; z > best {
			best, lesser = z, math.Min(low[i], high[i])
		}
	}
	if both && lesser < leastOrder*best/math.Sqrt2 {
		return 0
	}
	return best
}
