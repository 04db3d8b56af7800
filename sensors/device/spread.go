package device

import "math"

// Spread summarises a series: number, mean and largest value. The zero value is empty.
type Spread struct {
	N          int
	mean, most float64
}

// Add takes one more value.
func (s *Spread) Add(x float64) {
	s.N++
	s.mean += (x - s.mean) / float64(s.N)
	if s.N == 1 || x > s.most {
		s.most = x
	}
}

// Mean is NaN for an empty series.
func (s Spread) Mean() float64 { return s.orNaN(s.mean) }

// Most is NaN for an empty series.
func (s Spread) Most() float64 { return s.orNaN(s.most) }

func (s Spread) orNaN(x float64) float64 {
	if s.N == 0 {
		return math.NaN()
	}
	return x
}
