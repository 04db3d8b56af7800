package marks

import (
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/stat/distuv"
)

// climb is the running maximum of the averaged speed, which gives the time at
// which each speed was first passed.
type climb struct {
	t, top []float64
	least  float64 // slope that is assumed beyond its ends, m/s²
}

// climb computes it from time a on, for rising speeds if dir is +1 and, with
// all speeds negated, for falling ones if dir is −1.
func (r trace) climb(a, dir float64) climb {
	from := sort.SearchFloat64s(r.t, a)
	c := climb{t: r.t[from:], top: make([]float64, len(r.t)-from), least: 0.5}
	high := math.Inf(-1)
	for i, t := range c.t {
		v, _ := r.local(t)
		high = math.Max(high, dir*v)
		c.top[i] = high
	}
	return c
}

// passes is the time at which a level is first reached; false if it is not, or
// the trace begins beyond it.
func (c climb) passes(level float64) (float64, bool) {
	k, _ := slices.BinarySearch(c.top, level)
	if k == 0 || k == len(c.top) {
		return math.NaN(), false
	}
	return c.t[k-1] + (c.t[k]-c.t[k-1])*(level-c.top[k-1])/(c.top[k]-c.top[k-1]), true
}

// reaches is passes with linear extrapolation beyond the ends of the trace, by
// the slope of the adjacent half second.
func (c climb) reaches(level float64) float64 {
	if t, ok := c.passes(level); ok {
		return t
	}
	n := len(c.t) - 1
	end, beside := 0, sort.SearchFloat64s(c.t, c.t[0]+0.5)
	if level > c.top[n] {
		// the last rise, not the rest after it
		end, _ = slices.BinarySearch(c.top, c.top[n])
		beside = sort.SearchFloat64s(c.t, c.t[end]-0.5)
	}
	slope := math.Abs(c.top[end]-c.top[min(beside, n)]) / math.Abs(c.t[end]-c.t[min(beside, n)])
	if !(slope > c.least) {
		slope = c.least
	}
	return c.t[end] + (level-c.top[end])/slope
}

// draws is the number of equally probable points that represent a normal error.
const draws = 48

// normalDraws are the quantiles at the middles of those parts, in standard
// deviations, scaled to unit variance.
func normalDraws() [draws]float64 {
	var z [draws]float64
	square := 0.0
	for i := range z {
		z[i] = distuv.UnitNormal.Quantile((float64(i) + 0.5) / draws)
		square += z[i] * z[i] / draws
	}
	for i := range z {
		z[i] /= math.Sqrt(square)
	}
	return z
}
