package engine

import (
	"errors"
	"fmt"
	"math"
)

// within is how far a gear's true ratio may be from the one that was told:
// tyre wear, pressure and the bias of the speed.
const within = 0.03

// Pick finds which of the given ratios, in 1/min for each m/s, the engine's
// orders 1 and 2 in sig belong to. It returns the index, or ErrNoLock where
// none stands out or two do.
func Pick(sig Signal, ratios []float64) (int, error) {
	if err := sig.check(); err != nil {
		return 0, err
	}
	low, high := math.Inf(1), 0.0
	for _, r := range ratios {
		low, high = math.Min(low, r), math.Max(high, r)
	}
	if !(low > 0) || math.IsInf(high, 1) {
		return 0, errors.New("a gear's ratio is not a number above zero")
	}
	frames := sig.frames()
	if len(frames) < 4 {
		return 0, fmt.Errorf("%w: it lasts under %.0f s", ErrNoLock, 4*frameSeconds)
	}
	g := evenGrid(sig, frames, low/60*(1-2*within), high/60*(1+2*within), []float64{1, 2})
	sc := g.scores(sig, frames)
	return g.pick(sc, ratios)
}

// pick compares the strongest ratio near each of the given ones.
func (g grid) pick(sc scores, ratios []float64) (int, error) {
	all := sum(sc.byFrame)
	frames := len(sc.byFrame)
	first, best, second := -1, 0.0, 0.0
	for k, r := range ratios {
		i := max(0, int((r/60*(1-within)-g.low)/g.step))
		j := min(g.n, int((r/60*(1+within)-g.low)/g.step)+2)
		top := i + peak(all[i:j])
		z := strength(all[top], frames*len(g.orders))
		if g.missingOrder(sc, top, z) >= 0 {
			z = 0
		}
		if z > best {
			first, best, second = k, z, best
		} else {
			second = math.Max(second, z)
		}
	}
	switch {
	case best < leastStrength:
		return 0, fmt.Errorf("%w: no gear's orders stand out of the noise", ErrNoLock)
	case second > mostRival*best:
		return 0, fmt.Errorf("%w: two gears explain it nearly as well", ErrNoLock)
	}
	return first, nil
}
