package roadload

import (
	"cmp"
	"math"
	"slices"
)

// stretch is a part of the road covered by runs without a gap, with knots of
// the profile at equal distances. Between knots the slope is interpolated
// linearly.
type stretch struct {
	from, spacing float64 // m
	first         int     // its first knot, counted over all stretches
	knots         int
}

// The profile's knots are knotSpacing apart, or farther on roads so long that
// more than maxKnots would be needed. There are none where no run passed for a
// breach.
const (
	knotSpacing = 60.0  // m
	maxKnots    = 48    // of one stretch
	allKnots    = 144   // of all stretches
	breach      = 150.0 // m
)

// roadOf distributes knots over the places that the runs passed. There are none
// if a place is unknown or no roughness is expected.
func roadOf(runs []*coast, opts Options) (road []stretch, knots int) {
	passed := stretchesOf(runs)
	if passed == nil || opts.Noise.RoadSD <= 0 {
		return nil, 0
	}
	length := 0.0
	for _, p := range passed {
		length += p[1] - p[0]
	}
	spacing := math.Max(knotSpacing, length/math.Max(allKnots-2*float64(len(passed)), 1))
	for _, p := range passed {
		n := min(int(math.Ceil((p[1]-p[0])/spacing))+1, maxKnots)
		road = append(road, stretch{from: p[0], spacing: (p[1] - p[0]) / float64(n-1), first: knots, knots: n})
		knots += n
	}
	return road, knots
}

// stretchesOf returns the ranges of places covered by runs without a breach, in
// order; nil if a run's places are unknown or constant.
func stretchesOf(runs []*coast) [][2]float64 {
	spans := make([][2]float64, len(runs))
	for i, c := range runs {
		if c.x == nil {
			return nil
		}
		spans[i] = [2]float64{slices.Min(c.x), slices.Max(c.x)}
		if spans[i][1] <= spans[i][0] {
			return nil
		}
	}
	slices.SortFunc(spans, func(a, b [2]float64) int { return cmp.Compare(a[0], b[0]) })
	out := spans[:1:1]
	for _, s := range spans[1:] {
		if last := &out[len(out)-1]; s[0] > last[1]+breach {
			out = append(out, s)
		} else {
			last[1] = math.Max(last[1], s[1])
		}
	}
	return out
}

// on is the stretch that x lies on.
func on(road []stretch, x float64) stretch {
	s := road[0]
	for _, next := range road[1:] {
		if x >= next.from {
			s = next
		}
	}
	return s
}

// locate returns the knot before x and the fraction of the interval to the
// next, 0 to 1.
func (s *stretch) locate(x float64) (int, float64) {
	f := (x - s.from) / s.spacing
	i := min(max(int(f), 0), s.knots-2)
	return s.first + i, min(max(f-float64(i), 0), 1)
}

// rise is the height at x above the stretch's start for a slope of 1 at one
// knot, falling linearly to 0 at its neighbours.
func (s *stretch) rise(knot int, x float64) float64 {
	f := (x-s.from)/s.spacing - float64(knot-s.first)
	switch {
	case f <= -1:
		return 0
	case f <= 0:
		return s.spacing * (f + 1) * (f + 1) / 2
	case f < 1:
		return s.spacing * (1 - (1-f)*(1-f)/2)
	}
	return s.spacing
}

// profilePrior calls add with the terms of the inverse covariance of the knots,
// and returns the logarithm of the determinant of the covariance. The profile
// is an Ornstein-Uhlenbeck process in place: each knot is r times the one
// before it plus white noise. Over a gap between stretches r decays with its
// length.
func profilePrior(road []stretch, n Noise, add func(i, j int, x float64)) (logDet float64) {
	first := n.RoadSD * n.RoadSD
	for j, s := range road {
		for i := s.first; i < s.first+s.knots; i++ {
			if i == 0 {
				add(0, 0, 1/first)
				logDet += math.Log(first)
				continue
			}
			apart := s.spacing
			if i == s.first {
				before := road[j-1]
				apart = s.from - before.from - before.spacing*float64(before.knots-1)
			}
			r := math.Exp(-apart / n.RoadLength)
			next := first * (1 - r*r)
			add(i-1, i-1, r*r/next)
			add(i-1, i, -r/next)
			add(i, i, 1/next)
			logDet += math.Log(next)
		}
	}
	return logDet
}
