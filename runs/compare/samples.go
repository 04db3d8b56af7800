package compare

import (
	"math"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// ErrTooFew is returned when there are too few values to estimate their
// scatter.
var ErrTooFew = finding.Fail("compare.too_few")

// Repeated compares repeated measurements with two setups, such as roll-on
// times: the difference of means with the pooled scatter of both (Student's
// two-sample t test). If the runs' own uncertainties are larger than their
// scatter, those count.
func Repeated(a, b []measure.Value) (Difference, error) {
	if len(a) < 2 || len(b) < 2 {
		return Difference{}, ErrTooFew
	}
	na, nb := float64(len(a)), float64(len(b))
	ma, ssa := moments(a)
	mb, ssb := moments(b)
	dof := na + nb - 2
	scatter := (ssa + ssb) / dof
	own := (meanSquareSE(a)*na + meanSquareSE(b)*nb) / (na + nb)
	return Difference{
		Delta: measure.Value{X: mb - ma, SE: math.Sqrt(math.Max(scatter, own) * (1/na + 1/nb))},
		Base:  ma,
		DoF:   dof,
		Pairs: min(len(a), len(b)),
	}, nil
}

func moments(x []measure.Value) (mean, ss float64) {
	for _, v := range x {
		mean += v.X / float64(len(x))
	}
	for _, v := range x {
		ss += (v.X - mean) * (v.X - mean)
	}
	return mean, ss
}

func meanSquareSE(x []measure.Value) float64 {
	var s float64
	for _, v := range x {
		s += v.SE * v.SE / float64(len(x))
	}
	return s
}
