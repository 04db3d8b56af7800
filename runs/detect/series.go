package detect

import (
	"math"

	"stillair/fusion"
)

// step is the spacing of the grid on which runs are searched, s. Ten points a
// second resolve a gear change; the ends of a run are refined on the track.
const step = 0.1

// series is the ride on an even grid, smoothed for detection, not for
// measurement.
type series struct {
	t0    float64
	v     []float64 // speed, m/s
	quick []float64 // acceleration over 0.4 s, m/s²
	calm  []float64 // acceleration over 1 s, m/s²
	turn  []float64 // turn rate over 1 s, rad/s; NaN if unknown
	doubt []float64 // standard deviation of quick, m/s²
	still []bool
	errs  speedErrors // nil: not known
}

// speedErrors gives the covariances of the speed.
type speedErrors interface {
	SpeedCov(times []float64) [][]float64
}

func (s *series) len() int                 { return len(s.v) }
func (s *series) time(i int) float64       { return s.t0 + float64(i)*step }
func (s *series) index(t float64) int      { return clamp(int(math.Round((t-s.t0)/step)), 0, s.len()-1) }
func (s *series) seconds(i, j int) float64 { return float64(j-i) * step }

func clamp(i, lo, hi int) int { return max(lo, min(i, hi)) }

// newSeries samples a track on the grid.
func newSeries(track *fusion.Track) *series {
	n := len(track.T)
	s := &series{t0: track.T[0]}
	count := int((track.T[n-1]-track.T[0])/step) + 1
	s.v = make([]float64, count)
	s.doubt = make([]float64, count)
	yaw := make([]float64, count)
	k := 0
	for i := range count {
		t := s.time(i)
		for k+2 < n && track.T[k+1] <= t {
			k++
		}
		s.v[i] = between(track.T, track.V, k, t)
		s.doubt[i] = doubt(track, k)
		yaw[i] = track.Yaw[k]
	}
	s.quick = slope(s.v, 2)
	s.calm = slope(s.v, 5)
	s.turn = boxMean(yaw, 5)
	if track.Noise != nil {
		s.errs = track
	}
	s.still = s.inside(track.Still)
	return s
}

// doubtOver is the time over which the quick acceleration is taken, s.
const doubtOver = 4 * step

// doubt is the standard uncertainty of the quick acceleration at sample k from
// the white noise on the acceleration, over 0.4 s.
func doubt(track *fusion.Track, k int) float64 {
	if track.Noise == nil {
		return 0
	}
	return math.Sqrt(track.Noise[k] / doubtOver)
}

// between interpolates y at time t within the interval that starts at k.
func between(x, y []float64, k int, t float64) float64 {
	if k+1 >= len(x) {
		return y[k]
	}
	f := (t - x[k]) / (x[k+1] - x[k])
	return y[k] + f*(y[k+1]-y[k])
}

// slope is the central difference of y over half points to each side.
func slope(y []float64, half int) []float64 {
	out := make([]float64, len(y))
	for i := range y {
		a, b := max(0, i-half), min(len(y)-1, i+half)
		if b > a {
			out[i] = (y[b] - y[a]) / (float64(b-a) * step)
		}
	}
	return out
}

// boxMean is the running mean of y over half points to each side; a NaN affects
// only the means that contain it.
func boxMean(y []float64, half int) []float64 {
	out := make([]float64, len(y))
	for i := range y {
		sum, n := 0.0, 0
		for j := max(0, i-half); j <= min(len(y)-1, i+half); j++ {
			sum += y[j]
			n++
		}
		out[i] = sum / float64(n)
	}
	return out
}

// inside marks the grid points that lie within any of the spans.
func (s *series) inside(spans []fusion.Span) []bool {
	in := make([]bool, s.len())
	for _, sp := range spans {
		from := clamp(int(math.Ceil((sp.From-s.t0)/step)), 0, s.len())
		to := clamp(int(math.Floor((sp.To-s.t0)/step))+1, 0, s.len())
		for i := from; i < to; i++ {
			in[i] = true
		}
	}
	return in
}

// crossing returns the time at which the speed passes v between the grid
// points i and j, upward or downward, or NaN.
func (s *series) crossing(v float64, i, j int) float64 {
	for k := i; k < j; k++ {
		a, b := s.v[k]-v, s.v[k+1]-v
		if a == 0 {
			return s.time(k)
		}
		if a*b < 0 {
			return s.time(k) + step*a/(a-b)
		}
	}
	return math.NaN()
}
