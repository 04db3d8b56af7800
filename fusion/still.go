package fusion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"stillair/fusion/internal/motion"
	"stillair/sensors/median"
)

const (
	restSpeed   = 0.5  // m/s of satellite speed below which the bike may stand
	restReach   = 0.15 // half the window over which the force is watched, s
	restDrift   = 0.10 // m/s: apparent gain of speed permitted over that window
	restMost    = 0.25 // m/s: the same if an engine shakes the phone hard
	restTurn    = 0.06 // rad/s about any axis beyond the gyroscope's drift
	restMargin  = 0.05 // s left out at each end of a standstill, in addition to restReach
	restAtLeast = 0.2  // s
	restBeside  = 0.5  // s from the slow fixes: steady creeping feels the same as standing
)

// findRest finds the standstills: the receiver shows almost no speed, and the
// specific force, averaged over a third of a second, stays at its value in the
// middle of the stop. An idling engine shakes the sensor, but not its mean.
func findRest(s *motion.Series, force func(i int) r3.Vec, fixes []fix, lag float64) []Span {
	var out []Span
	for i := 0; i < len(fixes); i++ {
		if fixes[i].speed > restSpeed {
			continue
		}
		j := i
		for j+1 < len(fixes) && fixes[j+1].speed <= restSpeed && fixes[j+1].t-fixes[j].t < 3 {
			j++
		}
		from, to := fixes[i].t-lag, fixes[j].t-lag
		core := Span{from, to}
		if i > 0 && fixes[i].t-fixes[i-1].t < 3 {
			from = fixes[i-1].t - lag
		} else {
			from -= 0.5
		}
		if j+1 < len(fixes) && fixes[j+1].t-fixes[j].t < 3 {
			to = fixes[j+1].t - lag
		} else {
			to += 0.5
		}
		out = append(out, watchOver(s, force, Span{from, to}).quiet(core)...)
		i = j
	}
	return out
}

// watch holds the smoothed readings of a stretch of the ride in which
// standstills are looked for.
type watch struct {
	s      *motion.Series
	lo, hi int          // first and last sample
	force  [3][]float64 // from lo on
	turn   [3][]float64
}

func watchOver(s *motion.Series, force func(i int) r3.Vec, search Span) *watch {
	w := &watch{s: s, lo: s.Index(search.From), hi: s.Index(search.To)}
	half := s.Half(restReach)
	from, to := max(w.lo-half, 0), min(w.hi+half+1, len(s.T))
	f, mean := make([]float64, to-from), make([]float64, 6*(to-from))
	calm := func(of func(int) r3.Vec, a int) []float64 {
		for i := range f {
			f[i] = motion.Axis(of(from+i), a)
		}
		m := motion.Mean(mean[:len(f)], f, half)
		mean = mean[len(f):]
		return m[w.lo-from:]
	}
	for a := range 3 {
		w.force[a] = calm(force, a)
		if s.HasTurn {
			w.turn[a] = calm(s.Turn, a)
		}
	}
	return w
}

// middle is the median reading of the sensors while the bike stands.
type middle struct {
	force, turn [3]float64
	limit       float64 // m/s of apparent gain of speed over the window
}

func (w *watch) middle(core Span) middle {
	from, to := w.s.Index(core.From)-w.lo, w.s.Index(core.To)-w.lo
	var m middle
	for a := range 3 {
		m.force[a] = median.Of(w.force[a][from : to+1])
		if w.s.HasTurn {
			m.turn[a] = median.Of(w.turn[a][from : to+1])
		}
	}
	m.limit = math.Max(restDrift, math.Min(5*w.scatter(m.force, from, to)*2*restReach, restMost))
	return m
}

// like reports whether sample i agrees with the middle.
func (w *watch) like(m middle, i int) bool {
	if w.s.Missing[i] {
		return false
	}
	var f, t float64
	for a := range 3 {
		d := w.force[a][i-w.lo] - m.force[a]
		f += d * d
		if w.s.HasTurn {
			e := w.turn[a][i-w.lo] - m.turn[a]
			t += e * e
		}
	}
	return math.Sqrt(f)*2*restReach < m.limit && t < restTurn*restTurn
}

// quiet returns the parts of the stretch in which nothing moves, compared with
// the medians over the core.
func (w *watch) quiet(core Span) []Span {
	s := w.s
	m := w.middle(core)
	var out []Span
	hi := w.hi
	for i := w.lo; i <= hi; i++ {
		if !w.like(m, i) {
			continue
		}
		j := i
		for j+1 <= hi && w.like(m, j+1) {
			j++
		}
		span := Span{s.T[i] + restReach + restMargin, s.T[j] - restReach - restMargin}
		if i == 0 {
			span.From = s.T[0]
		}
		if j == len(s.T)-1 {
			span.To = s.T[j]
		}
		if span.To-span.From >= restAtLeast && span.From <= core.To+restBeside && span.To >= core.From-restBeside {
			out = append(out, span)
		}
		i = j
	}
	return out
}

// scatter is the median deviation of the smoothed force from a middle between
// two samples of the stretch, m/s², so that a start or a stop among them does
// not matter.
func (w *watch) scatter(middle [3]float64, from, to int) float64 {
	off := make([]float64, 0, to-from+1)
	for i := from; i <= to; i++ {
		var sum float64
		for a := range 3 {
			d := w.force[a][i] - middle[a]
			sum += d * d
		}
		off = append(off, math.Sqrt(sum))
	}
	return median.Of(off)
}
