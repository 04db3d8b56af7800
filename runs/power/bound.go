package power

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/fusion"
	"stillair/runs/measure"
)

// Stretch is a pull within a track.
type Stretch struct {
	From, To float64 // s
	Dir      float64 // as in Pull
	Pair     int     // as in Pull
}

// OfTrack extracts a pull from a track between two times, with mostPoints
// points. The caller sets its ID, direction and pair.
func OfTrack(track *fusion.Track, from, to float64) Pull {
	p := Pull{Cov: mat.NewSymDense(mostPoints, nil)}
	for i := range mostPoints {
		t := from + (to-from)*float64(i)/(mostPoints-1)
		p.T, p.V = append(p.T, t), append(p.V, track.At(t).V)
	}
	for i, row := range track.SpeedCov(p.T) {
		for j := i; j < mostPoints; j++ {
			p.Cov.SetSym(i, j, row[j])
		}
	}
	return p
}

// Bound is the curve of a test with known truth: known is the true motion with
// the least covariance that a smoother can reach (fusion.Bound), bike the true
// bike with the least uncertainty of its road load (roadload.Bound), and day
// the true variances of wind, gusts and slope. Its band is the Bayesian
// Cramér-Rao bound of power, at the bandwidth learned from the true motion; a
// smoother curve may have less variance, at the price of bias. It does not
// include the uncertainty of when the throttle moves.
func Bound(known *fusion.Track, pulls []Stretch, bike Bike, day Day) (*Curve, error) {
	out := make([]Pull, len(pulls))
	for i, s := range pulls {
		out[i] = OfTrack(known, s.From, s.To)
		out[i].ID, out[i].Dir, out[i].Pair = i+1, s.Dir, s.Pair
	}
	return NewCurve(out, bike, day, math.NaN(), math.NaN())
}

// At is the power at the point whose speed is nearest to v in m/s, W.
func (c *Curve) At(v float64) measure.Value {
	best := 0
	for i, x := range c.Speed {
		if math.Abs(x-v) < math.Abs(c.Speed[best]-v) {
			best = i
		}
	}
	return c.Power[best]
}

// Mean is the mean power over the speeds of the curve, W, as used to compare
// two setups. Its uncertainty leaves out mass and road load, which all curves
// of the same bike share.
func (c *Curve) Mean() measure.Value {
	n := len(c.Power)
	var v float64
	for i := range n {
		for j := range n {
			v += c.own.At(i, j)
		}
	}
	return measure.Value{X: meanOf(c.Power), SE: math.Sqrt(math.Max(v, 0)) / float64(n)}
}
