package power

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// average joins the traces on the grid: the mean of each direction first, then
// of the two, so that wind and slope cancel as far as the pulls allow.
func average(traces []*trace, grid []float64, bike Bike, day Day) *Curve {
	n := len(grid)
	c := &Curve{Speed: grid, Bandwidth: math.Inf(1), bike: bike, own: mat.NewSymDense(n, nil)}
	weight := weights(traces)
	mean := mat.NewVecDense(n, nil)
	lean := map[int]float64{} // by pair: what its directions leave of wind and slope
	byPair := map[int][]*mat.VecDense{}
	for i, t := range traces {
		w := t.onto(grid)
		var p mat.VecDense
		var wc, cov mat.Dense
		p.MulVec(w, mat.NewVecDense(len(t.p), t.p))
		wc.Mul(w, t.cov)
		cov.Mul(&wc, w.T())
		mean.AddScaledVec(mean, weight[i], &p)
		addScaled(c.own, weight[i]*weight[i], &cov)
		key := pairKey(t.pull)
		lean[key] += weight[i] * t.pull.Dir
		byPair[key] = append(byPair[key], &p)
		c.Pulls = append(c.Pulls, t.pull.ID)
		c.Bandwidth = math.Min(c.Bandwidth, t.bandwidth)
		c.BothWays = c.BothWays || t.pull.Dir != traces[0].pull.Dir
	}
	c.addWindAndSlope(lean, day)
	c.addShared(mean.RawVector().Data)
	c.keepPairs(traces, byPair)
	c.fill(mean.RawVector().Data)
	return c
}

// pairKey is a number that pulls of one pair share and a lone pull has alone.
func pairKey(p Pull) int {
	if p.Pair > 0 {
		return p.Pair
	}
	return -1 - p.ID
}

func weights(traces []*trace) []float64 {
	var up, down float64
	for _, t := range traces {
		if t.pull.Dir > 0 {
			up++
		} else {
			down++
		}
	}
	share := 0.5
	if up == 0 || down == 0 {
		share = 1
	}
	w := make([]float64, len(traces))
	for i, t := range traces {
		w[i] = share / down
		if t.pull.Dir > 0 {
			w[i] = share / up
		}
	}
	return w
}

func addScaled(to *mat.SymDense, k float64, m mat.Matrix) {
	n := to.SymmetricDim()
	for i := range n {
		for j := i; j < n; j++ {
			to.SetSym(i, j, to.At(i, j)+k*(m.At(i, j)+m.At(j, i))/2)
		}
	}
}

func (c *Curve) addWindAndSlope(lean map[int]float64, day Day) {
	l := c.bike.Load
	wind, slope := make([]float64, len(c.Speed)), make([]float64, len(c.Speed))
	for k, v := range c.Speed {
		wind[k] = l.Density * l.CdA.X * v * v * day.WindSD
		slope[k] = l.Mass * l.Gravity * v * day.GradeSD
	}
	for _, s := range lean {
		addOuter(c.own, s*s, wind)
		addOuter(c.own, s*s, slope)
	}
}

func addOuter(to *mat.SymDense, k float64, x []float64) {
	for i := range x {
		for j := i; j < len(x); j++ {
			to.SetSym(i, j, to.At(i, j)+k*x[i]*x[j])
		}
	}
}

// addShared works out what mass and road load do to the whole curve. A bike
// heavier than thought needs more force for the acceleration, and showed more
// road load in its coast-downs, so power follows mass in proportion.
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

// keepPairs remembers the mean of each pair that has both directions, as the
// independent repetitions that a comparison needs.
func (c *Curve) keepPairs(traces []*trace, byPair map[int][]*mat.VecDense) {
	seen := map[int]bool{}
	for _, t := range traces {
		key := pairKey(t.pull)
		group := byPair[key]
		if seen[key] || len(group) != 2 {
			continue
		}
		seen[key] = true
		var m mat.VecDense
		m.AddVec(group[0], group[1])
		m.ScaleVec(0.5, &m)
		c.pairs = append(c.pairs, pairMean{pair: key, power: m.RawVector().Data})
	}
}

func (c *Curve) fill(power []float64) {
	c.Power = make([]measure.Value, len(power))
	for k, p := range power {
		shared := c.mass[k]*c.mass[k] + c.load[0][k]*c.load[0][k] + c.load[1][k]*c.load[1][k]
		c.Power[k] = measure.Value{X: p, SE: math.Sqrt(c.own.At(k, k) + shared)}
	}
}

// Force is the force at the road at each speed of the curve, N.
func (c *Curve) Force() []measure.Value {
	f := make([]measure.Value, len(c.Power))
	for k, p := range c.Power {
		f[k] = p.Times(1 / c.Speed[k])
	}
	return f
}

// Peak is the highest point of the curve: its speed, m/s, and power, W. Where
// it is the first or last point the true peak may lie outside the pulls, and
// atEnd says so.
func (c *Curve) Peak() (speed float64, p measure.Value, atEnd bool) {
	best := 0
	for k := range c.Power {
		if c.Power[k].X > c.Power[best].X {
			best = k
		}
	}
	return c.Speed[best], c.Power[best], best == 0 || best == len(c.Power)-1
}

// RPM is the engine speed, 1/min, at each speed of the curve for a gear of
// rpmPerMPS revolutions a minute for each m/s.
func (c *Curve) RPM(rpmPerMPS float64) []float64 {
	r := make([]float64, len(c.Speed))
	for k, v := range c.Speed {
		r[k] = v * rpmPerMPS
	}
	return r
}
