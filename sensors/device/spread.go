package device

import "math"

// Spread sums up a series: how many, mean, standard deviation, largest. The
// zero value is empty.
type Spread struct {
	N              int
	mean, m2, most float64
}

// Add takes one value more (Welford's recurrence).
func (s *Spread) Add(x float64) {
	s.N++
	d := x - s.mean
	s.mean += d / float64(s.N)
	s.m2 += d * (x - s.mean)
	if s.N == 1 || x > s.most {
		s.most = x
	}
}

// Mean is NaN for an empty series.
func (s Spread) Mean() float64 { return s.orNaN(s.mean, 1) }

// SD is NaN for fewer than two values.
func (s Spread) SD() float64 { return s.orNaN(math.Sqrt(s.m2/float64(max(s.N-1, 1))), 2) }

// Most is NaN for an empty series.
func (s Spread) Most() float64 { return s.orNaN(s.most, 1) }

func (s Spread) orNaN(x float64, least int) float64 {
	if s.N < least {
		return math.NaN()
	}
	return x
}
