package pass

import (
	"math"
	"slices"
	"sort"

	"stillair/fusion"
)

// Limits of a steady speed.
const (
	steady  = 0.97  // of its own fastest second
	leastM  = 200.0 // m
	second  = 0.5   // s on each side over which the speed is averaged
	between = 0.1   // s between the times examined
	slowest = 0.6   // of the ride's fastest steady stretch, below which nothing is considered
)

// line is the ride resampled at equal time steps.
type line struct {
	t, s, v []float64 // s, m, m/s over a second
	cut     []bool    // where no leg may be
}

func newLine(track *fusion.Track, busy []fusion.Span) line {
	var l line
	n := len(track.T)
	if n < 2 {
		return l
	}
	from, to := track.T[0], track.T[n-1]
	wide := int(second / between)
	for i := range int((to-from)/between) + 1 {
		t := from + float64(i)*between
		l.t, l.s = append(l.t, t), append(l.s, track.At(t).S)
	}
	l.v, l.cut = make([]float64, len(l.t)), make([]bool, len(l.t))
	for i := range l.t {
		if l.cut[i] = i < wide || i >= len(l.t)-wide; !l.cut[i] {
			l.v[i] = (l.s[i+wide] - l.s[i-wide]) / (2 * second)
		}
	}
	for _, b := range slices.Concat(busy, track.Gaps) {
		for i := sort.SearchFloat64s(l.t, b.From); i < len(l.t) && l.t[i] <= b.To; i++ {
			l.cut[i] = true
		}
	}
	return l
}

// stretch is a part of a line, its ends included, and the speed of its fastest second.
type stretch struct {
	from, to int
	top      float64
}

// stretches are the steady parts of a ride, the fastest first.
func (l line) stretches() []stretch {
	order := make([]int, len(l.t))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return l.v[order[a]] > l.v[order[b]] })
	used := slices.Clone(l.cut)
	var out []stretch
	for _, k := range order {
		if used[k] {
			continue
		}
		if len(out) > 0 && l.v[k] < slowest*out[0].top || l.v[k] <= 0 {
			break
		}
		beside := k > 0 && used[k-1] && !l.cut[k-1] || k+1 < len(used) && used[k+1] && !l.cut[k+1]
		s := l.around(k, used)
		for i := s.from; i <= s.to; i++ {
			used[i] = true
		}
		if !beside && l.s[s.to]-l.s[s.from] >= leastM {
			out = append(out, s)
		}
	}
	return out
}

// around is the steady stretch around the fastest unused sample.
func (l line) around(k int, used []bool) stretch {
	s := stretch{from: k, to: k, top: l.v[k]}
	for s.from > 0 && !used[s.from-1] && l.v[s.from-1] >= steady*s.top {
		s.from--
	}
	for s.to < len(l.v)-1 && !used[s.to+1] && l.v[s.to+1] >= steady*s.top {
		s.to++
	}
	return s
}

// timeAt is when the line had come a distance, s; NaN outside of it.
func (l line) timeAt(way float64) float64 {
	i := sort.SearchFloat64s(l.s, way)
	if i == 0 || i == len(l.s) {
		return math.NaN()
	}
	return l.t[i-1] + between*(way-l.s[i-1])/(l.s[i]-l.s[i-1])
}
