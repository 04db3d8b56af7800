package roadload

import "slices"

func others(runs []*coast, not ...*coast) []*coast {
	var out []*coast
	for _, c := range runs {
		if !slices.Contains(not, c) {
			out = append(out, c)
		}
	}
	return out
}

// copies returns deep copies of runs, to be fitted without changing the
// originals.
func copies(runs []*coast) []*coast {
	out := make([]*coast, len(runs))
	for i, c := range runs {
		d := *c
		n := len(c.t)
		d.v, d.extra = make([]float64, n), append([]float64(nil), c.extra...)
		d.decay, d.push = append([]float64(nil), c.decay...), append([]float64(nil), c.push...)
		d.fades.steps = slices.Clone(c.fades.steps)
		d.cols = nil
		out[i] = &d
	}
	return out
}

// pairsLeft returns an error unless every setup has a pair.
func pairsLeft(runs []*coast, setups int) error {
	for setup := range setups {
		if countPairs(runs, setup) == 0 {
			return ErrOneDirection
		}
	}
	return nil
}

// countPairs counts the complete pairs of a setup.
func countPairs(runs []*coast, setup int) int {
	ways := map[int][2]bool{}
	for _, c := range runs {
		if c.setup == setup && c.pair != 0 {
			w := ways[c.pair]
			w[way(c.dir)] = true
			ways[c.pair] = w
		}
	}
	n := 0
	for _, w := range ways {
		if w[0] && w[1] {
			n++
		}
	}
	return n
}
