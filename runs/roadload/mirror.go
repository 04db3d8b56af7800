package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// mirror is the prior of a profile at estimated places: one stretch for each
// direction, both of one road. The slope f is an Ornstein-Uhlenbeck process in
// place. After a distance s out it is f(s), and after a distance s back f(L−s),
// with L the distance between the starts of the runs out and back. L is unknown
// but about the length of a run, so the covariance between the two stretches is
// averaged over its likely values. The mirror-symmetric part of the profile
// acts on the speed exactly as drag does; treating the stretches as independent
// would make the standard error of the drag area up to 1.4 times too small.
type mirror struct {
	inverse *mat.SymDense // of the covariance of the knots for a slope of standard deviation 1
	logDet  float64       // of that covariance
}

// apartBy are the likely ratios of L to the length of a run, of equal
// probability and densest about 1: most riders turn round soon after a run,
// some use the two ends of a longer stretch.
var apartBy = [...]float64{0.85, 0.95, 1.0, 1.05, 1.15, 1.3, 1.5}

// newMirror is the prior for two stretches, of the runs out and of those back;
// nil if there are not two.
func newMirror(runs []*coast, road []stretch, roadLength float64) *mirror {
	if len(road) != 2 {
		return nil
	}
	length, at := meanLength(runs), estimatedAt(road)
	back := road[1].first
	cov := mat.NewSymDense(len(at), nil)
	for i := range at {
		for j := range i + 1 {
			if (i >= back) == (j >= back) {
				cov.SetSym(i, j, math.Exp(-math.Abs(at[i]-at[j])/roadLength))
				continue
			}
			mean := 0.0
			for _, ratio := range apartBy {
				mean += math.Exp(-math.Abs(at[i]+at[j]-ratio*length)/roadLength) / float64(len(apartBy))
			}
			cov.SetSym(i, j, mean)
		}
	}
	var chol mat.Cholesky
	m := mirror{inverse: mat.NewSymDense(len(at), nil)}
	if !chol.Factorize(cov) || chol.InverseTo(m.inverse) != nil {
		return nil
	}
	m.logDet = chol.LogDet()
	return &m
}

// meanLength is the mean length of a run, m.
func meanLength(runs []*coast) float64 {
	sum := 0.0
	for _, c := range runs {
		sum += math.Abs(c.x[len(c.x)-1]-c.x[0]) / float64(len(runs))
	}
	return sum
}

// estimatedAt is the distance rolled at each knot, m.
func estimatedAt(road []stretch) []float64 {
	var at []float64
	for i, s := range road {
		for k := range s.knots {
			x := s.from + float64(k)*s.spacing
			if i == 1 {
				x = far - x
			}
			at = append(at, x)
		}
	}
	return at
}

// prior is as profilePrior.
func (m *mirror) prior(n Noise, add func(i, j int, x float64)) (logDet float64) {
	variance := n.RoadSD * n.RoadSD
	k := m.inverse.SymmetricDim()
	for i := range k {
		for j := i; j < k; j++ {
			add(i, j, m.inverse.At(i, j)/variance)
		}
	}
	return m.logDet + float64(k)*math.Log(variance)
}
