package power

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
	"stillair/sensors/finding"
)

// Curve is the power at the road over speed, from all pulls of a setup.
type Curve struct {
	Speed     []float64       // m/s, ascending and even
	Power     []measure.Value // W, still air, level road
	Pulls     []int           // IDs
	Bandwidth float64         // Hz, −3 dB, in the middle of the pulls
	BothWays  bool            // false: wind and slope do not cancel, and widen the band

	own   *mat.SymDense // covariance not shared with other setups, W²
	mass  []float64     // effect of one standard uncertainty of mass, W
	load  [2][]float64  // effects of the two independent parts of road load's uncertainty, W
	bike  Bike
	pairs [][]float64 // power from each pair of opposite pulls alone, W; none if there is only one
	both  [2]float64  // the range of speeds common to all pulls of the pairs, m/s
}

// gridStep is the distance of the curve's points, m/s.
const gridStep = 0.25

// ErrNoOverlap is returned for pulls with a gap: speeds between them that none
// went through.
var ErrNoOverlap = finding.Fail(codeNoOverlap)

// NewCurve measures power over all the speeds that any of the pulls went
// through, or over those of them between from and to in m/s (NaN: no limit).
// Where fewer pulls contribute the band is wider.
func NewCurve(pulls []Pull, bike Bike, day Day, from, to float64) (*Curve, error) {
	if err := bike.Check(); err != nil {
		return nil, err
	}
	if len(pulls) == 0 {
		return nil, finding.Fail(codeNoPull)
	}
	thin := make([]Pull, len(pulls))
	for i, p := range pulls {
		if err := p.check(); err != nil {
			return nil, err
		}
		thin[i] = p.thinned()
	}
	grid := ridden(thin, from, to)
	if len(grid) < 3 {
		return nil, ErrNoOverlap
	}
	f, err := newFit(thin, bike, day)
	if err != nil {
		return nil, err
	}
	c, err := newCurve(f, grid, bike)
	if err != nil {
		return nil, err
	}
	return c, c.keepPairs(thin, bike, day)
}

// newCurve evaluates a fit.
func newCurve(f *fit, grid []float64, bike Bike) (*Curve, error) {
	c := &Curve{Speed: grid, bike: bike, Bandwidth: f.bandwidth(grid, bike)}
	for _, p := range f.pulls {
		c.Pulls = append(c.Pulls, p.ID)
		c.BothWays = c.BothWays || p.Dir != f.pulls[0].Dir
	}
	var err error
	if c.own, err = f.covariance(grid); err != nil {
		return nil, err
	}
	power := f.power(grid)
	c.addShared(power)
	c.fill(power)
	return c, nil
}

// ridden are the speeds that any of the pulls went through; none if there is a
// gap between them.
func ridden(pulls []Pull, from, to float64) []float64 {
	if !contiguous(pulls) {
		return nil
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range pulls {
		lo, hi = math.Min(lo, p.V[0]), math.Max(hi, p.V[len(p.V)-1])
	}
	if !math.IsNaN(from) {
		lo = math.Max(lo, from)
	}
	if !math.IsNaN(to) {
		hi = math.Min(hi, to)
	}
	var g []float64
	for k := math.Ceil(lo / gridStep); k*gridStep <= hi; k++ {
		g = append(g, k*gridStep)
	}
	return g
}

// contiguous reports whether the pulls cover a range of speeds without a gap.
func contiguous(pulls []Pull) bool { return len(Parts(pulls)) <= 1 }

// Parts splits pulls into groups at gaps between their speeds.
func Parts(pulls []Pull) [][]Pull {
	sorted := slices.Clone(pulls)
	slices.SortStableFunc(sorted, func(a, b Pull) int { return cmp.Compare(a.V[0], b.V[0]) })
	var out [][]Pull
	reached := math.Inf(-1)
	for _, p := range sorted {
		if p.V[0] > reached {
			out = append(out, nil)
		}
		last := len(out) - 1
		out[last] = append(out[last], p)
		reached = math.Max(reached, p.V[len(p.V)-1])
	}
	return out
}

// addShared computes the effect of mass and road load on the whole curve. A
// bike heavier than entered needs more force for the acceleration, and had more
// road load in its coast-downs, so power is proportional to mass.
func (c *Curve) addShared(power []float64) {
	l := c.bike.Load
	n := len(c.Speed)
	c.mass = make([]float64, n)
	c.load = [2][]float64{make([]float64, n), make([]float64, n)}
	along, across := 0.0, l.Crr.SE
	if l.CdA.SE > 0 {
		along = l.Cov / l.CdA.SE
		across = math.Sqrt(math.Max(0, l.Crr.SE*l.Crr.SE-along*along))
	}
	for k, v := range c.Speed {
		perCdA := 0.5 * l.Density * v * v * v
		perCrr := l.Mass * l.Gravity * (1 + l.K*v) * v
		c.mass[k] = power[k] / l.Mass * c.bike.MassSD
		c.load[0][k] = perCdA*l.CdA.SE + perCrr*along
		c.load[1][k] = perCrr * across
	}
}

// keepPairs stores the curve of each pair that has both directions, as the
// independent repetitions that a comparison needs. Each is fitted alone: a
// joint fit would shrink the pairs of a setup towards each other and understate
// their scatter. Outside the speeds that all pairs went through the curves are
// partly extrapolated, and no comparison uses them there.
func (c *Curve) keepPairs(pulls []Pull, bike Bike, day Day) error {
	pairs := opposite(pulls)
	if len(pairs) < 2 {
		return nil
	}
	c.both = [2]float64{math.Inf(-1), math.Inf(1)}
	for _, two := range pairs {
		for _, p := range two {
			c.both = [2]float64{math.Max(c.both[0], p.V[0]), math.Min(c.both[1], p.V[len(p.V)-1])}
		}
		f, err := newFit(two, bike, day)
		if err != nil {
			return err
		}
		c.pairs = append(c.pairs, f.power(c.Speed))
	}
	return nil
}

// opposite are the pairs with a pull in each direction, in order of their first
// pulls.
func opposite(pulls []Pull) [][]Pull {
	var out [][]Pull
	for i, p := range pulls {
		for _, q := range pulls[i+1:] {
			if pairKey(q) == pairKey(p) && q.Dir != p.Dir {
				out = append(out, []Pull{p, q})
			}
		}
	}
	return out
}

func (c *Curve) fill(power []float64) {
	c.Power = make([]measure.Value, len(power))
	for k, p := range power {
		shared := square(c.mass[k]) + square(c.load[0][k]) + square(c.load[1][k])
		c.Power[k] = measure.Value{X: p, SE: math.Sqrt(c.own.At(k, k) + shared)}
	}
}
