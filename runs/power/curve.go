package power

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"gonum.org/v1/gonum/mat"

	"stillair/runs/measure"
)

// Curve is the power at the road over speed, from all pulls of a setup.
type Curve struct {
	Speed     []float64       // m/s, ascending and even
	Power     []measure.Value // W, still air, level road
	Pulls     []int           // IDs
	Bandwidth float64         // Hz, −3 dB: the least of the pulls'
	BothWays  bool            // false: wind and slope do not cancel, and the band is wide with them

	own   *mat.SymDense // covariance that no other setup shares, W²
	mass  []float64     // effect of one standard uncertainty of mass, W
	load  [2][]float64  // effects of the two independent parts of road load's uncertainty, W
	bike  Bike
	pairs []pairMean
}

// pairMean is one pull, or the mean of those of one pair, on the grid.
type pairMean struct {
	pair  int
	power []float64 // W
}

// gridStep is the distance of the curve's points, m/s.
const gridStep = 0.25

// ErrNoOverlap says that the pulls have no speed in common.
var ErrNoOverlap = errors.New("the pulls share no range of speed: pull through the same speeds each time")

// NewCurve measures power over the speeds that all the pulls share, or over
// those of them between from and to in m/s (NaN: no limit).
func NewCurve(pulls []Pull, bike Bike, day Day, from, to float64) (*Curve, error) {
	if err := bike.Check(); err != nil {
		return nil, err
	}
	if len(pulls) == 0 {
		return nil, errors.New("no full-throttle pull in one gear was found")
	}
	traces := make([]*trace, len(pulls))
	for i, p := range pulls {
		var err error
		if traces[i], err = newTrace(p, bike, day); err != nil {
			return nil, fmt.Errorf("pull %d: %w", p.ID, err)
		}
	}
	grid := commonGrid(traces, from, to)
	if len(grid) < 3 {
		return nil, ErrNoOverlap
	}
	return average(traces, grid, bike, day), nil
}

// trace is the power during one pull, at its own points.
type trace struct {
	pull      Pull
	v, p      []float64     // m/s and W
	cov       *mat.SymDense // of p: speed and gusts, W²
	bandwidth float64
}

func newTrace(p Pull, bike Bike, day Day) (*trace, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	p = p.thinned()
	s, err := smooth(p)
	if err != nil {
		return nil, err
	}
	n := len(s.v)
	l := bike.Load
	inertia := l.Mass + bike.RotatingMass
	tr := &trace{pull: p, v: s.v, p: make([]float64, n), cov: mat.NewSymDense(n, nil), bandwidth: s.bandwidth}
	gust := func(v float64) float64 { return l.Density * l.CdA.X * v * v * day.GustSD }
	for i, v := range s.v {
		tr.p[i] = v * (inertia*s.a[i] + l.Force(v).X)
		for j := i; j < n; j++ {
			w := s.v[j]
			hang := math.Exp(-(p.T[j] - p.T[i]) / math.Max(day.GustTime, 1e-3))
			tr.cov.SetSym(i, j, inertia*inertia*v*w*s.cov.At(i, j)+gust(v)*gust(w)*hang)
		}
	}
	return tr, nil
}

func commonGrid(traces []*trace, from, to float64) []float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, t := range traces {
		lo, hi = math.Max(lo, t.v[0]), math.Min(hi, t.v[len(t.v)-1])
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

// onto returns the matrix that interpolates the trace at the grid's speeds.
func (t *trace) onto(grid []float64) *mat.Dense {
	w := mat.NewDense(len(grid), len(t.v), nil)
	for k, v := range grid {
		i := sort.Search(len(t.v)-2, func(i int) bool { return t.v[i+1] >= v })
		f := 0.0
		if d := t.v[i+1] - t.v[i]; d > 0 {
			f = math.Max(0, math.Min(1, (v-t.v[i])/d))
		}
		w.Set(k, i, 1-f)
		w.Set(k, i+1, f)
	}
	return w
}
