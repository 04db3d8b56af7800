package roadload

import (
	"math"
	"slices"

	"stillair/sensors/median"
)

// The receiver's altitude is off by several metres, but nearly constantly for
// minutes: its error is a first-order Gauss-Markov process plus white noise
// (Soundy and others, Sensors 20 (2020) 6050, compare such models on recorded
// positions). Over one run, with a free offset, such a process is a random
// walk. Its rate is estimated from the altitudes of the ride.

// heightKind is the source of a run's heights.
type heightKind int

const (
	none heightKind = iota
	byBarometer
	byReceiver
)

// steadiest is the smallest assumed random walk of a receiver's altitude, m
// after one second: less comes from filtering or rounding (common practice).
const steadiest = 0.2

// walk is the random walk of the error of the heights, m after one second.
func (k heightKind) walk(n Noise) float64 {
	if k == byReceiver {
		return math.Hypot(n.AltWalk, steadiest)
	}
	return n.HeightWalk
}

// white is the variance of the white error of the heights, m².
func (k heightKind) white(n Noise) float64 {
	if k == byReceiver {
		return n.AltSD * n.AltSD
	}
	return n.HeightSD * n.HeightSD
}

// heights returns the heights of this run for the road's profile, and their
// source: the barometer if there is one, as its error drifts ten times less.
func (r *Run) heights() ([]float64, heightKind) {
	switch {
	case r.Pos == nil:
		return nil, none
	case r.Height != nil:
		return r.Height, byBarometer
	}
	if alt := steady(r.T, r.Alt); alt != nil {
		return alt, byReceiver
	}
	return nil, none
}

const (
	fewestKnown  = 5   // altitudes in a run: one more than different ones
	fewestLevels = 4   // different altitudes in a run; with fewer they are stuck, or rounded too coarsely
	coarsest     = 1.0 // maximum resolution of altitudes, m
	jumpTimes    = 6.0 // steps larger than this many usual ones are jumps
	leastJump    = 1.5 // m
)

// steady returns altitudes without jumps: where the receiver changes the
// satellites it uses, the altitude jumps, and later altitudes are shifted back.
// It returns nil where the altitudes contain no information about the road:
// missing in half of the fixes, stuck at one level, or in coarse steps.
func steady(t, alt []float64) []float64 {
	var known []int
	var levels []float64
	for i, a := range alt {
		if !math.IsNaN(a) && !math.IsInf(a, 0) {
			known, levels = append(known, i), append(levels, a)
		}
	}
	if 2*len(known) < len(t) || len(known) < fewestKnown {
		return nil
	}
	slices.Sort(levels)
	levels = slices.Compact(levels)
	finest := math.Inf(1)
	for i := 1; i < len(levels); i++ {
		finest = math.Min(finest, levels[i]-levels[i-1])
	}
	if len(levels) < fewestLevels || finest > coarsest+1e-6 {
		return nil
	}
	return withoutJumps(t, alt, known)
}

// withoutJumps removes every step that is an outlier.
func withoutJumps(t, alt []float64, known []int) []float64 {
	steps := make([]float64, len(known)-1)
	size := make([]float64, len(steps))
	for k := range steps {
		i, j := known[k], known[k+1]
		steps[k] = (alt[j] - alt[i]) / math.Sqrt(t[j]-t[i]) // steps of a random walk grow with the square root of time
	}
	usual := median.Of(steps)
	for k, s := range steps {
		size[k] = math.Abs(s - usual)
	}
	limit := math.Max(jumpTimes*median.Of(size)/0.6745, leastJump)
	out := make([]float64, len(alt))
	for i := range out {
		out[i] = math.NaN()
	}
	shift := 0.0
	for k, i := range known {
		if k > 0 && math.Abs(steps[k-1]-usual) > limit {
			shift += alt[i] - alt[known[k-1]] - usual*math.Sqrt(t[i]-t[known[k-1]])
		}
		out[i] = alt[i] - shift
	}
	return out
}

// apart is the lag, in fixes, of the differences from which the random walk is
// estimated.
const apart = 10

// altitudeNoise estimates the error of the receiver's altitudes from
// differences at lags of one and apart fixes: for white noise plus a random
// walk the variance of a difference is 2·AltSD² + AltWalk²·(time between them).
// The rise of the road counts as error too, except its mean.
func (n Noise) altitudeNoise(runs []*coast) Noise {
	var near, far differences
	for _, c := range runs {
		if c.heights == byReceiver {
			near.add(c.t, c.height, 1)
			far.add(c.t, c.height, apart)
		}
	}
	if n.AltSD > 0 || n.AltWalk > 0 || near.n == 0 {
		return n
	}
	walk := 0.0
	if far.n > 0 {
		walk = math.Max(0, (far.variance()-near.variance())/(far.span()-near.span()))
	}
	n.AltWalk = math.Sqrt(walk)
	n.AltSD = math.Max(leastWhite, math.Sqrt(math.Max(0, near.variance()-walk*near.span())/2))
	return n
}

// leastWhite keeps the equations non-singular, m.
const leastWhite = 0.03

// differences accumulates differences of altitudes about their mean in each
// run.
type differences struct{ n, square, time float64 }

func (d *differences) add(t, h []float64, lag int) {
	var diffs []float64
	for i := lag; i < len(h); i++ {
		if x := h[i] - h[i-lag]; !math.IsNaN(x) {
			diffs = append(diffs, x)
			d.time += t[i] - t[i-lag]
		}
	}
	about := mean(diffs)
	for _, x := range diffs {
		d.square += (x - about) * (x - about)
	}
	d.n += float64(len(diffs))
}

func (d differences) variance() float64 { return d.square / d.n }
func (d differences) span() float64     { return d.time / d.n }
