package engine

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"stillair/sensors/finding"
	"stillair/sensors/median"
)

// grid is the set of ratios searched, in engine turns per metre.
type grid struct {
	low, step float64
	n         int
	orders    []float64
}

// newGrid lays the grid over every ratio that keeps the engine between the
// search's limits at all speeds of the pull.
func newGrid(sig Signal, frames [][2]int, se Search) (grid, error) {
	if !(se.Lowest > 0) || !(se.Highest > se.Lowest) {
		return grid{}, finding.Fail(codeNoRange)
	}
	orders := se.Orders
	if len(orders) == 0 {
		orders = []float64{1, 2}
	}
	slow, fast := math.Inf(1), 0.0
	for _, f := range frames {
		v := (sig.S[f[1]] - sig.S[f[0]]) / (sig.T[f[1]] - sig.T[f[0]])
		slow, fast = math.Min(slow, v), math.Max(fast, v)
	}
	if !(slow > 0) {
		return grid{}, refuse(codeStands)
	}
	low, high := se.Lowest/60/slow, se.Highest/60/fast
	if !(low < high) {
		return grid{}, refuse(codeNoSuchSpeed, finding.Speed("from", slow), finding.Speed("to", fast),
			finding.EngineSpeed("low", se.Lowest), finding.EngineSpeed("high", se.Highest))
	}
	return evenGrid(sig, frames, low, high, finely, orders), nil
}

// Resolution of a grid: steps within the width of the highest order over the
// longest frame. A line's peak is interpolated on the finer; between two steps
// of the coarser a Hann window's peak loses a twentieth at most.
const (
	finely   = 5.0
	coarsely = 2.5
)

// evenGrid has so many steps within a line's width.
func evenGrid(sig Signal, frames [][2]int, low, high, steps float64, orders []float64) grid {
	top, longest := 0.0, 1.0
	for _, h := range orders {
		top = math.Max(top, h)
	}
	for _, f := range frames {
		longest = math.Max(longest, sig.S[f[1]]-sig.S[f[0]])
	}
	step := 1 / (steps * top * longest)
	return grid{low: low, step: step, n: int((high-low)/step) + 1, orders: orders}
}

func (g grid) q(i int) float64 { return g.low + float64(i)*g.step }

// Without an order, power over noise is exponentially distributed with mean
// one, and ln(1 + it) has this mean (e·E₁(1)) and standard deviation.
const (
	nullMean = 0.5963
	nullSD   = 0.4199
)

// scores holds ln(1 + power over noise) for each ratio, summed over the orders
// of each frame and over the frames of each order. The logarithm keeps one
// loud frame from deciding alone.
type scores struct {
	byFrame, byOrder [][]float64
}

func (g grid) scores(sig Signal, frames [][2]int) scores {
	out := scores{byFrame: rows(len(frames), g.n), byOrder: rows(len(g.orders), g.n)}
	p := make([]float64, g.n)
	scratch := make([]float64, g.n)
	for k, f := range frames {
		x := windowed(sig.X[f[0]:f[1]])
		s := sig.S[f[0]:f[1]]
		for j, h := range g.orders {
			powers(p, x, s, h*g.low, h*g.step)
			copy(scratch, p)
			// The median of an exponential distribution is ln 2 of its mean.
			noise := median.In(scratch) / math.Ln2
			for i := range p {
				l := math.Log1p(p[i] / noise)
				out.byFrame[k][i] += l
				out.byOrder[j][i] += l
			}
		}
	}
	return out
}

// windowed returns x without its mean, under a Hann window.
func windowed(x []float64) []float64 {
	m := stat.Mean(x, nil)
	w := make([]float64, len(x))
	for i := range x {
		w[i] = (x[i] - m) * (0.5 - 0.5*math.Cos(2*math.Pi*(float64(i)+0.5)/float64(len(x))))
	}
	return w
}

// powers is the periodogram of x at low, low + step, low + 2·step … turns per
// unit of s. From one to the next every sample's phase advances by an angle of
// its own, which is a complex multiplication instead of a sine and a cosine.
func powers(out, x, s []float64, low, step float64) {
	now, on := make([]complex128, len(x)), make([]complex128, len(x))
	for i, v := range x {
		now[i] = complex(v, 0) * turned(low*(s[i]-s[0]))
		on[i] = turned(step * (s[i] - s[0]))
	}
	for k := range out {
		var sum complex128
		for i, z := range now {
			sum += z
			now[i] = z * on[i]
		}
		out[k] = real(sum)*real(sum) + imag(sum)*imag(sum)
	}
}

// turned is the complex unit vector after so many turns.
func turned(turns float64) complex128 {
	_, turn := math.Modf(turns)
	sin, cos := math.Sincos(2 * math.Pi * turn)
	return complex(cos, sin)
}

func rows(n, of int) [][]float64 {
	r := make([][]float64, n)
	for i := range r {
		r[i] = make([]float64, of)
	}
	return r
}

// strength turns a sum of n scores into standard deviations above noise.
func strength(score float64, terms int) float64 {
	n := float64(terms)
	return (score - nullMean*n) / (nullSD * math.Sqrt(n))
}

// convinced applies the rejection rules for the whole pull.
func (g grid) convinced(sc scores, all []float64, best int, se Search) error {
	frames := len(sc.byFrame)
	terms := frames * len(g.orders)
	z := strength(all[best], terms)
	if z < leastStrength {
		return refuse(codeNoise)
	}
	if j := g.missingOrder(sc, best, z); j >= 0 {
		return refuse(codeNoOrder, finding.Num("order", g.orders[j]))
	}
	if best < 2 || best > g.n-3 {
		return refuse(codeEdge)
	}
	for _, a := range se.Alike {
		if q := a * g.q(best); q > g.q(2) && q < g.q(g.n-3) {
			return rivals(codeCylinders, g.q(best), q)
		}
	}
	margin := int(0.03 * g.q(best) / g.step)
	for i := range all {
		near := i > best-margin && i < best+margin
		if !near && strength(all[i], terms) > rivalLimit(g.q(i)/g.q(best))*z {
			return rivals(codeRival, g.q(best), g.q(i))
		}
	}
	return nil
}

// missingOrder is the index of an order too weak beside the others at a ratio
// of overall strength z, or −1.
func (g grid) missingOrder(sc scores, at int, z float64) int {
	for j := range g.orders {
		if strength(sc.byOrder[j][at], len(sc.byFrame)) < leastOrder*z/math.Sqrt(float64(len(g.orders))) {
			return j
		}
	}
	return -1
}

// rivalLimit is the share of the best ratio's strength that another may reach,
// given that other's size relative to it.
func rivalLimit(r float64) float64 {
	if math.Abs(r-2) < 0.06 || math.Abs(r-0.5) < 0.015 {
		return mostOctave
	}
	return mostRival
}

// refine places the peak between grid points by a parabola.
func (g grid) refine(all []float64, i int) float64 {
	a, b, c := all[i-1], all[i], all[i+1]
	d := a - 2*b + c
	if d >= 0 {
		return g.q(i)
	}
	return g.q(i) + 0.5*(a-c)/d*g.step
}

func sum(scores [][]float64) []float64 {
	out := make([]float64, len(scores[0]))
	for _, s := range scores {
		for i, v := range s {
			out[i] += v
		}
	}
	return out
}

func peak(x []float64) int {
	best := 0
	for i := range x {
		if x[i] > x[best] {
			best = i
		}
	}
	return best
}
