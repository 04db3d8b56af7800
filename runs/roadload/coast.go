package roadload

import (
	"math"
	"slices"
)

// coast is the fit's working state for one run: thinned fixes, the fitted
// trajectory, and its Jacobian. Its buffers are allocated once.
type coast struct {
	id, setup, pair int
	dir             float64
	pairIndex       int
	postureIndex    int     // among all runs
	mass, inertia   float64 // kg
	rho             float64 // kg/m³
	hours           float64 // start of the run after the middle of all runs, h
	part            float64 // share of the pair's change of wind: −½ in its first run, ½ in its second, 0 if it did not change

	t, z      []float64 // s, m/s
	count     []float64 // number of fixes in each z; 0: left out
	x         []float64 // place along the road at t, m; nil: not known
	estimated bool      // x is the distance rolled, see estimatePlaces
	height    []float64 // m; NaN: not known
	heights   heightKind
	channels  int // measurements at a fix: 1, or 2 with heights
	cuts      []cutAt

	start float64   // fitted speed at t[0], m/s
	steps []float64 // change of speed in each cut, m/s

	v     []float64 // fitted speed at t, m/s
	decay []float64 // ∫ ∂(force)/∂v /M dt from t[i] to t[i+1]
	push  []float64 // deceleration by a gust of 1 m/s, mean over the same, 1/s
	fades fades     // remaining share of errors after each step
	extra []float64 // variance of the air speed at t due to gusts, m²/s²

	own     int           // unknowns of this run alone: the start, the steps, the zero of the heights
	cols    []int         // place in the layout of the columns from own on
	at      places        // indices in cols of the optional unknowns
	stretch stretch       // of the road that this run passed
	span    [2]int        // first knot of this run's, and number of them
	jac     []float64     // a row for each measurement: its derivative by each unknown, then its residual
	white   []float64     // the same, whitened
	norm    []float64     // its square: normal equations, own unknowns eliminated
	pred    prediction    // of the filter
	obs     []observation // channels for each fix
	step    []stepModel   // from each fix to the next
}

// cutAt is a stretch of fixes left out, indices [from, to); the speed may
// have changed by any amount when it ends.
type cutAt struct {
	from, to int
	jump     float64 // apparent jump, m/s
}

// thinTo is the smallest interval between the fixes used, s. Receiver errors of
// closer ones are so strongly correlated that they add almost nothing;
// averaging keeps the little that they do.
const thinTo = 0.5

// newCoast copies a run, averaging fixes closer than thinTo.
func newCoast(r Run, middle float64) *coast {
	heights, kind := r.heights()
	c := &coast{id: r.ID, setup: r.Setup, pair: r.Pair, dir: r.Dir, channels: 1, heights: kind,
		mass: r.Mass, inertia: r.Inertia, rho: r.Density, hours: (r.T[0] - middle) / 3600}
	for from := 0; from < len(r.T); {
		to := r.block(from)
		c.t, c.z = append(c.t, mean(r.T[from:to])), append(c.z, mean(r.V[from:to]))
		c.count = append(c.count, float64(to-from))
		if r.Pos != nil {
			c.x = append(c.x, mean(r.Pos[from:to]))
		}
		if kind != none {
			c.height = append(c.height, mean(heights[from:to]))
			c.channels = 2
		}
		from = to
	}
	c.start = c.z[0]
	n := len(c.t)
	c.v, c.extra = make([]float64, n), make([]float64, n)
	c.decay, c.push = make([]float64, n), make([]float64, n)
	c.fades.steps = make([]fade, n-1)
	for i := range n - 1 {
		c.damp(i, 0)
	}
	return c
}

// block is the end of the fixes averaged with the one at from.
func (r *Run) block(from int) int {
	to := from + 1
	for to < len(r.T) && r.T[to] < r.T[from]+thinTo-1e-6 {
		to++
	}
	return to
}

// blocks is the number of fixes left after averaging.
func (r *Run) blocks() int {
	n := 0
	for i := 0; i < len(r.T); i = r.block(i) {
		n++
	}
	return n
}

// mean of the numbers among x; NaN where there is none.
func mean(x []float64) float64 {
	sum, n := 0.0, 0.0
	for _, v := range x {
		if !math.IsNaN(v) {
			sum, n = sum+v, n+1
		}
	}
	return sum / n
}

// attach assigns the run its columns in the layout, and allocates the buffers.
func (c *coast) attach(l layout) {
	c.own = 1 + len(c.cuts) + c.channels - 1
	c.steps = make([]float64, len(c.cuts))
	c.cols = append([]int(nil), cdaAt(c.setup), crrAt(c.setup), l.wind+c.pairIndex, l.grade+c.pairIndex)
	one := func(global int) int {
		if global < 0 {
			return -1
		}
		c.cols = append(c.cols, global)
		return len(c.cols) - 1
	}
	c.at = places{slope: one(l.slope), warm: one(l.warm), shift: one(l.shift[c.pairIndex]), posture: -1, press: -1}
	if l.posture >= 0 {
		c.at.posture = one(l.posture + c.postureIndex)
	}
	if c.heights == byBarometer {
		c.at.press = one(l.press)
	}
	c.at.knots = len(c.cols)
	if l.knots > 0 {
		c.stretch = on(l.road, slices.Min(c.x))
		c.span = c.knotSpan()
		for k := range c.span[1] {
			c.cols = append(c.cols, l.knot+c.span[0]+k)
		}
	}
	n, w := len(c.t), c.width()
	c.jac = make([]float64, n*c.channels*w)
	c.white = make([]float64, len(c.jac))
	c.norm = make([]float64, w*w)
	c.pred = make(prediction, w)
	c.step = make([]stepModel, n)
	c.obs = make([]observation, n*channels)
}

// places are indices into the columns that runs share; −1: not this run's.
type places struct{ slope, warm, shift, posture, press, knots int }

// width is the number of columns: own unknowns, common ones, and the data.
func (c *coast) width() int { return c.own + len(c.cols) + 1 }

// knotSpan is the index of the first knot that the run passes, and their
// number.
func (c *coast) knotSpan() [2]int {
	first, _ := c.stretch.locate(slices.Min(c.x))
	last, _ := c.stretch.locate(slices.Max(c.x))
	return [2]int{first, last + 2 - first}
}
