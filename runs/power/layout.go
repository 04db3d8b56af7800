package power

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// layout holds the indices of the unknowns: the knots of the force, the hump,
// the first speed of each pull, and wind and slope of each pair.
type layout struct {
	shape
	pulls []Pull
	pair  []int // of each pull, from 0
	pairs int
}

func newLayout(pulls []Pull, bike Bike) layout {
	l := layout{pulls: pulls}
	low, high, force := math.Inf(1), math.Inf(-1), 0.0
	index := map[int]int{}
	for _, p := range pulls {
		n := len(p.V) - 1
		low, high = math.Min(low, p.V[0]), math.Max(high, p.V[n])
		gain := (p.V[n] - p.V[0]) / (p.T[n] - p.T[0])
		force += (bike.inertia()*gain + bike.Load.Force((p.V[0]+p.V[n])/2).X) / float64(len(pulls))
		key := pairKey(p)
		if _, known := index[key]; !known {
			index[key] = len(index)
		}
		l.pair = append(l.pair, index[key])
	}
	l.pairs = len(index)
	l.shape = newShape(low, high, force)
	return l
}

// pairKey is a number common to the pulls of one pair and unique for an
// unpaired pull.
func pairKey(p Pull) int {
	if p.Pair > 0 {
		return p.Pair
	}
	return -1 - p.ID
}

func (l layout) humpAt() int          { return l.knots }
func (l layout) startAt(pull int) int { return l.knots + 1 + pull }
func (l layout) windAt(pair int) int  { return l.knots + 1 + len(l.pulls) + 2*pair }
func (l layout) size() int            { return l.knots + 1 + len(l.pulls) + 2*l.pairs }

// reader is the matrix that maps the unknowns to the force at the speeds of a
// grid.
func (l layout) reader(grid []float64) *mat.Dense {
	r := mat.NewDense(len(grid), l.size(), nil)
	for i, v := range grid {
		k, f := l.at(v)
		r.Set(i, k, l.scale*(1-f))
		r.Set(i, k+1, l.scale*f)
		r.Set(i, l.humpAt(), l.scale*((1-f)*l.hump[k]+f*l.hump[k+1]))
	}
	return r
}
