package roadload

import "math"

// coast is one run as the fit works on it: thinned fixes, the fitted
// trajectory, and how it answers to every unknown. Its buffers are made once.
type coast struct {
	id, setup, pair int
	dir             float64
	pairIndex       int
	mass, inertia   float64 // kg
	rho             float64 // kg/m³
	hours           float64 // start of the run after the middle of all runs, h

	t, z  []float64 // s, m/s
	count []float64 // fixes behind each z; 0: left out
	x     []float64 // place along the road at t, m; nil: not known
	cuts  []cutAt

	start float64   // fitted speed at t[0], m/s
	steps []float64 // what each cut changed the speed by, m/s

	v     []float64 // fitted speed at t, m/s
	decay []float64 // ∫ ∂(force)/∂v /M dt from t[i] to t[i+1]
	push  []float64 // deceleration by a gust of 1 m/s, mean over the same, 1/s
	extra []float64 // variance of the air speed at t that gusts leave, m²/s²

	own   int       // unknowns of this run alone: the start and the steps
	cols  []int     // place in the layout of the columns from own on
	jac   []float64 // rows of len(cols)+own+1: derivative of v by each unknown, then what is left to explain
	norm  []float64 // its square: whitened normal equations, own unknowns eliminated
	white []float64 // rows of jac, whitened
	pred  prediction
	steer []filtering // one for each fix
	span  [2]int      // first knot of this run's, and number of them
}

// cutAt is a stretch of fixes left out, indices [from, to); the speed may
// have changed by any amount when it ends.
type cutAt struct {
	from, to int
	jump     float64 // by how much it seemed to, m/s
}

// thinTo is how close together fixes are used, s. Receiver errors between
// closer ones are so alike that they add nothing; averaging keeps what little
// there is.
const thinTo = 0.5

// newCoast copies a run, averaging fixes closer than thinTo.
func newCoast(r Run, middle float64) *coast {
	c := &coast{id: r.ID, setup: r.Setup, pair: r.Pair, dir: r.Dir,
		mass: r.Mass, inertia: r.Inertia, rho: r.Density, hours: (r.T[0] - middle) / 3600}
	for i := 0; i < len(r.T); {
		var t, z, x, n float64
		for first := r.T[i]; i < len(r.T) && r.T[i] < first+thinTo-1e-6; i++ {
			t, z, n = t+r.T[i], z+r.V[i], n+1
			if r.Pos != nil {
				x += r.Pos[i]
			}
		}
		c.t, c.z, c.count = append(c.t, t/n), append(c.z, z/n), append(c.count, n)
		if r.Pos != nil {
			c.x = append(c.x, x/n)
		}
	}
	c.start = c.z[0]
	n := len(c.t)
	c.v, c.extra = make([]float64, n), make([]float64, n)
	c.decay, c.push = make([]float64, n), make([]float64, n)
	return c
}

// attach gives the run its columns in the layout.
func (c *coast) attach(l layout) {
	c.own = 1 + len(c.cuts)
	c.steps = make([]float64, len(c.cuts))
	c.cols = append(c.cols[:0], cdaAt(c.setup), crrAt(c.setup), l.wind+c.pairIndex, l.grade+c.pairIndex)
	if l.slope >= 0 {
		c.cols = append(c.cols, l.slope)
	}
	if l.warm >= 0 {
		c.cols = append(c.cols, l.warm)
	}
	if l.knots > 0 {
		c.span = c.knotSpan(l)
		for k := range c.span[1] {
			c.cols = append(c.cols, l.knot+c.span[0]+k)
		}
	}
	w := c.width()
	c.jac = make([]float64, len(c.t)*w)
	c.norm = make([]float64, w*w)
	c.white = make([]float64, len(c.t)*w)
	c.pred = newPrediction(w)
	c.steer = make([]filtering, len(c.t))
}

// width is the number of columns: own unknowns, common ones, and the data.
func (c *coast) width() int { return c.own + len(c.cols) + 1 }

func (c *coast) knotSpan(l layout) [2]int {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, x := range c.x {
		lo, hi = math.Min(lo, x), math.Max(hi, x)
	}
	first, _ := l.road.locate(lo, l.knots)
	last, _ := l.road.locate(hi, l.knots)
	return [2]int{first, last + 2 - first}
}
