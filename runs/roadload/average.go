package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// The roughness of a road can be poorly determined: the likelihood of a nearly
// smooth road is almost flat towards perfectly smooth, and falls slowly the
// other way. Using only the most likely roughness would make intervals too
// narrow. So the road load is averaged over roughnesses, weighted by their
// posterior probabilities, and the spread of the answers enters the covariance
// (Bayesian model averaging: Hoeting et al., Statistical Science 14 (1999)
// 382, equations 5 to 7).

// averageAt are the places of the averaging, in posterior standard deviations.
var averageAt = [...]float64{-2.4, -1.8, -1.2, -0.6, 0, 0.6, 1.2, 1.8, 2.4}

// average returns the mean road loads, as differences from the fit, and their
// covariance. Without a rough road in the model it is the fit itself.
func (s *system) average(l *learner) ([]float64, *mat.SymDense, error) {
	n := 2 * s.lay.setups
	dial := l.roadDial()
	if dial < 0 {
		cov, err := s.covAt(l, l.at)
		return make([]float64, n), cov, err
	}
	if s.lay.mirror != nil {
		return s.averageEstimated(l, dial)
	}
	width := math.Sqrt(2 / math.Max(l.diagonal[dial], 2/(l.dials[dial].sd*l.dials[dial].sd)))
	probe := append([]float64(nil), l.at...)
	base := l.cost(probe)
	m := newMixture(n)
	for _, z := range averageAt {
		probe[dial] = l.at[dial] + z*width
		m.add(s, math.Exp((base-l.cost(probe))/2))
	}
	mean, cov := m.whole()
	return mean, cov, nil
}

// mixture accumulates weighted answers.
type mixture struct {
	total  float64
	mean   []float64
	square *mat.SymDense
}

func newMixture(n int) *mixture {
	return &mixture{mean: make([]float64, n), square: mat.NewSymDense(n, nil)}
}

// add accumulates the solution of the equations as last evaluated.
func (m *mixture) add(s *system, weight float64) {
	cov, err := s.loadCov()
	if err != nil || !(weight > 0) {
		return
	}
	m.total += weight
	for i := range m.mean {
		m.mean[i] += weight * s.x.AtVec(i)
		for j := range i + 1 {
			m.square.SetSym(i, j, m.square.At(i, j)+weight*(cov.At(i, j)+s.x.AtVec(i)*s.x.AtVec(j)))
		}
	}
}

// whole returns the mean and covariance of the mixture.
func (m *mixture) whole() ([]float64, *mat.SymDense) {
	for i := range m.mean {
		m.mean[i] /= m.total
		for j := range i + 1 {
			m.square.SetSym(i, j, m.square.At(i, j)/m.total-m.mean[i]*m.mean[j])
		}
	}
	return m.mean, m.square
}

// roadDial is the index of the roughness among the dials, or −1 if it is not
// learned.
func (l *learner) roadDial() int {
	for i, d := range l.dials {
		if d.of(&l.prior) == &l.prior.RoadSD {
			return i
		}
	}
	return -1
}
