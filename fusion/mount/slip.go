package mount

import (
	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
)

const (
	slipReach = 4.0 // s around the time of a slip according to the observations
	jerkOver  = 0.1 // s, half the window for the turn rate
	jerked    = 1.5 // rad/s: a phone that turns this fast relative to the bike is slipping
)

// slipTime locates the slip from one mount to the next: by the peak of the turn
// rate or, without a gyroscope, by when the force changes from one up to the
// other.
func slipTime(s *motion.Series, before, after Mount) float64 {
	mid := (before.To + after.From) / 2
	lo, hi := s.Index(mid-slipReach), s.Index(mid+slipReach)
	if at, ok := jerkTime(s, lo, hi); ok {
		return at
	}
	// Least squares: the sum of squared distances to the old up before and to
	// the new up after is least where the cumulative gain from assigning
	// samples to the old up is greatest.
	best, gain, most := s.Index(mid), 0.0, 0.0
	for i := lo; i < hi; i++ {
		gain += r3.Dot(s.Force(i), r3.Sub(before.Up, after.Up))
		if gain > most {
			best, most = i, gain
		}
	}
	return s.T[best]
}

// jerkTime is the time of the peak turn rate between two samples, if that is
// high enough for a slip.
func jerkTime(s *motion.Series, lo, hi int) (float64, bool) {
	if !s.HasTurn {
		return 0, false
	}
	half := max(1, s.Half(jerkOver))
	best, most := 0, 0.0
	for i := lo + half; i < hi-half; i++ {
		var sum r3.Vec
		for j := i - half; j <= i+half; j++ {
			sum = r3.Add(sum, s.Turn(j))
		}
		if rate := r3.Norm(sum) / float64(2*half+1); rate > most {
			best, most = i, rate
		}
	}
	return s.T[best], most > jerked
}
