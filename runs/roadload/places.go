package roadload

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Without positions it is unknown which places two runs have in common. But
// runs in one direction begin at about the same place, so the distance rolled
// gives the place on a stretch. The offset between the stretches of the two
// directions is unknown too: the runs back begin about where the runs out end,
// within some hundred metres (see mirror).
//
// A rough road makes drag and rolling resistance two or three times more
// uncertain, so it matters whether the road is rough. Most test roads are
// smooth; roughnesses holds the prior probabilities, which the likelihood of
// the runs updates.

const far = 1e5 // m between the stretches of the two directions

// withPlaces fits again with places from the distance rolled (dead reckoning)
// if places are missing and the road may be rough; otherwise it returns its
// arguments.
func (s *system) withPlaces(l *learner) (*system, *learner, error) {
	if s.lay.knots > 0 || s.opts.Noise.RoadSD <= 0 {
		return s, l, nil
	}
	runs := copies(s.runs)
	for _, c := range runs {
		c.estimatePlaces()
	}
	next := s.with(runs)
	if next.lay.knots == 0 {
		return s, l, nil
	}
	start, err := next.roughStart(l.noise, s)
	if err != nil || start.RoadSD == 0 {
		_, err := s.evaluate(l.noise)
		return s, l, err
	}
	other := l.on(next)
	for i, d := range other.dials {
		other.at[i] = math.Log(*d.of(&start) / *d.of(&other.prior))
	}
	other.noise = other.noiseAt(other.at)
	return next, other, next.settle(other)
}

// estimatePlaces uses the distance rolled as the place along the stretch of the
// run's direction.
func (c *coast) estimatePlaces() {
	c.x, c.estimated = c.rolled(), true
	if c.dir > 0 {
		return
	}
	for i := range c.x {
		c.x[i] = far - c.x[i]
	}
}

// rolled is the distance from the first fix, m, by integrating the speed.
func (c *coast) rolled() []float64 {
	d := make([]float64, len(c.t))
	for i := 1; i < len(d); i++ {
		d[i] = d[i-1] + (c.t[i]-c.t[i-1])*(c.z[i]+c.z[i-1])/2
	}
	return d
}

const hopeless = 2.0 // of −2 log likelihood, by which all rough roads fit the runs worse than a smooth one

// roughStart finds the roughness and the gusts of highest likelihood; its
// RoadSD is 0 if a smooth road is far more likely.
func (s *system) roughStart(n Noise, smooth *system) (Noise, error) {
	plain, err := smooth.evaluate(n)
	if err != nil {
		return n, err
	}
	best, found := plain+hopeless, n
	found.RoadSD = 0
	for _, sd := range []float64{0.001, 0.0018, 0.003} {
		for _, gusts := range []float64{1, 0.6} {
			at := n
			at.RoadSD, at.GustSD = sd, gusts*n.GustSD
			s.linearise(at)
			if _, err := s.evaluate(at); err != nil {
				continue
			}
			s.improve(1)
			s.linearise(at)
			if v, err := s.evaluate(at); err == nil && v < best {
				best, found = v, at
			}
		}
	}
	return found, nil
}

// roughness is a standard deviation of a road's slope with its prior
// probability.
type roughness struct{ sd, prior float64 }

// roughnesses are the values averaged over where places are estimated, a smooth
// road first. Most test roads are smooth (common practice); the prior of rough
// ones is set so that intervals have their coverage on a road of 0.2 % and grow
// little on a smooth one. Values in between are left out: without places they
// cannot be excluded and would widen every interval.
func roughnesses() [4]roughness {
	return [...]roughness{{0.00005, 0.80}, {0.0012, 0.04}, {0.002, 0.09}, {0.0032, 0.07}}
}

// averageEstimated is average for estimated places: over all roughnesses, each
// with its most likely gusts.
func (s *system) averageEstimated(l *learner, dial int) ([]float64, *mat.SymDense, error) {
	m := newMixture(2 * s.lay.setups)
	probe := append([]float64(nil), l.at...)
	best := math.NaN()
	for _, r := range roughnesses() {
		probe[dial] = math.Log(r.sd / l.prior.RoadSD)
		l.minimiseDial(probe, 0)
		z := probe[dial] / l.dials[dial].sd
		v := l.cost(probe) - z*z
		if math.IsNaN(best) {
			best = v
		}
		m.add(s, r.prior*math.Exp((best-v)/2))
	}
	mean, cov := m.whole()
	return mean, cov, nil
}

// minimiseDial minimises the cost over one dial at fixed others, by parabolic
// interpolation.
func (l *learner) minimiseDial(at []float64, dial int) {
	const h = 0.3
	x := at[dial]
	middle := l.cost(at)
	at[dial] = x + h
	up := l.cost(at)
	at[dial] = x - h
	down := l.cost(at)
	bend := math.Max(up+down-2*middle, 0.2*h*h)
	at[dial] = x + math.Max(-1, math.Min(1, h/2*(down-up)/bend))
}
