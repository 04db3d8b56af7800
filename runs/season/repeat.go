package season

import (
	"cmp"
	"math"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"stillair/runs/measure"
)

// Point is one figure of one ride.
type Point struct {
	Started time.Time
	Value   measure.Value
	Noise   float64 // the part of its standard uncertainty that varies between repetitions
	Common  float64 // the part that repetitions do not reduce
}

// Repeat is the repeatability of a figure from ride to ride.
type Repeat struct {
	Points  []Point // in order of time
	Mean    measure.Value
	MeanCI  [2]float64 // 95 %
	Typical float64    // median
	Least   float64
	Spread  float64       // test-retest: standard deviation between rides; NaN for one
	Own     float64       // the part of it explained by the noise of the single figures
	Trend   measure.Value // change in 30 days; unknown with fewer than three dated rides
	TrendCI [2]float64    // 95 %
	TrendP  float64       // p-value of the trend
}

const month = 30 * 24 * time.Hour

// NewRepeat computes it. The interval of the mean follows from the noise of the
// figures or, if wider, from their scatter by Student's t: riders repeat less
// precisely than their phone measures. The trend is a straight line by least
// squares, with a t test of n − 2 degrees of freedom.
func NewRepeat(points []Point) Repeat {
	out := Repeat{Points: slices.Clone(points), Spread: math.NaN(), Trend: measure.Unknown(), TrendP: math.NaN()}
	slices.SortStableFunc(out.Points, func(a, b Point) int { return a.Started.Compare(b.Started) })
	var x []float64
	noise := 0.0
	for _, p := range out.Points {
		x = append(x, p.Value.X)
		noise += p.Noise * p.Noise / float64(len(points))
	}
	if len(x) == 0 {
		return out
	}
	mean, sd := stat.MeanStdDev(x, nil)
	out.Own, out.Least = math.Sqrt(noise), slices.Min(x)
	root, common := math.Sqrt(float64(len(x))), math.Inf(1)
	for _, p := range out.Points {
		common = math.Min(common, p.Common)
	}
	out.Mean = measure.Value{X: mean, SE: out.Own / root}
	half := sure(math.Inf(1)) * out.Mean.SE
	if len(x) > 1 {
		out.Spread = sd
		out.Mean.SE = math.Max(out.Mean.SE, sd/root)
		half = math.Max(half, sure(float64(len(x)-1))*sd/root)
	}
	half = math.Hypot(half, sure(math.Inf(1))*common)
	out.Mean.SE, out.MeanCI = math.Hypot(out.Mean.SE, common), [2]float64{mean - half, mean + half}
	sorted := slices.Clone(x)
	slices.SortFunc(sorted, cmp.Compare)
	out.Typical = (sorted[(len(x)-1)/2] + sorted[len(x)/2]) / 2
	out.trend()
	return out
}

// sure is the factor from a standard error to half of a 95 % interval.
func sure(dof float64) float64 { return measure.Quantile(0.95, dof) }

// trend fits a line over time.
func (r *Repeat) trend() {
	var t, x []float64
	for _, p := range r.Points {
		if !p.Started.IsZero() {
			t, x = append(t, float64(p.Started.Sub(r.Points[0].Started))/float64(month)), append(x, p.Value.X)
		}
	}
	n := len(t)
	if n < 3 || r.Points[0].Started.IsZero() {
		return
	}
	mean := stat.Mean(t, nil)
	sxx := 0.0
	for _, v := range t {
		sxx += (v - mean) * (v - mean)
	}
	if !(sxx > 0) {
		return
	}
	a, b := stat.LinearRegression(t, x, nil, false)
	rest := 0.0
	for i := range t {
		rest += math.Pow(x[i]-a-b*t[i], 2)
	}
	se := math.Sqrt(rest / float64(n-2) / sxx)
	if !(se > 0) {
		return
	}
	r.Trend = measure.Value{X: b, SE: se}
	r.TrendCI = r.Trend.Interval(0.95, float64(n-2))
	r.TrendP = 2 * distuv.StudentsT{Sigma: 1, Nu: float64(n - 2)}.Survival(math.Abs(b/se))
}

// TwoWay is the mean of two runs in opposite directions, in which the wind
// along the road and its slope cancel to first order.
type TwoWay struct {
	There, Back Time
	Mean        measure.Value // s
}

// alike reports whether two times are of the same thing.
func (a Time) alike(b Time) bool {
	return a.Mark == b.Mark && a.Kind == b.Kind && a.Setup == b.Setup && a.Gear == b.Gear && a.Rollout == b.Rollout
}

// opposite is the tolerance of opposite bearings, degrees.
const opposite = 30.0

// TwoWays pairs the runs of a ride that have one mark, setup, gear and opposite
// bearings, begun within so long of each other; each run is in one pair at most,
// and those that lie closest in time pair first.
func TwoWays(times []Time, within time.Duration) []TwoWay {
	type couple struct {
		i, j  int
		apart float64
	}
	var all []couple
	for i, a := range times {
		for j := i + 1; j < len(times); j++ {
			b := times[j]
			turn := math.Abs(math.Mod(math.Abs(a.Bearing-b.Bearing)+180, 360) - 180)
			apart := math.Abs(a.Start - b.Start)
			if a.alike(b) && turn > 180-opposite && apart <= within.Seconds() {
				all = append(all, couple{i, j, apart})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b couple) int { return cmp.Compare(a.apart, b.apart) })
	used := map[int]bool{}
	var out []TwoWay
	for _, c := range all {
		if used[c.i] || used[c.j] {
			continue
		}
		used[c.i], used[c.j] = true, true
		a, b := times[c.i], times[c.j]
		out = append(out, TwoWay{There: a, Back: b,
			Mean: measure.Value{X: (a.Time.X + b.Time.X) / 2, SE: math.Hypot(a.Time.SE, b.Time.SE) / 2}})
	}
	return out
}
