package mount

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/sensors"
)

// Chosen on the simulated ride of TestLagSteps in package fusion, and checked
// on the rides of TestLaunches there, whose lag is constant.
const (
	leastStep   = 0.35 // s by which a lag must change
	stepCost    = 50.0 // minimum decrease of squared residuals by a step, in units of their variance
	mostCost    = 16.0 // of one observation
	unevenness  = 0.15 // of the change of speed: error from squat, scale and the spacing of trial lags
	noiseRounds = 3    // to estimate the size of the residuals, which steps inflate at first
	leastNoise  = 0.15 // m/s² of an observation's residual
)

// Lags returns the lag of each fix if it changed in steps during the ride, as
// when a phone switches to another source of its position, and nil if it did
// not. Second by second the force along the road is compared with the change of
// speed at every lag; the path through the lags with the smallest cost,
// including a penalty for each step, is found by dynamic programming (Viterbi,
// IEEE Trans. Information Theory 13 (1967) 260).
func Lags(s *motion.Series, fixes []sensors.Fix, found Found) []float64 {
	g := newGauge(s, fixes)
	defer g.done()
	pairs := g.pairs
	if len(pairs) < 2*fewest {
		return nil
	}
	if g.settled(pairs, found) {
		return nil
	}
	residuals := g.residuals(pairs, found)
	path := make([]int, len(pairs))
	for k := range path {
		path[k] = stateOf(found.Lag)
	}
	for range noiseRounds {
		path = cheapest(costs(residuals, path))
	}
	lags := make([]float64, len(fixes))
	k := 0
	for i := range fixes {
		for k+1 < len(pairs) && pairs[k+1][0] <= i {
			k++
		}
		lags[i] = lagOf(path[k])
	}
	if spread := slices.Max(lags) - slices.Min(lags); spread < leastStep {
		return nil
	}
	return lags
}

func lagOf(state int) float64 { return firstLag + float64(state)*lagStep }

func stateOf(lag float64) int { return int(math.Round((lag - firstLag) / lagStep)) }

// residuals are those of each pair at each lag.
func (g *gauge) residuals(pairs [][2]int, found Found) [][]float64 {
	out := make([][]float64, len(pairs))
	for k, p := range pairs {
		out[k] = make([]float64, stateOf(lastLag)+1)
		for l := range out[k] {
			out[k][l] = g.residual(p, found, lagOf(l))
		}
	}
	return out
}

// costs are squared residuals divided by their variance along a path.
func costs(residuals [][]float64, path []int) [][]float64 {
	var sizes []float64
	for k, r := range residuals {
		if e := r[path[k]]; !math.IsNaN(e) {
			sizes = append(sizes, math.Abs(e))
		}
	}
	const perMedian = 1.48 // standard deviation over the median size of normal numbers
	noise := leastNoise
	if len(sizes) > 0 {
		slices.Sort(sizes)
		noise = math.Max(noise, perMedian*sizes[len(sizes)/2])
	}
	out := make([][]float64, len(residuals))
	for k, r := range residuals {
		out[k] = make([]float64, len(r))
		for l, e := range r {
			out[k][l] = mostCost // beyond, turning, or not recorded
			if c := e * e / (noise * noise); c < mostCost {
				out[k][l] = c
			}
		}
	}
	return out
}

// residual is the force along the road minus the change of speed, m/s², with
// less weight at large accelerations; NaN where it is not known.
func (g *gauge) residual(p [2]int, found Found, lag float64) float64 {
	a, b := g.fixes[p[0]], g.fixes[p[1]]
	t0, t1 := a.T-lag, b.T-lag
	if t0 < g.s.T[0] || t1 > g.s.T[len(g.s.T)-1] {
		return math.NaN()
	}
	o, ok := g.between(t0, t1, a.Speed, b.Speed)
	if !ok || o.turning {
		return math.NaN()
	}
	m := slices.IndexFunc(found.Mounts, func(m Mount) bool { return t0 < m.To })
	if m < 0 {
		m = len(found.Mounts) - 1
	}
	e := r3.Dot(o.force, found.Mounts[m].Forward) - o.accel
	share := unevenness * o.accel / leastNoise
	return e / math.Sqrt(1+share*share)
}

// settled reports whether no stretch fits one lag so badly that a step could
// lower the cost: by the maximum subarray of the excess costs.
func (g *gauge) settled(pairs [][2]int, found Found) bool {
	const left = 1.5 // of an observation's cost
	one := make([][]float64, len(pairs))
	for k, p := range pairs {
		one[k] = []float64{g.residual(p, found, found.Lag)}
	}
	var sum, most float64
	for k, c := range costs(one, make([]int, len(one))) {
		if math.IsNaN(one[k][0]) {
			continue
		}
		sum = math.Max(0, sum+c[0]-left)
		most = math.Max(most, sum)
	}
	return most < stepCost/2
}

// cheapest is the state of each pair along the cheapest path.
func cheapest(costs [][]float64) []int {
	states := len(costs[0])
	total := slices.Clone(costs[0])
	from := make([]uint8, len(costs)*states)
	for k := 1; k < len(costs); k++ {
		best := 0
		for l := range total {
			if total[l] < total[best] {
				best = l
			}
		}
		jump := total[best] + stepCost
		for l := range total {
			from[k*states+l] = uint8(l)
			if jump < total[l] {
				total[l], from[k*states+l] = jump, uint8(best)
			}
			total[l] += costs[k][l]
		}
	}
	at := 0
	for l := range total {
		if total[l] < total[at] {
			at = l
		}
	}
	path := make([]int, len(costs))
	for k := len(costs) - 1; k >= 0; k-- {
		path[k] = at
		at = int(from[k*states+at])
	}
	return path
}
